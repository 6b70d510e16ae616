"""What each style asks beyond its CSL file: the words of a second-hand citation, quotations, the list's title.

One row a style; the values are those of the manuals named in the row's ``follows``.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from fairhand.citing.ordering import ListOrder


@dataclass(frozen=True)
class StyleRules:
    """The rules of one style. **Source**: the manual in ``follows``; marks of certainty beside the rows below."""

    follows: str
    """The manual with its edition, as a finding names it."""
    in_text: Literal["author-page", "author-date", "numeric", "note"]
    """What a citation in the text consists of."""
    example: str
    """A citation of one author's page in that form."""
    list_title: str = "References"
    list_title_of_one: str = ""
    """The list's title where it holds a single work, if that differs."""
    secondary: str = "cited in"
    """The words that lead from the source's own author to the source that was read."""
    et_al_from: int = 3
    """Number of authors from which the text names the first alone, with *et al.*"""
    page_with_quotation: bool = True
    """Whether a quotation needs the page (or another locator) where the source has any."""
    first_letter: Literal["silent", "bracketed"] = "silent"
    """Whether the case of a quotation's first letter may change unmarked."""
    bracketed_ellipsis: bool = False
    """Whether points of omission must stand in square brackets."""
    block_from_words: int | None = None
    """A prose quotation of so many words is set as a block."""
    block_from_lines: int | None = None
    """A prose quotation of so many lines is set as a block."""
    block_from_verse_lines: int | None = None
    """Verse of so many lines is set as a block."""
    british: bool = False
    """Whether it is a British style: single quotation marks, the day before the month."""
    sorts_parenthesis: bool = False
    """Whether several works in one parenthesis stand in the order of the list."""
    manual: Literal["mla", "apa", "chicago", ""] = ""
    """The manual whose mends its records need before they are rendered."""
    edition: int = 0
    """Its edition, where it matters to a mend."""
    list_order: ListOrder = ""
    """What the list is ordered by; empty where the CSL file says it."""
    particle_first: bool = False
    """Whether *van Dam* stands in the list under *v*."""
    month_of_issue: bool = False
    """Whether a journal's issue is named with its month or season."""

    @property
    def block_threshold(self) -> str:
        """The block-quotation rule in words, or empty.

        >>> rules_of("apa-7").block_threshold
        '40 words or more'
        """
        if self.block_from_words:
            return f"{self.block_from_words} words or more"
        return f"{self.block_from_lines} lines or more" if self.block_from_lines else ""


# MLA: more than four lines of prose, more than three of verse; any change in brackets, the first letter too (6.36
# and 6.56, from memory). The list of a single work is titled in the singular (common practice).
_MLA = StyleRules(
    follows="MLA Handbook, 9th ed.",
    in_text="author-page",
    example="(Baron 194)",
    list_title="Works Cited",
    list_title_of_one="Work Cited",
    secondary="qtd. in",
    first_letter="bracketed",
    block_from_lines=5,
    block_from_verse_lines=4,
    manual="mla",
    list_order="name-title",
    particle_first=True,
)
# APA 7: 8.12 (order in a parenthesis), 8.6 (secondary), 8.17 (et al. from three), 8.25-8.31 (quotations).
_APA = StyleRules(
    follows="APA Publication Manual, 7th ed.",
    in_text="author-date",
    example="(Massoud, 2020, p. 4)",
    secondary="as cited in",
    block_from_words=40,
    sorts_parenthesis=True,
    manual="apa",
    list_order="name-date",
    particle_first=True,
)
# CMOS 17: 13.10 (block from 100 words, two lines of verse), 13.19 (first letter), 14.260 (secondary), 15.29 (et al.
# from four). CMOS 18: et al. from three (13.23, from memory).
_CHICAGO_NOTES = StyleRules(
    follows="Chicago Manual of Style, 17th ed., notes and bibliography",
    in_text="note",
    example="First Last, Title (City: Publisher, 2016), 315.",
    list_title="Bibliography",
    secondary="quoted in",
    et_al_from=4,
    block_from_words=100,
    block_from_verse_lines=2,
    manual="chicago",
    edition=17,
    list_order="name-title",
)
_CHICAGO_DATE = replace(
    _CHICAGO_NOTES,
    follows="Chicago Manual of Style, 17th ed., author-date",
    in_text="author-date",
    example="(Smith 2016, 315–16)",
    list_title="References",
    list_order="name-year",
    month_of_issue=True,
)
_NUMERIC = StyleRules(follows="", in_text="numeric", example="[1]", page_with_quotation=False)
_AUTHOR_DATE = StyleRules(follows="", in_text="author-date", example="(Smith 2016, p. 315)", list_order="name-year")

