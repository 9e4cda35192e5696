"""A setting read as play: the tree of shots, who is where at each, directions and versions."""
