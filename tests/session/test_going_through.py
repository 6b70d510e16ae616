"""The copy-edit gone through: what the checks offer is put in as it was meant, and nothing beside it is touched."""

from __future__ import annotations

import datetime as dt
import re
from pathlib import Path

import pytest

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.model.span import Span
from fairhand.proof.offering import offers
from fairhand.session.correction.going_through import (
    OF_LANGUAGE,
    leave_for_later,
    list_numbered,
    list_to_mend,
    mend_in_one_go,
    mend_offered,
    name_finding,
)
from fairhand.session.editing import Passage
from fairhand.session.opened import OpenPaper

LISTS = Path(__file__).parents[1] / "copyedit" / "grammar"
PLACE = re.compile(r"\[([^\[\]>]*)>([^\[\]>]*)\]")
AT = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
SHARE = 0.93
"""Of the sentences in which something is offered, how many must read as their list has them; .98 when it was set."""


def paper_of(tmp_path: Path, *paragraphs: str) -> Path:
    """A paper whose draft has these paragraphs."""
    (tmp_path / "desk.toml").write_text('spelling = "GB"\n', "utf-8")
    folder = tmp_path / "salt"
    folder.mkdir(exist_ok=True)
    (folder / "draft.md").write_text("\n\n".join(paragraphs) + "\n", "utf-8")
    return folder


def test_what_is_offered_reads_as_it_was_meant(tmp_path: Path) -> None:
    """Every fifth of the faulty sentences of the lists of grammar, mended in one go; none gets a blank too many."""
    lines = [line.rpartition("|")[2] for path in sorted(LISTS.glob("*.txt")) for line in path.read_text().splitlines()]
    meant = {PLACE.sub(r"\1", one): PLACE.sub(r"\2", one) for one in lines if PLACE.search(one) and one[0] != "#"}
    faulty = list(meant)[::5]
    paper = paper_of(tmp_path, *faulty)
    opened = OpenPaper(paper)
    found = [one.finding for one in list_numbered(opened) if one.finding.check not in ("spelling", "confused-words")]
    draft = opened.verdict().draft
    told = {_sentence_at(draft, one.span) for one in found if offers(one) and one.span}
    mend_offered(paper, found, draft, AT.date())
    mended = (paper / "draft.md").read_text("utf-8")
    right = [one for one in told if meant[one] in mended.split("\n\n")]
    assert not re.search(r"\w  +\w| [,;]|,,", mended)
    print(f"offers put in as meant: {len(right)} of {len(told)}, in {len(faulty)} faulty sentences")
    assert len(told) > len(faulty) / 3
    assert len(right) / len(told) >= SHARE, sorted(told - set(right))


def _sentence_at(draft: str, place: Span) -> str:
    """The paragraph of the draft that holds a place; here each is one sentence."""
    return draft[draft.rfind("\n\n", 0, place.start) + 1 :].strip().partition("\n\n")[0]


def test_a_draft_that_was_not_looked_at_is_not_mended(tmp_path: Path) -> None:
    """Nothing is written over what another program wrote meanwhile."""
    paper = paper_of(tmp_path, "It was larger then the state.")
    opened = OpenPaper(paper)
    found, draft = [one.finding for one in list_numbered(opened)], opened.verdict().draft
    (paper / "draft.md").write_text("It was larger then the town.\n", "utf-8")
    with pytest.raises(DraftChangedOnDisk, match="changed meanwhile"):
        mend_offered(paper, found, draft, AT.date())
    assert (paper / "draft.md").read_text("utf-8") == "It was larger then the town.\n"


def test_passages_are_saved_all_or_none(tmp_path: Path) -> None:
    """Where one of them was changed meanwhile, no other is written; what is not changed is no mending."""
    paper = paper_of(
        tmp_path, "It was larger then the state.", "Nobody knew a answer.", "It was larger then the state."
    )
    opened = OpenPaper(paper)
    draft = opened.verdict().draft
    marked = list_to_mend(opened.look().manuscript, [one.finding for one in list_numbered(opened)])
    assert [one.passage.alike for one in marked] == [(0, 2), (0, 1), (1, 2)]
    typed = [one.passage for one in marked]
    with pytest.raises(DraftChangedOnDisk):
        mend_in_one_go(paper, [*typed, Passage("It stood here once.", "It stands.")], marked, draft, AT.date())
    assert (paper / "draft.md").read_text("utf-8") == draft
    with pytest.raises(FairhandError, match="Nothing was changed"):
        mend_in_one_go(paper, [Passage(one.was, one.was, one.alike) for one in typed], marked, draft, AT.date())
    assert mend_in_one_go(paper, typed, marked, draft, AT.date()) == 3
    assert (paper / "draft.md").read_text("utf-8") == (
        "It was larger than the state.\n\nNobody knew an answer.\n\nIt was larger than the state.\n"
    )


def test_what_the_sheet_asks_cannot_be_left(tmp_path: Path) -> None:
    """It is waived in the brief; a finding that there is not is told with the last number."""
    paper = paper_of(tmp_path, "It was larger then the state.")
    (paper / "sources.json").write_text('[{"id": "lind-2001", "type": "book", "title": "Salt"}]', "utf-8")
    numbered = list_numbered(OpenPaper(paper))
    with pytest.raises(FairhandError, match="no finding has that number; the last is"):
        name_finding(numbered, 99)
    for one in numbered:
        if one.finding.span is None and not one.finding.concerns:
            with pytest.raises(FairhandError, match="waived in the brief"):
                leave_for_later(paper, one, "", "mend", AT)


def test_only_the_language_is_put_in() -> None:
    """A quotation, a page or a year is held against its source by the writer."""
    assert not OF_LANGUAGE & {"quotation-differs", "citation-year", "citation-page-missing", "aside-left"}
