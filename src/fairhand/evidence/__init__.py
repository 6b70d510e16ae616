"""What carries the points of the paper, and how far."""
