"""A draft in a word processor's file, taken over as CommonMark, one way."""

from __future__ import annotations

import re

from fairhand.model.problem import Problem
from fairhand.model.request import PandocRequest
from fairhand.reading.archive import open_archive
from fairhand.reading.tracked import settle_changes
from fairhand.reading.tracked_odt import refuse_odt

_TITLED = "\f"
"""What opens a text whose title came from the title's own style."""
_TEMPLATE = f"""$if(title)${_TITLED}# $title$$if(subtitle)$: $subtitle$$endif$

$endif$$for(author)$$author$

$endfor$$if(date)$$date$

$endif$$if(abstract)$# Abstract

$abstract$

$endif$$body$
"""
"""What stands in a word processor's own styles for title, author, date and abstract comes before the text."""

_PICTURE = re.compile(
    r"!\[([^\]\n]{0,2000})\]\(([^()\s]{0,500})(?:\s{1,3}\"[^\"\n]{0,2000}\")?\)(?:\{[^}\n]{0,500}\})?"
)
_TABLE = re.compile(r"^[ >]{0,20}\\?\[TABLE\\?\]$", re.MULTILINE)
_BRACKET = re.compile(r"\\([\[\]])(?!\()")
_HEADING = re.compile(r"^(#{1,5}) ", re.MULTILINE)
_BLANKS = re.compile(r"\n{3,}")


def take_request(data: bytes, ending: str, file: str = "the draft", *, refuse: bool = False) -> PandocRequest:
    """The run of pandoc that reads a draft: tracked changes accepted, comments left out, footnotes kept.

    Args:
        data: The file's bytes.
        ending: ``.docx`` or ``.odt``.
        file: Its name, for messages.
        refuse: Whether the tracked changes are refused.

    Raises:
        FileUnreadable: It is no such document, or it is broken or empty.
        FileTooLarge: It expands beyond all bounds.
        FileEncrypted: It asks for a password.
    """
    kind = ending.lstrip(".").lower()
    archive = open_archive(data, file)
    for name in archive.names:
        if name.endswith((".xml", ".rels")):
            archive.read(name)
    if kind == "docx":
        data = settle_changes(data, file, accept=not refuse)
    elif refuse:
        data = refuse_odt(data, file)
    args = (
        f"--from={kind}",
        "--to=commonmark+footnotes+pipe_tables-raw_html",
        "--track-changes=accept",
        "--wrap=none",
        "--markdown-headings=atx",
        "--standalone",
        "--template=draft.md",
    )
    return PandocRequest(args, data, {"draft.md": _TEMPLATE.encode()})


def read_taken(answer: bytes, file: str = "the draft") -> tuple[str, tuple[Problem, ...]]:
    r"""The draft as CommonMark, and what of it could not be taken over.

    Brackets stand as they were written, so that asides are asides; a title keeps the first level for itself.

    >>> read_taken(b"# Mills\n\n\\[NB: check\\] ![a plan](media/image1.png)")[0]
    '# Mills\n\n[NB: check]\n'
    """
    text = answer.decode("utf-8", "replace").replace("\r\n", "\n")
    problems = []
    for kind, pattern, mend in (
        ("picture", _PICTURE, "save it beside the draft and name it there: ![what it shows](file.png)"),
        ("table with merged or many-lined cells", _TABLE, "write it again as a plain table"),
    ):
        for found in pattern.finditer(text):
            name = f" ({found[1] or found[2]})" if kind == "picture" else ""
            line = text.count("\n", 0, found.start()) + 1
            problems.append(Problem(f"{file}, line {line} as taken", f"a {kind}{name} was left out", mend))
        text = pattern.sub("", text)
    text = _BRACKET.sub(r"\1", text)
    if text.startswith(_TITLED):
        title, _, rest = text.removeprefix(_TITLED).partition("\n")
        text = f"{title}\n{_HEADING.sub(_lower, rest)}"
    lines = (line.rstrip() for line in text.split("\n"))
    return _BLANKS.sub("\n\n", "\n".join(lines)).strip() + "\n", tuple(problems)


def _lower(heading: re.Match[str]) -> str:
    """The heading one level further down."""
    return f"#{heading[0]}"
