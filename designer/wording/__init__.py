"""Every sentence the program writes about a drill; units; languages."""
