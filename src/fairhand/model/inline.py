"""Set text within a paragraph: what the draft, the citation engine and the fair copy exchange."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class Text:
    """Plain characters."""

    text: str


@dataclass(frozen=True, slots=True)
class Styled:
    """Inlines in another style of type."""

    style: Literal["italic", "bold", "small-caps", "superscript", "subscript", "struck", "upright"]
    children: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Code:
    """Verbatim characters."""

    text: str


@dataclass(frozen=True, slots=True)
class Link:
    """Inlines that lead somewhere."""

    children: tuple[Inline, ...]
    url: str


@dataclass(frozen=True, slots=True)
class Image:
    """A picture within a paragraph."""

    alt: str
    url: str
    """As written in the draft: a path relative to the paper's folder."""
    title: str = ""


@dataclass(frozen=True, slots=True)
class Break:
    """The end of a line in the draft."""

    hard: bool
    """Whether the line ends in the fair copy too."""


@dataclass(frozen=True, slots=True)
class Note:
    """A footnote, at the place of its number."""

    children: tuple[Inline, ...]


@dataclass(frozen=True, slots=True)
class Hole:
    """The place of something that is put in later: the ``index``-th span that the caller named."""

    index: int


Inline = Text | Styled | Code | Link | Image | Break | Note | Hole
"""One piece of set text."""


def plain(inlines: tuple[Inline, ...]) -> str:
    """The bare characters of ``inlines``; notes, pictures and holes are left out.

    >>> plain((Text("the "), Styled("italic", (Text("Mercury"),))))
    'the Mercury'
    """
    out = []
    for inline in inlines:
        match inline:
            case Text(text) | Code(text):
                out.append(text)
            case Styled(_, children) | Link(children, _):
                out.append(plain(children))
            case Break():
                out.append(" ")
            case Image() | Note() | Hole():
                pass
    return "".join(out)
