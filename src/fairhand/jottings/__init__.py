"""The jottings: what was written down to empty the head, each as it stands, and sorted only when that is asked."""
