"""The verdict: what the sheet asks held against the real thing, and what the checks say."""
