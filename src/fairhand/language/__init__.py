"""Words and sentences: thin wrappers over libraries, with the trade's own rules added."""
