"""The assignment sheet, read into requirements: each with the words that ask it, and the sentences not understood.

The kinds stand in one ordered table (`kinds.KINDS`), each in a file of its own; the grammar that they share is in
`numbers`, `dates`, `wording`, and the sheet's shape in `lines` and `layout`.
"""
