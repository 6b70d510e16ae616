"""A rule of form that stands in a sentence."""

from __future__ import annotations

from fairhand.model.requirement import Value

Hit = tuple[str, Value, int, int]
"""What it is about, its value, and the stretch of the sentence that asks it (half-open)."""
