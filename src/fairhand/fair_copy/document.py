"""The paper as it is handed in, before it is set in any format."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Inline

FirstPage = Literal["heading", "title-page", "none"]


@dataclass(frozen=True)
class Layout:
    """How the pages look: the style's student paper, with the sheet's own rules over it; lengths in points."""

    style: str
    """Name of the style it follows, with its edition: ``"MLA 9"``."""
    font: str = "Times New Roman"
    """The face asked for; the fair copy embeds the free face of the same metrics."""
    size_pt: float = 12.0
    spacing: float = 2.0
    """1, 1.5 or 2 lines, as a word processor counts them."""
    margins_pt: tuple[float, float, float, float] = (72.0, 72.0, 72.0, 72.0)
    """Top, right, bottom, left."""
    paper: Literal["us-letter", "a4"] = "us-letter"
    indent_pt: float = 36.0
    """First line of a paragraph, block quotation and hanging indent."""
    justified: bool = False
    first_page: FirstPage = "heading"
    running_head: Literal["surname", "title", "none"] = "none"
    page_number: Literal[
        "top right", "top centre", "top left", "bottom right", "bottom centre", "bottom left", "none"
    ] = "top right"
    number_title_page: bool = True
    list_title: str = "References"
    list_title_bold: bool = True
    list_new_page: bool = True
    list_spacing: float = 2.0
    quote_spacing: float = 2.0
    note_spacing: float = 2.0
    heading_forms: tuple[str, ...] = ()
    """For levels 1 to 5, words out of: centred, left, indented, bold, italic, plain, run-in."""
    line_numbers: bool = False
    proof: bool = False
    """Numbered lines and wide margins, for marking by hand."""
    title_bold: bool = False
    title_again: bool = False
    """Whether the title stands once more above the text that follows a title page."""
    title_page_form: Literal["upper half", "thirds"] = "thirds"
    """Where the title page's lines stand: together in its upper half, or the title a third down and the rest below."""
    caption_form: Literal["apa", "mla", "chicago"] = "apa"
    """How tables and figures are labelled and titled."""
    table_spacing: float = 1.0


@dataclass(frozen=True)
class FrontMatter:
    """What stands on the first page; whatever is empty is left out."""

    title: tuple[Inline, ...] = ()
    author: str = ""
    institution: str = ""
    course: str = ""
    instructor: str = ""
    date: str = ""
    abstract: tuple[SetBlock, ...] = ()
    keywords: str = ""
    lines: tuple[str, ...] = ()
    """Lines of the writer's own, which are set in their order where the five above would be."""


@dataclass(frozen=True)
class FairCopy:
    """A whole paper, citations rendered, with nothing in it that is not to be printed."""

    front: FrontMatter
    body: tuple[SetBlock, ...]
    references: tuple[tuple[Inline, ...], ...]
    """The list's entries, in the style's order."""
    layout: Layout
    language: str = "en-US"
    pictures: Mapping[str, bytes] = field(default_factory=dict)
    """The pictures' bytes, by the path that the draft gives."""
    annotations: tuple[tuple[SetBlock, ...], ...] = ()
    """What stands under each entry of the list, where the list is an annotated one."""
