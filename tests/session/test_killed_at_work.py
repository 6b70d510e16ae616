"""Killed at any moment while it saves, marks, prints and records; a full disk and a closed folder."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from fairhand.desk.record import check_record, list_states
from fairhand.errors import FolderNotWritable
from fairhand.session.editing import read_text, save_text
from fairhand.session.hand_in.handing_in import state
from fairhand.session.record.printed_record import print_record

KILLS = int(os.environ.get("FAIRHAND_KILLS", "25"))
HERE = Path(__file__).parent
ROOT = HERE.parents[1]


@pytest.mark.skipif(not hasattr(os, "fork"), reason="no such processes on this system")
def test_what_was_said_to_be_saved_is_there_after_every_kill(demo_paper: Path) -> None:
    """Nothing is lost, nothing is torn; with FAIRHAND_KILLS=1000 the test is longer."""
    command = [sys.executable, str(HERE / "killing.py"), str(demo_paper), str(KILLS)]
    done = subprocess.run(
        command, env={**os.environ, "PYTHONPATH": str(ROOT / "src")}, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr[-3000:]
    print(f"\n{done.stdout.strip()}: nothing lost, nothing torn")
    assert not list(demo_paper.glob("*damaged*"))


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of two megabytes; skipped where none can be made."""
    place = tmp_path / "disk"
    place.mkdir()
    made = subprocess.run(
        ["mount", "-t", "tmpfs", "-o", "size=2m", "tmpfs", str(place)], capture_output=True, check=False
    )  # fmt: skip
    if made.returncode:
        pytest.skip("no small disk can be mounted here: run the tests as one who may")
    yield place
    subprocess.run(["umount", str(place)], check=False)


def fill(place: Path, leave: int) -> None:
    """The disk is full but for so many bytes."""
    free = os.statvfs(place)
    (place / "filled").write_bytes(b"\0" * max(0, free.f_bavail * free.f_frsize - leave))


@pytest.mark.parametrize("leave", [0, 8_192, 24_576, 40_960])
def test_a_full_disk_loses_nothing_and_is_told(small_disk: Path, leave: int) -> None:
    """However little is left: one clear line, the file as it was, the record whole; with room again all goes on."""
    paper = small_disk / "quays"
    paper.mkdir()
    save_text(paper, "draft.md", "One.\n", None)
    fill(small_disk, leave)
    long = "".join(f"{number} words that do not pack. " for number in range(20_000))
    for attempt in (
        lambda: save_text(paper, "draft.md", long, read_text(paper, "draft.md").seen),
        lambda: state(paper, "help", long),
        lambda: print_record(paper, "html", to=paper / "record.html"),
    ):
        told = ""
        try:
            attempt()
        except FolderNotWritable as error:
            told = str(error)
        assert "\n" not in told
        assert not told or str(small_disk) in told
    assert read_text(paper, "draft.md").text in {"One.\n", long}
    (small_disk / "filled").unlink()
    assert check_record(paper) == ()
    assert not list(paper.glob(".*.part"))
    save_text(paper, "draft.md", "Two.\n", read_text(paper, "draft.md").seen)
    assert list_states(paper, "draft.md")[-1].size == len("Two.\n")
    assert not list(paper.glob("*damaged*"))


def test_a_disk_that_refuses_long_files_is_not_taken_for_a_damaged_record(tmp_path: Path) -> None:
    """The system's own bound on a file's size, met while the record is written: told, and the record left in place."""
    resource = pytest.importorskip("resource")
    paper = tmp_path / "quays"
    paper.mkdir()
    save_text(paper, "draft.md", "One.\n", None)
    long = "".join(f"{number * number} " for number in range(60_000))
    seen = read_text(paper, "draft.md").seen
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (40_000, hard))
    try:
        with pytest.raises(FolderNotWritable):
            save_text(paper, "draft.md", long, seen)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
    assert read_text(paper, "draft.md").text == "One.\n"
    assert check_record(paper) == ()
    assert not list(paper.glob("*damaged*"))


def test_a_closed_folder_is_told_in_a_line(tmp_path: Path) -> None:
    """Saving, stating, printing: what is wrong, where, and what to do; nothing is changed."""
    paper = tmp_path / "quays"
    paper.mkdir()
    save_text(paper, "draft.md", "One.\n", None)
    before = {path.name: path.read_bytes() for path in paper.iterdir() if path.is_file()}
    paper.chmod(0o555)
    try:
        for attempt in (
            lambda: save_text(paper, "draft.md", "Two.\n", read_text(paper, "draft.md").seen),
            lambda: state(paper, "help", "Nobody."),
            lambda: print_record(paper, "html"),
        ):
            with pytest.raises(FolderNotWritable, match="nothing can be written there"):
                attempt()
    finally:
        paper.chmod(0o755)
    assert {path.name: path.read_bytes() for path in paper.iterdir() if path.is_file()} == before
