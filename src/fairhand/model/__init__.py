"""Frozen values that every room shares; no behaviour beyond their own arithmetic."""
