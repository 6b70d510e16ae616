"""How tables and figures are numbered, labelled and titled."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from fairhand.fair_copy.document import Layout
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Break, Image, Inline, Styled, Text, plain

_LABEL = re.compile(
    r"\s{0,9}(table|figure|fig\.?)\s{1,3}(\d{1,3}|[A-Z]\.?\d{1,3}|[IVXL]{1,6})\s{0,3}[.:–—-]?\s{0,9}", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Exhibit:
    """A table or figure with its label and its title."""

    kind: Literal["table", "figure"]
    number: str
    title: tuple[Inline, ...]
    block: SetBlock

    def label(self, layout: Layout) -> str:
        """The label in the style's form: ``Table 1``, ``Figure 1``, ``Fig. 1``."""
        word = "Fig." if self.kind == "figure" and layout.caption_form == "mla" else self.kind.capitalize()
        return f"{word} {self.number}"

    @property
    def image(self) -> Image | None:
        """The first picture in it."""
        return next((inline for inline in self.block.inlines if isinstance(inline, Image)), None)

    @property
    def alt(self) -> str:
        """What a reader who cannot see the picture is told: its own description, else its title."""
        return (self.image.alt if self.image else "") or plain(self.title) or f"{self.kind} {self.number}"


def number_exhibits(blocks: Iterable[SetBlock]) -> tuple[Exhibit, ...]:
    """The tables and figures of ``blocks`` in their order, numbered within their kind.

    A number that the writer's caption carries is kept, since the text speaks of it; the others are counted on.

    >>> [e.number for e in number_exhibits([SetBlock("table", caption=(Text("Table 3. Rain"),)), SetBlock("table")])]
    ['3', '4']
    """
    counts = {"table": 0, "figure": 0}
    out = []
    for block in _walk(blocks):
        if block.kind in {"table", "figure"}:
            number, title = _parted(block.caption)
            counts[block.kind] = int(number) if number.isdigit() else counts[block.kind] + 1
            out.append(Exhibit(block.kind, number or str(counts[block.kind]), title, block))
    return tuple(out)


def _parted(caption: tuple[Inline, ...]) -> tuple[str, tuple[Inline, ...]]:
    """The number that a caption carries, or nothing, and the caption without its label."""
    first = caption[0] if caption else None
    if isinstance(first, Styled) and (found := _LABEL.fullmatch(plain((first,)))):
        return found[2], _without_lead(caption[1:])
    found = _LABEL.match(first.text) if isinstance(first, Text) else None
    if not found or not isinstance(first, Text):
        return "", caption
    rest = first.text[found.end() :]
    return found[2], ((Text(rest),) if rest else ()) + caption[1:]


def _without_lead(inlines: tuple[Inline, ...]) -> tuple[Inline, ...]:
    """The inlines without the stop, space or line break that parted them from their label."""
    first = inlines[0] if inlines else None
    if isinstance(first, Break):
        return _without_lead(inlines[1:])
    if isinstance(first, Text):
        rest = first.text.lstrip(" .:–—")
        return (Text(rest), *inlines[1:]) if rest else _without_lead(inlines[1:])
    return inlines


def _walk(blocks: Iterable[SetBlock]) -> Iterable[SetBlock]:
    """Every block, those within others after the one that holds them."""
    for block in blocks:
        yield block
        yield from _walk(block.children)
