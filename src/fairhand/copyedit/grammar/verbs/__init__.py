"""Forms and tenses of verbs."""
