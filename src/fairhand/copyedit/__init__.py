"""The second pass: language and form."""
