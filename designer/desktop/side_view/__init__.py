"""The picked ball from the side: its flight, its bounce, the net, and what is computed of it in a few words."""
