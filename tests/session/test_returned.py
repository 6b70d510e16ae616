"""A paper that came back, and is put away whole."""

from __future__ import annotations

import datetime as dt
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.desk.places import list_papers
from fairhand.desk.record import check_record, list_states
from fairhand.errors import FolderNotWritable, NoPaperHere, PaperExistsAlready
from fairhand.hand_in.account import Mark
from fairhand.session.hand_in.handing_in import read_hand_in
from fairhand.session.hand_in.returned import (
    compare_estimates,
    keep_marked_copy,
    keep_returned,
    put_away,
    read_comments,
    work_done,
)
from fairhand.session.schedule.overview import work_in_hand
from fairhand.session.schedule.plan import desk_pace, plan_desk
from fairhand.session.schedule.steps_done import end_step, find_step

AT = dt.datetime(2027, 3, 8, 12, tzinfo=dt.UTC)


def test_marks_and_comments_are_kept_and_added_to(demo_paper: Path) -> None:
    """As they were given; a criterion has one mark, and what is said twice stands once."""
    keep_returned(demo_paper, mark="B+", marks=[Mark("Argument", "18/25")], comments=["Whose diary?"], at=AT)
    keep_returned(demo_paper, marks=[Mark("Argument", "20/25"), Mark("Form", "5/5")], comments=["Whose  diary?"], at=AT)
    returned = read_hand_in(demo_paper).returned
    assert returned is not None
    assert (returned.mark, returned.comments) == ("B+", ("Whose diary?",))
    assert [(one.criterion, one.mark) for one in returned.marks] == [("Argument", "20/25"), ("Form", "5/5")]


def test_what_steps_took_corrects_the_next_plans(demo_paper: Path) -> None:
    """Also once the paper is put away: the pace rests on its log."""
    desk = demo_paper.parent
    for step in ("sources", "revision", "copy-edit", "proof", "final-reading"):
        asked = find_step(desk, f"tram-libraries/{step}", AT.replace(month=2))
        end_step(asked, 3 * asked.usual_minutes, at=AT.replace(month=2))
    estimates, pace = compare_estimates(demo_paper)
    assert {one.step for one in estimates} >= {"sources", "revision"}
    assert pace.is_own
    assert pace.likely == 3.0
    put_away(demo_paper)
    assert desk_pace(desk).likely == 3.0
    assert plan_desk(desk, AT, keep=False).pace.likely == 3.0


def test_the_whole_paper_is_put_away(demo_paper: Path) -> None:
    """Folder and archive with every file, the record whole; on the desk it is done and no longer in hand."""
    desk = demo_paper.parent
    keep_returned(demo_paper, mark="68", at=AT)
    keep_marked_copy(demo_paper, "marked.docx", b"marked")
    names = {path.relative_to(demo_paper).as_posix() for path in demo_paper.rglob("*") if path.is_file()}
    target, archive = put_away(demo_paper)
    assert not demo_paper.exists()
    assert check_record(target) == ()
    assert list_states(target)
    with zipfile.ZipFile(archive) as whole:
        inside = {name.removeprefix("tram-libraries/") for name in whole.namelist()}
        assert whole.read("tram-libraries/draft.md") == (target / "draft.md").read_bytes()
    assert inside == {name for name in names | {"record.sqlite"} if not name.startswith(".fairhand")}
    assert list_papers(desk) == ()
    assert work_in_hand(desk) == ()
    assert ("Nine Minutes of Reading", "68") in [(one.title, one.mark) for one in work_done(desk)]


def test_nothing_is_put_away_over_another(demo_paper: Path, tmp_path: Path) -> None:
    """Nor from where there is no desk, nor on a closed one; the paper stays where it is."""
    (demo_paper.parent / "done" / "tram-libraries").mkdir(parents=True)
    with pytest.raises(PaperExistsAlready, match="put away before"):
        put_away(demo_paper)
    (demo_paper.parent / "done" / "tram-libraries").rmdir()
    (demo_paper.parent / "done").chmod(0o555)
    try:
        with pytest.raises(FolderNotWritable):
            put_away(demo_paper)
    finally:
        (demo_paper.parent / "done").chmod(0o755)
    assert (demo_paper / "draft.md").exists()
    alone = tmp_path / "alone"
    alone.mkdir()
    (alone / "draft.md").write_text("Words.")
    with pytest.raises(NoPaperHere, match="no desk"):
        put_away(alone)


def test_putting_away_is_tried_again_where_it_failed(demo_paper: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A folder that the system would not move, as one that lies open elsewhere, leaves no archive behind."""

    def refuse(*_: object) -> None:
        raise PermissionError(13, "it is in use")

    with monkeypatch.context() as patched:
        patched.setattr(Path, "rename", refuse)
        with pytest.raises(FolderNotWritable, match="nothing can be written"):
            put_away(demo_paper)
    assert demo_paper.is_dir()
    target, archive = put_away(demo_paper)
    assert target.is_dir()
    assert archive.is_file()


def test_comments_of_a_marked_copy_are_read(demo_paper: Path, outside_data: Callable[[str], Path]) -> None:
    """Each with the words that it is about; a file of another kind is kept and not read."""
    copies = sorted(outside_data("data/docx").rglob("*.docx"))
    found = {path.name: read_comments(path.name, path.read_bytes()) for path in copies if "omment" in path.name}
    read = {name: comments for name, comments in found.items() if comments}
    assert read
    assert any("(on “" in one for comments in read.values() for one in comments)
    comments = next(iter(read.values()))
    assert keep_returned(demo_paper, comments=comments, at=AT).comments
    assert read_comments("marked.png", b"") == ()