RULES = {
    "mla-9": _MLA,
    "apa-7": _APA,
    "apa-6": replace(_APA, follows="APA Publication Manual, 6th ed.", et_al_from=6),
    "chicago-notes-17": _CHICAGO_NOTES,
    "chicago-notes-18": replace(
        _CHICAGO_NOTES,
        follows="Chicago Manual of Style, 18th ed., notes and bibliography",
        et_al_from=3,
        edition=18,
    ),
    "chicago-author-date-17": _CHICAGO_DATE,
    "chicago-author-date-18": replace(
        _CHICAGO_DATE,
        follows="Chicago Manual of Style, 18th ed., author-date",
        et_al_from=3,
        edition=18,
        month_of_issue=False,
    ),
    # Turabian 25.2.2.1: a block from five lines; otherwise as CMOS 17.
    "turabian-notes-9": replace(
        _CHICAGO_NOTES, follows="Turabian, 9th ed., notes", block_from_words=None, block_from_lines=5
    ),
    "turabian-author-date-9": replace(
        _CHICAGO_DATE, follows="Turabian, 9th ed., author-date", block_from_words=None, block_from_lines=5
    ),
    # The rows below are from memory.
    "harvard": replace(
        _AUTHOR_DATE,
        british=True,
        follows="Cite Them Right, 12th ed. (Harvard)",
        example="(Smith, 2016, p. 315)",
        list_title="Reference list",
        secondary="cited in",
        et_al_from=4,
    ),
    "harvard-elsevier": replace(_AUTHOR_DATE, follows="Elsevier Harvard"),
    "harvard-sage": replace(_AUTHOR_DATE, follows="SAGE Harvard"),
    "ieee": replace(_NUMERIC, follows="IEEE Reference Guide (2023)", example="[1, p. 4]"),
    "ama-11": replace(_NUMERIC, follows="AMA Manual of Style, 11th ed.", example="superscript 1(p4)"),
    "vancouver": replace(_NUMERIC, follows="Citing Medicine, 2nd ed. (Vancouver)", example="(1)"),
    "asa": replace(_AUTHOR_DATE, follows="ASA Style Guide, 7th ed.", example="(Smith 2016:315)", block_from_words=40),
    "apsa": replace(_AUTHOR_DATE, follows="APSA Style Manual, 2018", et_al_from=4),
    "aaa": replace(_AUTHOR_DATE, follows="American Anthropological Association", list_title="References Cited"),
    "mhra-notes": StyleRules(
        british=True,
        follows="MHRA Style Guide, 4th ed., notes",
        in_text="note",
        example="First Last, Title (Publisher, 2016), p. 315.",
        list_title="Bibliography",
        secondary="quoted in",
        et_al_from=4,
        bracketed_ellipsis=True,
        block_from_words=40,
        block_from_verse_lines=3,
        list_order="name-title",
    ),
    "mhra-author-date": replace(
        _AUTHOR_DATE,
        british=True,
        follows="MHRA Style Guide, 4th ed., author-date",
        secondary="quoted in",
        et_al_from=4,
        bracketed_ellipsis=True,
        block_from_words=40,
        block_from_verse_lines=3,
    ),
    "oscola": StyleRules(
        british=True,
        follows="OSCOLA, 4th ed.",
        in_text="note",
        example="First Last, Title (Publisher 2016) 315.",
        list_title="Bibliography",
        et_al_from=4,
        block_from_lines=4,
    ),
    "bluebook": StyleRules(
        follows="The Bluebook, law reviews",
        in_text="note",
        example="First Last, Title 315 (2016).",
        list_title="Authorities",
        secondary="quoted in",
        block_from_words=50,
    ),
    "acs": replace(_NUMERIC, follows="ACS Guide to Scholarly Communication, 2022", example="superscript 1"),
    "cse-name-year": replace(_AUTHOR_DATE, follows="Scientific Style and Format, 9th ed., name-year"),
    "cse-citation-sequence": replace(
        _NUMERIC, follows="Scientific Style and Format, 9th ed., citation-sequence", example="(1)"
    ),
    "linguistics": replace(_AUTHOR_DATE, follows="Unified Style Sheet for Linguistics", example="(Smith 2016: 315)"),
}
"""The rules of each shipped style, by our name for it."""


def rules_of(name: str, *, is_note: bool = False, numeric: bool = False, title: str = "") -> StyleRules:
    """The rules of the style called ``name``; of a style that is not in the table, those of its kind.

    >>> rules_of("mla-9").list_title
    'Works Cited'
    """
    if name in RULES:
        return RULES[name]
    kind = RULES["oscola"] if is_note else _NUMERIC if numeric else _AUTHOR_DATE
    return replace(kind, follows=title, list_order="")
