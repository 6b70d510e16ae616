"""Passages cut and brought back, through edits around them."""

from __future__ import annotations

import datetime as dt
import itertools
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import fairhand.session.drafting.offcuts as module
from fairhand.desk.record import list_states
from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.model.span import Span
from fairhand.session.drafting.offcuts import bring_back, cut_lines, cut_span, give_reason, list_offcuts
from fairhand.session.editing import save_text

AT = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
DRAFT = """# The Quay

The quay was built in 1860 by men who had never seen the sea. They had read of it. They built it well.

## The trade

Grain came first, and then coal came in the ships that had taken the grain away to the south.

- ebb
- slack
- flow

> A quay is a promise to the tide,
> and the tide keeps none.

Nobody counted the ships until 1871, when the harbour master began a book that he kept for thirty years.
"""


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    """A folder with that draft."""
    (tmp_path / "draft.md").write_text(DRAFT, "utf-8")
    return tmp_path


def text_of(paper: Path) -> str:
    """The draft as it stands."""
    return (paper / "draft.md").read_text("utf-8")


def cut(paper: Path, words: str, reason: str = "") -> str:
    """The words are cut where they first stand; the offcut's name."""
    at = text_of(paper).index(words)
    return cut_span(paper, Span(at, at + len(words)), words, reason, AT).name


def edit(paper: Path, was: str, now: str) -> None:
    """The draft is changed in an editor."""
    assert was in text_of(paper)
    (paper / "draft.md").write_text(text_of(paper).replace(was, now), "utf-8")


def test_a_paragraph_goes_with_its_blank_line_and_comes_back_to_the_letter(paper: Path) -> None:
    """The draft reads on without it; what it said, where, why and when are kept."""
    name = cut(paper, DRAFT.split("\n\n")[3], "no source")
    assert "Grain came" not in text_of(paper)
    assert "\n\n\n" not in text_of(paper)
    (kept,), problems = list_offcuts(paper)
    assert (kept.offcut.reason, kept.offcut.section, kept.offcut.when) == ("no source", "The trade", AT.isoformat())
    assert (kept.back.how, kept.line, problems) == ("as it was", 7, ())
    bring_back(paper, name)
    assert text_of(paper) == DRAFT
    assert list_offcuts(paper)[0] == ()


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.data())
def test_whatever_is_cut_comes_back_to_the_letter(tmp_path: Path, data: st.DataObject) -> None:
    """Any stretch, from within one word to across headings; nothing is in neither file at any time."""
    (tmp_path / "offcuts.jsonl").unlink(missing_ok=True)
    (tmp_path / "draft.md").write_text(DRAFT, "utf-8")
    start = data.draw(st.integers(0, len(DRAFT) - 1))
    end = data.draw(st.integers(start + 1, len(DRAFT)))
    if not DRAFT[start:end].strip():
        return
    one = cut_span(tmp_path, Span(start, end), DRAFT[start:end], "", AT)
    assert len(text_of(tmp_path)) + len(one.text) == len(DRAFT)
    bring_back(tmp_path, one.name)
    assert text_of(tmp_path) == DRAFT


PARTS = ("One is the first of them all.", "Two follows after it.", "Three stands midway here.", "Four is near the end.",
         "Five closes what was begun.")  # fmt: skip


@pytest.mark.parametrize("gone", [(1, 2), (2, 1), (1, 2, 3), (3, 1, 2), (0, 1), (4, 3)])
@pytest.mark.parametrize("gap", ["\n\n", " "])
def test_neighbours_come_back_in_any_order(tmp_path: Path, gone: tuple[int, ...], gap: str) -> None:
    """Paragraphs, and sentences, that stood in a row and were cut one by one: each finds its place again."""
    whole = gap.join(PARTS) + "\n"
    for order in itertools.permutations(range(len(gone))):
        (tmp_path / "offcuts.jsonl").unlink(missing_ok=True)
        (tmp_path / "draft.md").write_text(whole, "utf-8")
        names = [cut(tmp_path, PARTS[one]) for one in gone]
        for one in order:
            bring_back(tmp_path, names[one])
        assert text_of(tmp_path) == whole, order


def test_a_paragraph_comes_back_beside_what_was_edited(paper: Path) -> None:
    """Its neighbours were reworded, and something new was put between them."""
    name = cut(paper, DRAFT.split("\n\n")[3])
    edit(paper, "- ebb\n- slack\n- flow", "Of the tides I say nothing here.\n\n- ebb\n- slack\n- flow")
    edit(paper, "## The trade", "## The trade of the port")
    bring_back(paper, name)
    passages = text_of(paper).split("\n\n")
    assert passages[2:5] == ["## The trade of the port", DRAFT.split("\n\n")[3], "Of the tides I say nothing here."]


