"""The draft put right: lapses, words, the proof, readers' remarks, reading aloud, the final reading."""
