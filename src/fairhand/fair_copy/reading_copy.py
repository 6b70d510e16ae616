"""The copy that a first reader gets: the fair copy with its lines numbered, and on top what is asked.

**Source**: common practice: a reader answers by line number, and knows before reading what to look for.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from fairhand.fair_copy.document import FairCopy
from fairhand.fair_copy.layout import proof_layout
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Inline, Styled, Text

PLEASE = "Please write beside the text, or name the line."
"""What stands on top of every copy, and tells one from a draft."""


@dataclass(frozen=True, slots=True)
class Request:
    """What stands on top of the copy."""

    reader: str
    until: str = ""
    """The day by which it is wanted back, in words."""
    questions: tuple[str, ...] = ()
    not_to_mind: tuple[str, ...] = ()


def make_reading_copy(copy: FairCopy, request: Request) -> FairCopy:
    """The copy with numbered lines, wide margins, and the request before its text.

    Nothing says whose it is beyond what the fair copy itself says.

    >>> from fairhand.fair_copy.document import FrontMatter, Layout
    >>> made = make_reading_copy(FairCopy(FrontMatter(), (), (), Layout("plain")), Request("Ines", questions=("Why?",)))
    >>> made.layout.line_numbers, [block.kind for block in made.body]
    (True, ['paragraph', 'list', 'rule'])
    """
    layout = replace(proof_layout(copy.layout), proof=False, line_numbers=True)
    return replace(copy, layout=layout, body=(*_on_top(request), *copy.body))


def _on_top(request: Request) -> list[SetBlock]:
    until = f", wanted back by {request.until}" if request.until else ""
    blocks = [_paragraph(Styled("italic", (Text(f"For {request.reader}{until}. {PLEASE}"),)))]
    if request.questions:
        items = tuple(SetBlock("item", children=(_paragraph(Text(one)),)) for one in request.questions)
        blocks.append(SetBlock("list", level=1, children=items))
    if request.not_to_mind:
        told = f"You need not mind {_listed(request.not_to_mind)}."
        blocks.append(_paragraph(Styled("italic", (Text(told),))))
    return [*blocks, SetBlock("rule")]


def _paragraph(inline: Inline) -> SetBlock:
    return SetBlock("paragraph", inlines=(inline,))


def _listed(named: Sequence[str]) -> str:
    """Several things as one says them.

    >>> _listed(["spelling", "commas", "the list"])
    'spelling, commas, or the list'
    """
    if len(named) < 3:
        return " or ".join(named)
    return f"{', '.join(named[:-1])}, or {named[-1]}"
