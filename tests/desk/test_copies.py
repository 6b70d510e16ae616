"""Versions that stand beside the writer's files."""

from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from fairhand.desk.copies import _tell_copy, list_copies
from fairhand.desk.record import bring_back, keep_state


def test_copies_in_conflict_are_versions(tmp_path: Path) -> None:
    """Whatever way a synchronised folder names them, copies in conflict are versions of the file."""
    for name in (
        "draft (Ida's conflicted copy 2026-03-02).md",
        "draft-LAPTOP-7Q2.md",
        "draft.sync-conflict-20260302-140500-ABCDEFG.md",
        "draft (1).md",
        "sources (conflict 2026-03-02-14-05-00).json",
        "jottings (Konflikt 2026-03-02).md",
    ):
        (tmp_path / name).write_bytes(b"x")
    assert sorted((copy.of, copy.kind) for copy in list_copies(tmp_path)) == [
        *[("draft.md", "in conflict")] * 4,
        ("jottings.md", "in conflict"),
        ("sources.json", "in conflict"),
    ]


def test_other_files_are_not_versions(tmp_path: Path) -> None:
    """The files themselves, and what the writer calls something else, are no copies in conflict."""
    for name in ("draft.md", "draft-old.md", "drafting.md", "draft 2 notes.md", "clean.md", "draft (1).docx"):
        (tmp_path / name).write_bytes(b"x")
    assert list_copies(tmp_path) == ()


def test_states_brought_back_are_versions(tmp_path: Path) -> None:
    """A state brought back is listed as what it is."""
    keep_state(tmp_path, "draft.md", b"old", "written")
    path = bring_back(tmp_path, 1)
    assert [(copy.of, copy.kind, copy.seen.path) for copy in list_copies(tmp_path)] == [
        ("draft.md", "brought back", path)
    ]


@given(st.text(max_size=80))
def test_any_name_is_told(name: str) -> None:
    """No name crashes the telling."""
    _tell_copy(f"draft{name}.md")
