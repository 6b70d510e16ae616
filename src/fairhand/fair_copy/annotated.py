"""The annotated bibliography: under each entry what the writer noted from it, and nothing else.

**Source**: APA 7, 9.51 (the annotation a paragraph of its own, indented by half an inch, further paragraphs by another
half); MLA Handbook, 9th ed., 5.132 (indented by an inch, to stand apart from the entry that hangs); from memory.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from fairhand.fair_copy.document import FairCopy, FrontMatter, Layout
from fairhand.manuscript.asides import find_left
from fairhand.manuscript.curling import curl_marks
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Inline, Text
from fairhand.model.note import Note

TITLE = "Annotated Bibliography"
ORDER = ("summary", "paraphrase", "", "quotation", "thought")
"""What the work says, its own words, then what the writer thinks of it; notes of no kind stand with what it says."""

_END = re.compile(r"([.?!]?)([”’\"')]*)\Z")
_SEVERAL = re.compile(r"[–—,-]|\band\b")
_INNER = str.maketrans("“”‘’", "‘’“”")
_APOSTROPHE = re.compile(r"(?<=\w)’(?=\w)")


def build_annotated(
    entries: Sequence[tuple[str, tuple[Inline, ...]]],
    notes: Sequence[Note],
    front: FrontMatter,
    layout: Layout,
    *,
    language: str = "en-US",
    bare_pages: bool = False,
) -> FairCopy:
    """The bibliography of a paper, annotated with its notes.

    Args:
        entries: Each source's id and its line, in the order of the list.
        notes: The paper's notes, those of one source in the order of its pages.
        front: What stands on the first page; its title is set here.
        layout: The page of the paper's style.
        language: The language of the whole.
        bare_pages: Whether the style cites a page by its number alone.
    """
    annotations = tuple(
        tuple(annotate([note for note in notes if note.source == i], bare_pages=bare_pages)) for i, _ in entries
    )
    return FairCopy(
        replace(front, title=(Text(TITLE),), abstract=(), keywords=""),
        (),
        tuple(line for _, line in entries),
        replace(
            layout,
            list_title=TITLE if layout.first_page == "title-page" else "",
            list_new_page=False,
            title_again=False,
        ),
        language,
        annotations=annotations,
    )


def annotate(notes: Sequence[Note], *, bare_pages: bool = False) -> Iterator[SetBlock]:
    """The paragraphs under an entry: each note one or more, by ``ORDER`` and then as they come.

    >>> [block] = annotate([Note("n", "lind", page="7", remark="The ebb scours.", kind="summary")])
    >>> block.inlines[0].text
    'The ebb scours (p. 7).'
    """
    for note in sorted(notes, key=lambda note: ORDER.index(note.kind) if note.kind in ORDER else 0):
        page = _tell_page(note.page, bare=bare_pages)
        paragraphs = [one for part in re.split(r"\n\s*\n", note.remark) if (one := _set(part))]
        if note.quotation:
            quoted = f"{_quote(note.quotation)}{f' {page}' if page else ''}."
            paragraphs = [f"{quoted} {paragraphs[0]}", *paragraphs[1:]] if paragraphs else [quoted]
        elif paragraphs:
            paragraphs[-1] = _with_page(paragraphs[-1], page)
        for words in paragraphs:
            yield SetBlock("paragraph", inlines=(Text(words),))


def _tell_page(page: str, *, bare: bool) -> str:
    if not page:
        return ""
    if bare:
        return f"({page})"
    return f"({'pp.' if _SEVERAL.search(page) else 'p.'} {re.sub(r'(?<=[0-9])-(?=[0-9])', '–', page)})"


def _with_page(words: str, page: str) -> str:
    """A paragraph with its page before the mark that ends it; where that stands within quotation marks, after both."""
    end = _END.search(words)
    if not page or end is None:
        return words
    mark, closed = end.groups()
    said = words[: end.start()]
    if not closed:
        return f"{said} {page}{mark}"
    return f"{said}{'' if mark == '.' else mark}{closed} {page}{'.' if mark else ''}"


def _set(remark: str) -> str:
    """A remark on one line, with printers' marks, without what the writer left for themselves."""
    line = " ".join(remark.split())
    for left in reversed(find_left(line)):
        line = line[: left.start] + line[left.end :]
    line = " ".join(line.split())
    for start, end, mark in reversed(curl_marks(line)):
        line = line[:start] + mark + line[end:]
    return line


def _quote(words: str) -> str:
    """Words of a source in double quotation marks, those within them single; its own full stop is left to the page."""
    line = " ".join(words.split())
    for start, end, mark in reversed(curl_marks(line)):
        line = line[:start] + mark + line[end:]
    line = _APOSTROPHE.sub("\0", line).translate(_INNER).replace("\0", "’")
    return f"“{line.removesuffix('.')}”"
