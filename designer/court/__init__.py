"""Court standards, landmarks and regions, and positions measured from the nearest lines."""
