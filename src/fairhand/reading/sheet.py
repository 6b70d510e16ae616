"""An assignment sheet's file as text, its lines kept as they stand."""

from __future__ import annotations

from fairhand.errors import FileUnreadable
from fairhand.model.problem import Problem
from fairhand.reading.hyphens import join_hyphens
from fairhand.reading.kinds import kind_of
from fairhand.reading.source import read_leaves


def read_sheet_text(data: bytes, file: str) -> tuple[str, tuple[Problem, ...]]:
    r"""The text of an assignment sheet: a line for each line, item and row of a table (cells parted by bars).

    Raises:
        FileUnreadable: It is broken, empty, or not what its name says.
        FileEncrypted: It asks for a password.
        FileTooLarge: It is larger, or expands further, than we read.
        UnknownFormat: Nothing here reads that kind of file.

    >>> read_sheet_text(b"<ul><li>1,500 words</li><li>MLA</li></ul>", "brief.html")
    ('- 1,500 words\n- MLA', ())
    """
    kind = kind_of(data, file)
    if kind == "html":
        from fairhand.reading.html import lay_text, parse_html

        text = "\n\n".join(part for _, part in lay_text(parse_html(data, file), part_at="nothing"))
        if not text:
            raise FileUnreadable(f"{file}: there is no text in it; save the page again, once it has loaded")
        return text, ()
    leaves = read_leaves(data, file)
    texts = join_hyphens(leaves.texts) if kind == "pdf" else leaves.texts
    return "\n\n".join(texts), leaves.problems
