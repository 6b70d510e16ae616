"""What the paper is to say: its points, before they are written."""
