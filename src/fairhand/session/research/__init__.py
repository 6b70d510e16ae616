"""Questions, jottings, leads, notes and points: what is found before a draft, and what it carries."""
