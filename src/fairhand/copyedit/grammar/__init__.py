"""The form of sentences: agreement, plurals, splices, fragments, verbs, read off their parse."""
