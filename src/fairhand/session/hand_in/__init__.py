"""The paper leaves: printed, handed in, and come back."""
