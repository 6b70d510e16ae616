"""The draft: read into parts with exact places, matched across edits, counted, and turned into set text."""
