"""A paper cast off, brought to its length by whole passages, and its passages moved."""

from __future__ import annotations

import datetime as dt
import json
from pathlib import Path

import pytest

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.readiness.analysis import Analysis
from fairhand.session.drafting.cast_off import cast_off, tell_cast, tell_section
from fairhand.session.drafting.fitting import carry_out, look_at_fit
from fairhand.session.drafting.moving import carry_move, list_movable, look_at_move
from fairhand.session.drafting.offcuts import list_offcuts
from fairhand.session.editing import state_of
from fairhand.session.opened import OpenPaper

AT = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)


def passage(opening: str, words: int) -> str:
    """A paragraph of so many words, in sentences, that says little."""
    filled = [*opening.split()]
    while len(filled) < words:
        filled += "and so the harbour and the town went on as they had before then".split()
    return " ".join(filled[:words]).rstrip(".") + "."


PASSAGES = (
    passage("This paper asks what the tides did for the town.", 60),
    passage("The Gross Harbour Tonnage (GHT) was first counted in 1860 by the pilots alone.", 70),
    passage("Lawns were cut in those years with scythes, and later with machines.", 80),
    passage("Ebb tides scoured the quay and kept it deep (Lind 12).", 90),
    passage("By 1871 the GHT had doubled, which nobody had foreseen (Marsh 7).", 100),
    passage("In the end the tides were kinder than the town.", 50),
)
TEXT = "# Tides\n\n" + "\n\n".join((*PASSAGES[:3], "## The trade", *PASSAGES[3:5], "## Conclusion", PASSAGES[5])) + "\n"


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    """A paper of 450 words in six passages, with two points and a sheet that is written by each test."""
    folder = tmp_path / "tides"
    folder.mkdir()
    sources = [
        {"id": one.lower(), "type": "book", "title": f"On {one}", "author": [{"family": one, "given": "A."}]}
        for one in ("Lind", "Marsh")
    ]
    points = [
        {
            "id": "p1",
            "text": "Ebb tides scoured the quay.",
            "weight": "main",
            "sources": [{"id": "lind", "page": "12"}],
        },
        {
            "id": "p2",
            "text": "The GHT doubled by 1871.",
            "weight": "optional",
            "sources": [{"id": "marsh", "page": "7"}],
        },
        {"id": "p3", "text": "Rates paid for it.", "weight": "main", "sources": [{"id": "marsh", "page": "30"}]},
    ]
    (folder / "sources.json").write_text(json.dumps(sources), "utf-8")
    (folder / "points.json").write_text(json.dumps({"thesis": "", "points": points}), "utf-8")
    (folder / "draft.md").write_text(TEXT, "utf-8")
    return folder


def ask(paper: Path, sheet: str) -> Analysis:
    """The paper with that sheet."""
    (paper / "brief.txt").write_text(f"{sheet}\n\nMLA style, ninth edition. Use at least two sources.\n", "utf-8")
    return OpenPaper(paper).look()


def test_the_whole_and_its_sections_are_cast_off(paper: Path) -> None:
    """The sections have all the words together; each has its pages, and the share that the plan gave it."""
    (paper / "paper.toml").write_text('[plan.shares]\n"The trade" = 200\n', "utf-8")
    ask(paper, "Write 400 to 500 words.")
    cast = cast_off(OpenPaper(paper))
    assert cast.words == sum(one.words for one in cast.sections)
    assert cast.words > 450
    assert cast.body_pages is not None
    assert sum(one.pages or 0 for one in cast.sections) == pytest.approx(cast.body_pages, abs=0.02)
    assert [one.title for one in cast.sections] == ["", "The trade", "Conclusion"]
    assert tell_section(cast.sections[1]).endswith("; the plan gives it 200")
    assert next(tell_cast(cast)).startswith(f"{cast.words} words count")


def test_the_least_loss_is_cut_and_what_leans_on_it_goes_with_it(paper: Path) -> None:
    """The lawns carry nothing; the tonnage cannot go without what uses it; opening and closing stay."""
    known = ask(paper, "Write at most 380 words.")
    fit = look_at_fit(known, paper)
    assert fit.says.startswith("It is ")
    assert [one.begins[:5] for one in fit.ways[0].passages] == ["Lawns"]
    assert fit.ways[0].lost == fit.ways[0].broken == ()
    for way in fit.ways:
        begins = {one.begins[:9] for one in way.passages}
        assert not begins & {"This pape", "In the en"}
        assert "The Gross" not in begins or "By 1871 t" in begins
    told = " ".join(line for way in fit.ways for line in way.lost)
    assert "The optional point p2" in told
    assert "Marsh" in told


def test_a_note_that_nothing_calls_any_more_is_told(paper: Path) -> None:
    """One that another passage calls too is not."""
    text = TEXT.replace("Lawns were cut", "Lawns were cut[^1] and mown[^2]").replace("Ebb tides", "Ebb[^2] tides")
    (paper / "draft.md").write_text(f"{text}\n[^1]: Of lawns.\n\n[^2]: Of tides.\n", "utf-8")
    fit = look_at_fit(ask(paper, "Write at most 380 words."), paper)
    assert fit.ways[0].lost == ("The note 1 is called from nowhere then: cut it as well.",)