def test_a_paragraph_follows_its_neighbour_that_was_moved(paper: Path) -> None:
    """Where the paragraph before it went, it goes."""
    name = cut(paper, DRAFT.rsplit("\n\n", maxsplit=1)[-1].strip())
    block = "> A quay is a promise to the tide,\n> and the tide keeps none.\n\n"
    edit(paper, block.strip(), "")
    edit(paper, "# The Quay\n\n", "# The Quay\n\n" + block)
    bring_back(paper, name)
    assert text_of(paper).split("\n\n")[2].startswith("Nobody counted the ships")


def test_a_sentence_comes_back_into_its_edited_paragraph(paper: Path) -> None:
    """After the words that stood before it, though the rest was changed."""
    name = cut(paper, "They had read of it.")
    assert "seen the sea. They built it well." in text_of(paper)
    edit(paper, "They built it well.", "It stood, all the same, for a hundred years.")
    edit(paper, "The quay was built", "The old quay was built")
    bring_back(paper, name)
    assert "never seen the sea. They had read of it. It stood" in text_of(paper)


def test_an_item_of_a_list_comes_back_into_the_list(paper: Path) -> None:
    """Between the others, without a blank line."""
    name = cut(paper, "- slack")
    edit(paper, "- flow", "- the flow, in its turn")
    bring_back(paper, name)
    assert "- ebb\n- slack\n- the flow, in its turn" in text_of(paper)


def test_where_all_around_it_is_gone_it_comes_under_its_heading_or_at_the_end(paper: Path) -> None:
    """It is never lost, and where it went is said."""
    name = cut(paper, DRAFT.split("\n\n")[3])
    (paper / "draft.md").write_text("# Other\n\n## The trade\n\nNothing of the old text.\n", "utf-8")
    (kept,), _ = list_offcuts(paper)
    assert kept.back.how in {"beside what stood there", "under its heading"}
    (paper / "draft.md").write_text("Nothing.\n", "utf-8")
    assert bring_back(paper, name).how == "at the end"
    assert text_of(paper).startswith("Nothing.\n\nGrain came first")


def test_lines_are_cut_by_their_numbers(paper: Path) -> None:
    """From the terminal; lines that are not there, or are empty, are refused."""
    assert cut_lines(paper, 7, 7, "", AT).words.startswith("Grain came first")
    for first, last in ((0, 1), (3, 2), (1, 99)):
        with pytest.raises(FairhandError, match="it has no lines"):
            cut_lines(paper, first, last, "", AT)
    with pytest.raises(FairhandError, match="nothing is chosen"):
        cut_lines(paper, 2, 2, "", AT)


def test_nothing_is_cut_from_a_draft_that_was_changed(paper: Path) -> None:
    """Neither file is written."""
    with pytest.raises(DraftChangedOnDisk):
        cut_span(paper, Span(0, 5), "other", "", AT)
    assert not (paper / "offcuts.jsonl").exists()
    with pytest.raises(FairhandError, match="no such offcut"):
        bring_back(paper, "nobody")


def test_a_cut_that_fails_halfway_leaves_both_files(paper: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the draft cannot be written, the offcut is taken off the list again."""
    save = save_text

    def refuse(folder: Path, name: str, text: str, seen: str | None) -> object:
        if name == "draft.md":
            message = "draft.md: it was changed meanwhile"
            raise DraftChangedOnDisk(message)
        return save(folder, name, text, seen)

    monkeypatch.setattr(module, "save_text", refuse)
    with pytest.raises(DraftChangedOnDisk):
        cut_lines(paper, 7, 7, "", AT)
    assert text_of(paper) == DRAFT
    assert list_offcuts(paper)[0] == ()


def test_a_return_that_was_stopped_halfway_doubles_nothing(paper: Path) -> None:
    """The draft has it back, and the list still names it: brought back again, it stands once."""
    name = cut(paper, DRAFT.split("\n\n")[3])
    (paper / "draft.md").write_text(DRAFT, "utf-8")
    bring_back(paper, name)
    assert text_of(paper) == DRAFT
    assert list_offcuts(paper)[0] == ()


def test_lines_that_are_no_offcuts_stay(paper: Path) -> None:
    """A broken line is told of, with what to do; another's annotation is left alone; a reason can be given later."""
    (paper / "offcuts.jsonl").write_text('{"type": "Annotation"}\nbroken\n', "utf-8")
    name = cut(paper, "They had read of it.")
    give_reason(paper, name, "beside the point")
    (kept,), (problem,) = list_offcuts(paper)
    assert (kept.offcut.name, kept.offcut.reason) == (name, "beside the point")
    assert "offcuts.jsonl, line 2" in str(problem)
    bring_back(paper, name)
    assert (paper / "offcuts.jsonl").read_text("utf-8") == '{"type": "Annotation"}\nbroken\n'
    assert len(list_states(paper, "offcuts.jsonl")) > 2
