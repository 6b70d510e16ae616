"""What holds for any text at all."""

from __future__ import annotations

import datetime as dt
import json

from hypothesis import given, settings
from hypothesis import strategies as st

from fairhand.brief.read import given_day, read_brief, to_json

_PIECES = st.sampled_from(
    [
        *(
            "at least ",
            "no more than ",
            "12",
            "five ",
            "words",
            " pages",
            ", ",
            ". ",
            "\n",
            "\n\n",
            "- ",
            "(",
            ")",
            ": ",
        ),
        *("Due ", "Friday ", "May 5", "9/31", "5 pm", "sources", "peer-reviewed ", "AI ", "not ", "must ", "may ", "%"),
        *("APA ", "7th edition", "sections: ", "Introduction", "\t", "....", " | ", "late ", "per day", "upload to "),
        *(
            "Length",
            "“",
            "é",
            "\x0c",
            "\u2028",
            "PAPER 1: ",
            "PAPER 2: ",
            "excluding ",
            "bibliography",
            "Analyse ",
            "`",
        ),
    ]
)
_SHEETS = st.one_of(st.text(max_size=300), st.lists(_PIECES, max_size=60).map("".join))


@settings(max_examples=200)
@given(_SHEETS, st.none() | st.dates(dt.date(1990, 1, 1), dt.date(2090, 1, 1)))
def test_any_text_reads_and_evidence_stands_in_it(text: str, day: dt.date | None) -> None:
    """No text stops the reading; evidence is the text at its span, and ids are all different."""
    brief = read_brief([("a.txt", text)], day)
    for requirement in brief.requirements:
        assert 0 <= requirement.span.start <= requirement.span.end <= len(text)
        assert requirement.evidence == requirement.span.of(text)
    ids = [r.id for r in brief.requirements]
    assert len(set(ids)) == len(ids)
    json.dumps(to_json(brief))
    given_day([("a.txt", text)])


@settings(max_examples=50)
@given(_SHEETS)
def test_a_sheet_given_twice_says_nothing_new(text: str) -> None:
    """The same sheet read again contradicts nothing and adds nothing."""
    day = dt.date(2026, 9, 1)
    once = read_brief([("a.txt", text)], day)
    twice = read_brief([("a.txt", text), ("b.txt", text)], day)
    assert twice.conflicts == ()
    assert [r.values for r in twice.requirements] == [r.values for r in once.requirements]
