"""A paper that is open."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from fairhand.model.request import PandocRequest
from fairhand.press import pandoc
from fairhand.readiness.judgement import NO_DRAFT
from fairhand.readiness.verdict import OF_THE_DRAFT
from fairhand.session.opened import OpenPaper

HOUR = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)


def test_the_demo_has_its_honest_faults_and_no_others(demo_paper: Path) -> None:
    """Each fault that was put into the demo's draft is found, at its place, and nothing else is."""
    verdict = OpenPaper(demo_paper, at=HOUR).verdict()
    found = [(f.check, f.weight, f.span.of(verdict.draft) if f.span else "") for f in verdict.findings]
    assert found == [
        ("section-missing", "must", ""),
        ("point-thin", "should", ""),
        ("point-dependent", "should", ""),
        ("source-uncited", "query", ""),
        ("placeholder-left", "must", "TK"),
        (
            "quotation-differs",
            "must",
            '"We put our faith in the public, because a lock would have cost more than the books"',
        ),
        ("quotation-elsewhere", "must", '"a large waiting room that had been taught to read" (3)'),
        ("doubled-word", "should", "and and"),
        ("citation-page-missing", "must", '"from the first a library for people who stood" (Brandvold)'),
        ("aside-left", "must", "[NB: find out what the book was?]"),
        ("citation-unknown", "must", "Sundby 44"),
    ]
    assert verdict.answer == "not ready"
    assert verdict.problems == ()


def test_a_mended_draft_is_judged_anew(demo_paper: Path) -> None:
    """What was mended is no longer found; the rest is."""
    paper = OpenPaper(demo_paper, at=HOUR)
    before = paper.verdict()
    draft = paper.look().paper.draft.replace("and and", "and").replace("our faith in", "our trust in")
    paper.with_draft(draft)
    gone = {f.check for f in before.findings} - {f.check for f in paper.verdict().findings}
    assert gone == {"doubled-word", "quotation-differs"}


def test_a_file_changed_outside_is_read_again(demo_paper: Path) -> None:
    """An editor may save while the paper is open."""
    paper = OpenPaper(demo_paper, at=HOUR)
    assert any(f.check == "source-uncited" for f in paper.verdict().findings)
    sources = demo_paper / "sources.json"
    sources.write_text(
        sources.read_text("utf-8").replace('"quist-1988"', '"sundby-1988"').replace("Quist", "Sundby"), "utf-8"
    )
    assert not any(f.check in {"source-uncited", "citation-unknown"} for f in paper.verdict().findings)


def test_an_engine_runs_only_for_what_is_new(demo_paper: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A change that touches no citation asks pandoc nothing; nor does another process on the same paper."""
    runs: list[PandocRequest] = []
    run = pandoc.run_pandoc

    def count(request: PandocRequest) -> bytes:
        runs.append(request)
        return run(request)

    monkeypatch.setattr(pandoc, "run_pandoc", count)
    paper = OpenPaper(demo_paper, at=HOUR)
    paper.verdict()
    assert len(runs) == 1
    paper.with_draft(paper.look().paper.draft.replace("and and", "and"))
    paper.verdict()
    OpenPaper(demo_paper, at=HOUR).verdict()
    assert len(runs) == 1
    paper.with_draft(paper.look().paper.draft.replace("(60)", "(61)"))
    paper.verdict()
    assert len(runs) == 2


def test_any_folder_is_a_paper(tmp_path: Path) -> None:
    """An empty folder has nothing to judge, and is told what to do first."""
    verdict = OpenPaper(tmp_path).verdict()
    assert verdict.answer == "not ready"
    assert verdict.measured is None
    assert "brief" in verdict.next_step


def test_a_draft_without_sources_or_sheet_is_judged(tmp_path: Path) -> None:
    """Whatever is missing is not there yet; the rest is judged."""
    (tmp_path / "draft.md").write_text("# Ebb\n\nThe tide turned. [NB: when?] It did.\n", "utf-8")
    verdict = OpenPaper(tmp_path).verdict()
    assert [f.check for f in verdict.findings] == ["aside-left"]
    assert verdict.measured is not None
    assert verdict.words.counted == 6


def test_the_writers_own_lines_above_the_title_stand_on_the_first_page_once(tmp_path: Path) -> None:
    """Name, course and date that the draft bears are set as the first page's lines, and not again as prose."""
    (tmp_path / "draft.md").write_text("Eva Lind\nEnglish 2\n\n# On Salt\n\nThe ferry lay below the town.\n", "utf-8")
    copy = OpenPaper(tmp_path, at=HOUR).fair_copy()
    assert (copy.front.author, copy.front.course) == ("Eva Lind", "English 2")
    assert [block.kind for block in copy.body] == ["paragraph"]


@pytest.mark.parametrize(
    ("sheet", "more", "first_page"),
    [
        ("Write 500 words on the ferry.", "", "heading"),
        ("Write 500 words on the ferry. Do not use outside sources.", "", "heading"),
        ("Write 500 words on the ferry. Use at least three sources.", "", "title-page"),
        ("Write 500 words on the ferry, in APA style.", "", "title-page"),
        ("Write 500 words on the ferry.", "So the log has it (Lind, 2019, p. 4).\n", "title-page"),
    ],
)
def test_a_paper_that_cites_nothing_has_no_styles_page(tmp_path: Path, sheet: str, more: str, first_page: str) -> None:
    """Where nobody names a style, asks for sources or cites one, the page is a plain manuscript's."""
    (tmp_path / "brief.txt").write_text(f"Essay\n\n{sheet}\n", "utf-8")
    (tmp_path / "draft.md").write_text(f"# On Salt\n\nThe ferry lay below the town. {more}", "utf-8")
    layout = OpenPaper(tmp_path, at=HOUR).look().layout
    assert (layout.first_page, layout.spacing) == (first_page, 2.0)


def test_what_is_asked_of_the_draft_is_not_judged_before_there_is_one(demo_paper: Path) -> None:
    """No demand on sources, length or sections is called met by an empty page."""
    (demo_paper / "draft.md").unlink()
    verdict = OpenPaper(demo_paper).verdict()
    of_draft = [one for one in verdict.judged if one.requirement.kind in OF_THE_DRAFT]
    assert of_draft
    assert {(one.judgement.state, one.judgement.why) for one in of_draft} == {("unmet", NO_DRAFT)}
