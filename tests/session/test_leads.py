"""Leads of a paper, through its files."""

from __future__ import annotations

import datetime as dt
import json
from pathlib import Path

import pytest

from fairhand.errors import FairhandError
from fairhand.session.job import Job
from fairhand.session.opened import OpenPaper
from fairhand.session.research.lead_choices import read_for_references, take_lead
from fairhand.session.research.leads import follow_lead, list_leads, mine_sources
from fairhand.session.research.support import list_searches

AT = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)

FIRST = """A history of the tide mills.

References

Lind, A. (2001). Tide mills of the northern coast. Quay University Press.

Okafor, B., & Marsh, C. (2016). How moorings were paid for in small harbours. Journal of Quay History, 7(2), 40–55.

Brandt, D. (1990). Bread and its price. Annals of Baking, 3, 1–9.
"""
SECOND = """References
[1] C. Marsh and B. Okafor. How moorings were paid for in small harbors. J. Quay Hist. 7(2):40-55, 2016.
[2] E. Quist. The debts of the harbour. PhD thesis, University of Hull, 1999.
"""


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    """A paper with two sources, each with a list, and a question."""
    folder = tmp_path / "moorings"
    (folder / "sources").mkdir(parents=True)
    records = [
        {
            "id": "one",
            "type": "book",
            "title": "A History of the Tide Mills",
            "author": [{"family": "Reid"}],
            "issued": "2018",
        },
        {"id": "two", "type": "book", "title": "Harbours", "author": [{"family": "Ward"}], "issued": "2019"},
        {
            "id": "quist",
            "type": "thesis",
            "title": "The Debts of the Harbour",
            "author": [{"family": "Quist"}],
            "issued": "1999",
        },
    ]
    (folder / "sources.json").write_text(json.dumps(records), "utf-8")
    (folder / "sources" / "one.txt").write_text(FIRST, "utf-8")
    (folder / "sources" / "two.txt").write_text(SECOND, "utf-8")
    (folder / "brief.txt").write_text(
        "Write 900 words. Use at least four sources, at least two of them peer-reviewed articles.\n", "utf-8"
    )
    (folder / "draft.md").write_text("# Moorings\n", "utf-8")
    return folder


def test_one_work_in_two_lists_is_one_lead_and_comes_first(paper: Path) -> None:
    """However its names and its journal are set; what is among the sources already is no lead."""
    found = list_leads(OpenPaper(paper))
    first = found.leads[0]
    assert first.lead.entry.id == "okafor-2016-moorings-were"
    assert first.lead.sources == ("one", "two")
    assert first.reasons[0] == "2 sources of yours point to it"
    assert not any("debts" in one.lead.entry.title.lower() for one in found.leads)
    assert found.mined == {"one": 3, "two": 2}


def test_a_lead_that_the_sheet_still_asks_for_says_so(paper: Path) -> None:
    """In the words in which the sheet's demand is told."""
    reasons = {one.lead.entry.id: one.reasons for one in list_leads(OpenPaper(paper)).leads}
    assert any("what the sheet still asks for" in reason for reason in reasons["brandt-1990-bread-price"])
    assert not any("the sheet" in reason for reason in reasons["lind-2001-tide-mills"])


def test_a_lead_near_an_open_question_comes_before_one_that_is_not(paper: Path) -> None:
    """And says by which words; an answered question counts no more."""
    asks = '[[questions]]\nid = "q1"\ntext = "Who built the tide mills?"\nstate = "{}"\n'
    (paper / "focus.toml").write_text(asks.format("open"), "utf-8")
    near = next(one for one in list_leads(OpenPaper(paper)).leads if one.lead.entry.id == "lind-2001-tide-mills")
    assert near.reasons == ("its title speaks of mills, tide, which you ask after: “Who built the tide mills?”",)
    (paper / "focus.toml").write_text(asks.format("answered"), "utf-8")
    near = next(one for one in list_leads(OpenPaper(paper)).leads if one.lead.entry.id == "lind-2001-tide-mills")
    assert near.reasons == ()


def test_what_was_mined_is_kept_until_the_text_changes(paper: Path) -> None:
    """A page that may not wait is told what was not looked through."""
    opened = OpenPaper(paper)
    before = list_leads(opened, at_once=True)
    assert [text.id for text in before.unmined] == ["one", "two"]
    assert mine_sources(paper, before.unmined, Job(lambda _: 0)) == 2
    assert list_leads(opened, at_once=True).unmined == ()
    (paper / "sources" / "two.txt").write_text(SECOND + "[3] F. Vance. Ebb. Hull: Quay Press, 2004.\n", "utf-8")
    assert [text.id for text in list_leads(opened, at_once=True).unmined] == ["two"]


def test_a_lead_taken_twice_stands_in_the_list_once(paper: Path) -> None:
    """Every field is as its reference has it, and says where it came from."""
    opened = OpenPaper(paper)
    lead = list_leads(opened).find("lind-2001-tide-mills")
    assert take_lead(paper, lead, opened.look().names) == "lind-2001"
    assert take_lead(paper, lead, opened.look().names) == "lind-2001"
    records = [one for one in json.loads((paper / "sources.json").read_text("utf-8")) if one["id"] == "lind-2001"]
    assert len(records) == 1
    assert records[0]["publisher"] == "Quay University Press"
    assert records[0]["custom"]["fairhand-from"]["publisher"] == [
        "the references of Reid (2018)",
        "Quay University Press",
    ]
    with pytest.raises(FairhandError, match="no lead has that name"):
        list_leads(opened).find("lind-2001-tide-mills")


def test_following_references_is_written_down_as_a_search(paper: Path) -> None:
    """With the source whose list was followed, what came of it, and what of that list was known before."""
    opened = OpenPaper(paper)
    records = json.loads((paper / "sources.json").read_text("utf-8"))
    known = {
        "id": "brandt",
        "type": "article-journal",
        "title": "Bread and its price",
        "author": [{"family": "Brandt"}],
    }
    (paper / "sources.json").write_text(json.dumps([*records, {**known, "issued": "1990"}]), "utf-8")
    assert follow_lead(opened, list_leads(opened).find("lind-2001-tide-mills"), AT) == "lind-2001"
    (search,) = list_searches(paper)[0]
    assert (search.words, search.route, search.kept) == ("Reid (2018)", "leads", ("brandt", "lind-2001"))


def test_a_source_read_for_its_references_only_counts_for_no_demand(paper: Path) -> None:
    """The mark is in its record, all else of which stays."""
    opened = OpenPaper(paper)
    read_for_references(paper, opened.look().entries["quist"], only=True)
    entry = opened.look().entries["quist"]
    assert entry.is_for_references
    assert entry.title == "The Debts of the Harbour"
    read_for_references(paper, entry, only=False)
    assert "custom" not in opened.look().entries["quist"].csl