def test_a_way_is_carried_out_and_taken_back(paper: Path) -> None:
    """Its passages are among the offcuts with the reason, the paper fits, and nothing is done from another draft."""
    known = ask(paper, "Write at most 380 words.")
    state = state_of(known.manuscript.text)
    assert carry_out(paper, known, 0, state, AT) == 1
    (kept,), _ = list_offcuts(paper)
    assert kept.offcut.reason == "for the length"
    now = OpenPaper(paper).look()
    assert look_at_fit(now, paper).words == 0
    with pytest.raises(DraftChangedOnDisk):
        carry_out(paper, now, 0, state, AT)
    short = ask(paper, "Write 440 to 600 words.")
    assert carry_out(paper, short, 0, state_of(short.manuscript.text), AT) == 1
    assert (paper / "draft.md").read_text("utf-8") == TEXT


def test_offcuts_come_back_with_their_ground(paper: Path) -> None:
    """What uses a term comes back with what explains it; what is not argued yet is told, and no padding."""
    known = ask(paper, "Write at most 300 words.")
    both = next(n for n, way in enumerate(look_at_fit(known, paper).ways) if len(way.passages) > 1)
    while look_at_fit(known, paper).words > 0:
        carry_out(paper, known, min(both, len(look_at_fit(known, paper).ways) - 1), state_of(known.manuscript.text), AT)
        known = OpenPaper(paper).look()
    kept, _ = list_offcuts(paper)
    assert kept
    short = ask(paper, "Write 900 to 1,000 words.")
    fit = look_at_fit(short, paper)
    assert fit.ways == ()
    assert any("Not argued yet: the main point p3" in one for one in fit.wanting)
    assert any(one.startswith("The offcuts have") for one in fit.wanting)


def test_a_length_in_pages_is_reckoned_in_words(paper: Path) -> None:
    """By the sheet's own rate, or by what a page of this paper holds in type; how is said."""
    asked = "The paper is to be 1 page long, double-spaced, with 250 words to a page."
    assert "reckoned at the sheet’s 250 words a page" in look_at_fit(ask(paper, asked), paper).says
    opened = OpenPaper(paper)
    ask(paper, "The paper is to be 3 to 4 pages long, double-spaced.")
    told = look_at_fit(opened.look(), paper)
    assert told.words < 0
    assert "words that a page of it holds in type" in told.says


def test_where_pages_count_the_draft_is_set_without_what_goes(paper: Path) -> None:
    """After the best way is carried out, the paper has no more pages in type than the sheet allows."""
    body = TEXT.replace(
        PASSAGES[2], "\n\n".join([PASSAGES[2], *(passage(f"In {year} it rained.", 90) for year in range(1860, 1870))])
    )
    (paper / "draft.md").write_text(body, "utf-8")
    known = ask(paper, "The paper is to be at most 3 pages long, double-spaced.")
    opened = OpenPaper(paper)
    assert look_at_fit(opened.look(), paper).words > 0
    carry_out(paper, opened.look(), 0, state_of(known.manuscript.text), AT)
    measured = OpenPaper(paper).look().measured
    assert measured is not None
    assert 2.5 < measured.body_pages <= 3.05


def test_a_way_that_cuts_too_much_is_told_last(paper: Path) -> None:
    """Where a sheet asks for a least as well, what leaves enough comes first."""
    fit = look_at_fit(ask(paper, "Write 385 to 400 words; headings do not count."), paper)
    short = ["short of what is asked" in " ".join(way.lost) for way in fit.ways]
    assert short == sorted(short)
    assert fit.words == 51


def test_where_no_length_is_asked_nothing_is_proposed(paper: Path) -> None:
    """Nor is there anything to say of an empty draft."""
    assert look_at_fit(ask(paper, "Write about tides."), paper).says == "The sheet asks for no length."
    (paper / "draft.md").write_text("", "utf-8")
    assert look_at_fit(OpenPaper(paper).look(), paper).says == "There is no draft yet."
    assert cast_off(OpenPaper(paper)).sections == ()


def test_a_move_tells_what_it_breaks_and_is_made(paper: Path) -> None:
    """What explains a term goes behind its use: that is told; the draft has every passage once, in the new order."""
    known = ask(paper, "Write about tides.")
    line = TEXT[: TEXT.index("The Gross")].count("\n") + 1
    move = look_at_move(known, line, 10**6)
    assert any("“GHT” is explained there" in one for one in move.broken)
    carry_move(paper, move)
    after = (paper / "draft.md").read_text("utf-8")
    assert sorted(after.strip().split("\n\n")) == sorted(TEXT.strip().split("\n\n"))
    assert after.endswith(f"{PASSAGES[1]}\n")
    with pytest.raises(DraftChangedOnDisk):
        carry_move(paper, move)


def test_a_section_moves_as_a_whole(paper: Path) -> None:
    """By its heading, with all that stands under it; moved there and back, the draft is as it was."""
    known = ask(paper, "Write about tides.")
    there = {one.begins: one.line for one in list_movable(known.manuscript)}
    move = look_at_move(known, there["## Conclusion"], there["## The trade"])
    carry_move(paper, move)
    text = (paper / "draft.md").read_text("utf-8")
    assert text.index("## Conclusion") < text.index(PASSAGES[5]) < text.index("## The trade") < text.index(PASSAGES[4])
    back = OpenPaper(paper).look()
    there = {one.begins: one.line for one in list_movable(back.manuscript)}
    carry_move(paper, look_at_move(back, there["## Conclusion"], 10**6))
    assert (paper / "draft.md").read_text("utf-8") == TEXT


@pytest.mark.parametrize(("line", "before"), [(1, 5), (2, 5), (99, 5), (3, 3), (9, 11)])
def test_what_cannot_be_moved_is_said(paper: Path, line: int, before: int) -> None:
    """The title, an empty line, a line that is not there, a passage before itself, a section into itself."""
    known = ask(paper, "Write about tides.")
    with pytest.raises(FairhandError, match=r"draft\.md, line"):
        look_at_move(known, line, before)
