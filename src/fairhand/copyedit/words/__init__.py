"""Single words: spelling, words confused, words doubled, and the writer's own."""
