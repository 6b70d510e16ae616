"""Bodies cited by their abbreviation."""

from __future__ import annotations

import pytest

from fairhand.citing.recognise import recognise
from fairhand.citing.rendering import citation_request, read_answer
from fairhand.citing.resolve import resolve
from fairhand.citing.styles import find_style
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.inline import plain
from fairhand.press.pandoc import run_pandoc

NAME = "Council of Quay Towns"
COUNCIL = Entry(
    "cqt",
    "report",
    "Quays",
    authors=(Name(literal=NAME),),
    issued=Issued(2022),
    csl={
        "id": "cqt",
        "type": "report",
        "title": "Quays",
        "author": [{"literal": NAME}],
        "issued": {"date-parts": [[2022]]},
    },
)


@pytest.mark.parametrize(
    ("draft", "set_as"),
    [
        (f"It sank ({NAME} [CQT], 2022, p. 3), and again (CQT, 2022).", [f"({NAME} [CQT], 2022, p. 3)", "(CQT, 2022)"]),
        (f"The {NAME} (CQT, 2022) said so.", ["(CQT, 2022)"]),
        (f"It sank ({NAME}, 2022).", [f"({NAME}, 2022)"]),
    ],
)
def test_an_abbreviation_stays_as_the_draft_has_it(draft: str, set_as: list[str]) -> None:
    """APA 7, 8.21 (from memory): introduced in brackets, or beside the name in the sentence, and used from then on."""
    manuscript = read_manuscript(draft)
    mentions = recognise(manuscript, (COUNCIL,))
    resolved = resolve(manuscript, mentions, (COUNCIL,))
    request = citation_request(manuscript, mentions, resolved, (COUNCIL,), find_style("apa-7"))
    answer = read_answer(run_pandoc(request), request)
    assert [plain(one.inlines).replace("\u00a0", " ") for one in answer.mentions] == set_as
