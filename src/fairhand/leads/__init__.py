"""What the reference lists of the sources point to: found, taken apart, and ranked for this paper."""
