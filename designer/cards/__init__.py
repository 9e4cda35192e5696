"""PDF cards for the player, the coach and a stand-in."""
