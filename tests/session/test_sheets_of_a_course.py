"""Several sheets of one course, and what the writer has to tell twice: nothing."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

from fairhand.session.beginning import assignments_on, begin_desk, begin_paper
from fairhand.session.opened import OpenPaper

NOW = dt.datetime(2027, 1, 20, 9, tzinfo=dt.UTC)
HANDBOOK = """Handbook of the course
All essays follow MLA style, 9th edition, double-spaced.
Late essays lose 5 marks per working day and are not accepted after ten working days.
AI tools may not be used.
"""
ESSAYS = """Issued: 11 January 2027

ESSAY 1: The Ferry
1,000 words, four sources. The essay is due on 12 February 2027, 17:00.

ESSAY 2: The Lock
1,500 words, six sources. The essay is due on 19 March 2027, 17:00.

ESSAY 3: The Weir
2,000 words, eight sources. The essay is due on 23 April 2027, 17:00.
"""


def test_one_handbook_and_one_sheet_make_three_papers_without_a_field_to_fill(tmp_path: Path) -> None:
    """Each paper has its own task and day and the course's rules; beside the ticks nothing is to be filled in.

    Fields: the course's title, once. Clicks: one tick a paper, on the one page that asks which of them to begin.
    """
    desk = tmp_path / "desk"
    begin_desk(desk)
    sheet = tmp_path / "essays.txt"
    sheet.write_text(ESSAYS, "utf-8")
    titles = assignments_on([sheet])
    fields = ["Rivers"]
    ticks = list(titles)
    papers = [begin_paper(desk, title, [sheet], course=fields[0], assignment=title).folder for title in ticks]
    (desk / "courses" / "rivers" / "handbook.txt").write_text(HANDBOOK, "utf-8")

    assert len(fields) + len(ticks) == 4
    seen = []
    for folder in papers:
        paper = OpenPaper(folder, at=NOW).look().paper
        asked = {r.id: r.values for r in paper.requirements}
        seen.append((asked["length.paper"]["max"], asked["due.final"]["on"], asked["sources.any"]["min"]))
        assert {"style", "late", "policy.ai", "format.spacing"} <= set(asked)
        assert (paper.brief.questions, paper.brief.conflicts, paper.brief.unread) == ((), (), ())
        assert paper.style == "mla-9"
    assert seen == [(1000, "2027-02-12", 4), (1500, "2027-03-19", 6), (2000, "2027-04-23", 8)]
