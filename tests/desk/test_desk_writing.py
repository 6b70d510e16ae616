"""Writing a file of the paper."""

import datetime as dt
import multiprocessing
import os
import stat
from pathlib import Path

import pytest

from fairhand.desk.disk import put_file
from fairhand.desk.paper_files import read_paper
from fairhand.desk.record import list_states, state_bytes
from fairhand.desk.seen import hash_bytes
from fairhand.desk.writing import write_file
from fairhand.errors import DeskError, DraftChangedOnDisk, FolderNotWritable

NOON = dt.datetime(2026, 3, 2, 12, 0, tzinfo=dt.UTC)


def test_a_new_file_and_its_next_state(tmp_path: Path) -> None:
    """What is written stands there, and each state is in the record."""
    first = write_file(tmp_path, "draft.md", b"one", None, at=NOON)
    second = write_file(tmp_path, "draft.md", b"two", first.sha256, at=NOON)
    assert (tmp_path / "draft.md").read_bytes() == b"two" == second.data
    states = list_states(tmp_path)
    assert [(state.seq, state.how, state.at) for state in states] == [(1, "written", NOON), (2, "written", NOON)]
    assert [state_bytes(tmp_path, state.seq) for state in states] == [b"one", b"two"]


@pytest.mark.parametrize("present", [b"theirs", None])
def test_a_file_changed_behind_our_back_is_not_overwritten(tmp_path: Path, present: bytes | None) -> None:
    """A file that is not the one that was seen is left as it is, and nothing half-written stays behind."""
    if present:
        (tmp_path / "draft.md").write_bytes(present)
    with pytest.raises(DraftChangedOnDisk, match=r"draft\.md: .*; nothing was written"):
        write_file(tmp_path, "draft.md", b"ours", hash_bytes(b"seen"))
    assert not present or (tmp_path / "draft.md").read_bytes() == present
    assert [path.name for path in tmp_path.iterdir() if path.name != ".fairhand"] == (["draft.md"] if present else [])


def test_a_file_that_should_not_be_there_is_not_overwritten(tmp_path: Path) -> None:
    """To write a new file is refused where one stands."""
    (tmp_path / "draft.md").write_bytes(b"theirs")
    with pytest.raises(DraftChangedOnDisk, match="stands there already"):
        write_file(tmp_path, "draft.md", b"ours", None)


def test_what_another_program_wrote_is_kept_before_it_is_replaced(tmp_path: Path) -> None:
    """A text made elsewhere, seen and then replaced, can be brought back."""
    (tmp_path / "draft.md").write_bytes(b"by hand")
    write_file(tmp_path, "draft.md", b"ours", hash_bytes(b"by hand"))
    assert [(state.how, state_bytes(tmp_path, state.seq)) for state in list_states(tmp_path)] == [
        ("changed outside", b"by hand"),
        ("written", b"ours"),
    ]


@pytest.mark.parametrize(
    "name",
    [
        "",
        ".",
        "..",
        "../draft.md",
        "/etc/x",
        "sources/../../x",
        "C:\\x",
        "a\\..\\b",
        "record.sqlite",
        ".fairhand/x",
        "a\0b",
    ],
)
def test_a_name_that_leads_out_is_refused(tmp_path: Path, name: str) -> None:
    """Nothing is written outside the folder, nor over the record or the cache."""
    folder = tmp_path / "paper"
    folder.mkdir()
    with pytest.raises(FolderNotWritable, match="within that folder"):
        write_file(folder, name, b"x", None)
    assert list(tmp_path.iterdir()) == [folder]


def test_a_link_that_leads_out_is_not_written_through(tmp_path: Path) -> None:
    """A draft that is a link to another place stays as it is there."""
    away = tmp_path / "away.md"
    away.write_bytes(b"far")
    (tmp_path / "paper").mkdir()
    (tmp_path / "paper" / "draft.md").symlink_to(away)
    with pytest.raises(FolderNotWritable):
        write_file(tmp_path / "paper", "draft.md", b"x", hash_bytes(b"far"))
    assert away.read_bytes() == b"far"


