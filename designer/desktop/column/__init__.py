"""The card column: the card as it will be read, each sentence a control that opens what it was made from."""
