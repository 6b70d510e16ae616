"""The draft: read into parts with exact places, matched across edits, counted, and turned into set text."""

from fairhand.manuscript.draft import quotation_offsets, read_manuscript

__all__ = ["quotation_offsets", "read_manuscript"]