def test_the_mode_is_kept(tmp_path: Path) -> None:
    """A private draft stays private; a new file has the mode that the system gives."""
    path = tmp_path / "draft.md"
    path.write_bytes(b"one")
    path.chmod(0o600)
    write_file(tmp_path, "draft.md", b"two", hash_bytes(b"one"))
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_a_closed_folder_is_said(tmp_path: Path) -> None:
    """A read-only folder, or file, is told in one line, and left alone even by those whom nothing stops."""
    (tmp_path / "draft.md").write_bytes(b"one")
    (tmp_path / "draft.md").chmod(0o444)
    with pytest.raises(FolderNotWritable, match="read-only"):
        write_file(tmp_path, "draft.md", b"two", hash_bytes(b"one"))
    tmp_path.chmod(0o555)
    try:
        with pytest.raises(FolderNotWritable, match="read-only"):
            write_file(tmp_path, "rough.md", b"two", None)
    finally:
        tmp_path.chmod(0o755)
    assert (tmp_path / "draft.md").read_bytes() == b"one"


def test_a_full_disk_loses_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the new bytes cannot be flushed, the old file stands and no piece of the new one."""
    seen = write_file(tmp_path, "sources/note.txt", b"one", None)

    def refuse(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", refuse)
    with pytest.raises(FolderNotWritable, match="No space left"):
        write_file(tmp_path, "sources/note.txt", b"two", seen.sha256)
    assert [(path.name, path.read_bytes()) for path in (tmp_path / "sources").iterdir()] == [("note.txt", b"one")]


def test_another_encoding_is_not_rewritten(tmp_path: Path) -> None:
    """A draft in another encoding than UTF-8 is read, and never rewritten in place."""
    data = "naïve".encode("cp1252")
    (tmp_path / "draft.md").write_bytes(data)
    seen = read_paper(tmp_path).files["draft.md"]
    with pytest.raises(DeskError, match="Windows-1252"):
        write_file(tmp_path, "draft.md", b"x", seen.sha256)
    assert (tmp_path / "draft.md").read_bytes() == data


def test_a_print_goes_where_it_is_sent(tmp_path: Path) -> None:
    """A fair copy may be put anywhere, as a whole; a missing folder is said."""
    assert put_file(tmp_path / "fair.pdf", b"%PDF").read_bytes() == b"%PDF"
    with pytest.raises(FolderNotWritable):
        put_file(tmp_path / "none" / "fair.pdf", b"%PDF")


def add_lines(folder: Path, writer: str, count: int) -> None:
    """Add lines to the draft, reading it anew whenever somebody else was quicker."""
    for number in range(count):
        while True:
            present = (folder / "draft.md").read_bytes()
            try:
                write_file(folder, "draft.md", present + f"{writer}{number}\n".encode(), hash_bytes(present))
            except DraftChangedOnDisk:
                continue
            break


def test_two_writers_lose_nothing(tmp_path: Path) -> None:
    """Two processes that write the same draft at once: every line of both is there, and every state in the record."""
    (tmp_path / "draft.md").write_bytes(b"")
    context = multiprocessing.get_context("spawn")
    writers = [context.Process(target=add_lines, args=(tmp_path, name, 20)) for name in "ab"]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join(60)
    lines = (tmp_path / "draft.md").read_text().split()
    assert sorted(lines) == sorted(f"{name}{number}" for name in "ab" for number in range(20))
    states = [state_bytes(tmp_path, state.seq) for state in list_states(tmp_path)]
    assert len(states) == 41
    assert states[-1] == (tmp_path / "draft.md").read_bytes()


def test_what_a_killed_process_left_half_written_is_swept_in_time(tmp_path: Path) -> None:
    """At the next save, once nobody can be writing it any more; what is the writer's, or being written, stays."""
    names = (".0123456789ab.part", ".ba9876543210.part", ".aside.part", "mine.part")
    for name in names:
        (tmp_path / name).write_bytes(b"half")
    (tmp_path / ".0123456789ab.new").mkdir()
    (tmp_path / ".0123456789ab.new" / "draft.md").write_bytes(b"half")
    for name in (names[0], names[2], names[3], ".0123456789ab.new"):
        os.utime(tmp_path / name, (1, 1))
    write_file(tmp_path, "draft.md", b"One.", None)
    left = {path.name for path in tmp_path.iterdir()} & {*names, ".0123456789ab.new"}
    assert left == {names[1], names[2], names[3]}
