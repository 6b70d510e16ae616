"""Format: type, spacing, margins, heads, page numbers, files. One ordered table of rules, each in its own function."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from fairhand.brief.format_file import find_file_names, find_file_types, find_print
from fairhand.brief.format_page import (
    find_heads,
    find_line_numbers,
    find_numbered_headings,
    find_page_numbers,
    find_title_pages,
)
from fairhand.brief.format_type import find_faces, find_indents, find_margins, find_sizes, find_spacing
from fairhand.brief.hit import Hit
from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.wording import TOLD, ask, force_of
from fairhand.model.requirement import Requirement, Value

_RULES: tuple[Callable[[Sentence], Iterator[Hit]], ...] = (
    find_sizes,
    find_faces,
    find_spacing,
    find_margins,
    find_page_numbers,
    find_heads,
    find_title_pages,
    find_numbered_headings,
    find_indents,
    find_line_numbers,
    find_print,
    find_file_types,
    find_file_names,
)


def find_format(sheet: Sheet) -> list[Requirement]:
    """The rules of form that the sheet states, each once."""
    found: list[Requirement] = []
    seen: dict[str, set[Value]] = {}
    for sentence in sheet.sentences:
        if TOLD.search(sentence.text) or (
            sentence.passage.kind == "row"
            and re.search(r"\t\d+ ?(?:%|points?|marks?|pts)?\t?$|\(\d+ ?%\)$", sentence.passage.text)
        ):
            continue
        for rule in _RULES:
            for what, value, start, end in rule(sentence):
                values = seen.setdefault(what, set())
                if value in values or (value is True and values) or (what == "page-numbers" and values):
                    continue
                if what == "title-page" and "no-title-page" in seen:
                    continue
                values.add(value)
                found.append(
                    ask(
                        sheet,
                        "format",
                        {"what": what, "value": value},
                        sentence.span(start, end),
                        force_of(sentence.text),
                    )
                )
    return found
