"""First readers: who is asked what, for which version, and what becomes of what they wrote."""
