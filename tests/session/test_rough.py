"""The rough draft, and the draft begun from it."""

from __future__ import annotations

import datetime as dt
import json
import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.desk.cache import keep_cached
from fairhand.desk.record import list_states
from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.point import Point, Points
from fairhand.planning.pace import read_log
from fairhand.session.drafting.rough import (
    add_at_end,
    aside,
    begin_draft,
    count_rough,
    lay_out_points,
    part_remarks,
    save_warm_up,
)
from fairhand.session.drafting.sitting import begin_sitting, end_sitting, find_sitting, tell_sitting

AT = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)


def test_the_draft_is_begun_and_the_rough_draft_stays(tmp_path: Path) -> None:
    """What stands in the one stands in the other, to the letter."""
    (tmp_path / "rough.md").write_text("Bad  first [NB: really?]\nwriting TK.\n", "utf-8")
    begin_draft(tmp_path)
    assert (tmp_path / "draft.md").read_bytes() == (tmp_path / "rough.md").read_bytes()
    begin_draft(tmp_path)


def test_a_remark_of_several_paragraphs_is_never_printed(tmp_path: Path) -> None:
    """Writing about the writing may run on in the rough draft; in the draft each of its paragraphs is an aside."""
    remark = "[NB: I do not know.\n\nWhat is this about,\nreally?\n\n\nAnd why?]"
    (tmp_path / "rough.md").write_text(f"One.\n\n{remark} Two.\n\nThree [NB: open.\n", "utf-8")
    begin_draft(tmp_path)
    draft = (tmp_path / "draft.md").read_text("utf-8")
    assert len(read_manuscript(draft).asides) == 4
    assert count_rough(draft) == 3
    assert (tmp_path / "rough.md").read_text("utf-8").count("[NB:") == 2


@given(st.text(alphabet="ab[]NBTK: \n"))
def test_parting_remarks_loses_no_word(text: str) -> None:
    """Whatever is written: but for labels and brackets the text is the same, and parted once it stays so."""
    parted = part_remarks(text)
    plain = re.compile(r"\[(?:NB|TK):|[\[\]\s]")
    assert plain.sub("", parted) == plain.sub("", text)
    assert part_remarks(parted) == parted


def test_a_draft_that_is_there_is_never_replaced_unasked(tmp_path: Path) -> None:
    """It gives way by the writer's word alone, and stays among the earlier states."""
    (tmp_path / "rough.md").write_text("New.\n", "utf-8")
    (tmp_path / "draft.md").write_text("Old.\n", "utf-8")
    with pytest.raises(DraftChangedOnDisk, match="there is a draft already"):
        begin_draft(tmp_path)
    assert (tmp_path / "draft.md").read_text("utf-8") == "Old.\n"
    begin_draft(tmp_path, over=True)
    assert (tmp_path / "draft.md").read_text("utf-8") == "New.\n"
    assert [state.how for state in list_states(tmp_path, "draft.md")] == ["changed outside", "written"]


def test_nothing_is_begun_from_nothing(tmp_path: Path) -> None:
    """An empty rough draft does not empty the draft."""
    (tmp_path / "draft.md").write_text("Old.\n", "utf-8")
    with pytest.raises(FairhandError, match="nothing is written there yet"):
        begin_draft(tmp_path, over=True)


def test_the_points_are_set_out_as_asides(tmp_path: Path) -> None:
    """They are never printed nor counted, whatever brackets they hold; what is written stays above them."""
    (tmp_path / "rough.md").write_text("First words.", "utf-8")
    add_at_end(tmp_path, lay_out_points(Points("", (Point("p1", "Tides [of 1860] scour."),))))
    text = (tmp_path / "rough.md").read_text("utf-8")
    assert text == "First words.\n\n[NB: Tides (of 1860) scour.]\n"
    assert count_rough(text) == 2
    assert aside("one\ntwo") == "[NB: one two]"


def test_a_sitting_is_kept_as_work_on_the_draft(tmp_path: Path) -> None:
    """The plan reads how long it took and what is left: 350 words are still to come at 350 words an hour."""
    (tmp_path / "rough.md").write_text("word " * 400, "utf-8")
    begin_sitting(tmp_path, 300, "words", AT)
    (tmp_path / "rough.md").write_text("word " * 650, "utf-8")
    later = AT + dt.timedelta(minutes=25)
    sitting = find_sitting(tmp_path, later)
    assert sitting is not None
    assert tell_sitting(tmp_path, sitting, later, is_asked=False) == ""
    assert tell_sitting(tmp_path, sitting, later, is_asked=True).startswith("25 minutes so far, 250 words more;")
    assert end_sitting(tmp_path, sitting, 1000, later) == "25 minutes, 250 words more."
    (one,) = read_log((tmp_path / "time.jsonl").read_text("utf-8"))[0]
    assert (one.step, one.took_minutes, one.left_minutes, one.left_out) == ("draft", 25, 60, False)
    assert json.loads((tmp_path / "time.jsonl").read_text("utf-8"))["when"] == later.isoformat()
    assert find_sitting(tmp_path, later) is None


def test_a_sitting_is_found_again_and_one_that_nobody_ended_forgotten(tmp_path: Path) -> None:
    """Whatever page was looked at meanwhile; its minutes over, that is said; after half a day it is none."""
    assert find_sitting(tmp_path, AT) is None
    begin_sitting(tmp_path, 25, "minutes", AT)
    sitting = find_sitting(tmp_path, AT + dt.timedelta(minutes=26))
    assert sitting is not None
    assert tell_sitting(tmp_path, sitting, AT, is_asked=False) == ""
    assert "The time is over" in tell_sitting(tmp_path, sitting, AT + dt.timedelta(minutes=26), is_asked=False)
    assert find_sitting(tmp_path, AT + dt.timedelta(hours=13)) is None
    assert find_sitting(tmp_path, AT - dt.timedelta(hours=1)) is None
    keep_cached(tmp_path, "sitting", b'{"began": 3}')
    assert find_sitting(tmp_path, AT) is None


def test_every_state_of_the_warm_up_page_is_kept(tmp_path: Path) -> None:
    """It belongs to the desk, and its states stand in the desk's record."""
    seen = save_warm_up(tmp_path, "one", None)
    save_warm_up(tmp_path, "two", seen)
    assert len(list_states(tmp_path, "warm-up.md")) == 2
    with pytest.raises(DraftChangedOnDisk):
        save_warm_up(tmp_path, "three", seen)
