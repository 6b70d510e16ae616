"""The paper's sources: taken in, read, listed, corrected, their texts given and replaced."""
