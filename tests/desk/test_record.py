"""The record of saved states."""

import contextlib
import datetime as dt
import signal
import sqlite3
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fairhand.desk.paper_files import read_paper
from fairhand.desk.record import bring_back, check_record, keep_state, list_states, notice_changes, state_bytes
from fairhand.desk.seen import hash_bytes
from fairhand.errors import DeskError, NoSuchState, RecordDamaged

AFTERNOON = dt.datetime(2026, 3, 2, 14, 5, tzinfo=dt.UTC)
NAMES = st.sampled_from(["draft.md", "rough.md", "paper.toml"])


def keep_many(folder: Path, count: int = 70) -> list[bytes]:
    """Many states of one draft that grows in the middle."""
    lines = [f"Line {number} of a draft about peat." for number in range(40)]
    kept = []
    for number in range(count):
        lines.insert(number % 30, f"Added in state {number}.")
        kept.append("\n".join(lines).encode())
        keep_state(folder, "draft.md", kept[-1], "written", at=AFTERNOON + dt.timedelta(minutes=number))
    return kept


@settings(deadline=None, max_examples=25)
@given(st.lists(st.tuples(NAMES, st.binary(max_size=60)), max_size=90))
def test_any_sequence_of_saves_comes_back_exactly(saves: list[tuple[str, bytes]]) -> None:
    """Every state of every file comes back byte for byte, in order, and the chain holds."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        last: dict[str, bytes] = {}
        expected = []
        for name, data in saves:
            keep_state(folder, name, data, "written")
            if last.get(name) != data:
                expected.append((name, data))
            last[name] = data
        assert [(state.name, state_bytes(folder, state.seq)) for state in list_states(folder)] == expected
        assert check_record(folder) == ()


def test_long_runs_come_back_exactly(tmp_path: Path) -> None:
    """States beyond one run of deltas come back exactly, and take far less room than their text."""
    kept = keep_many(tmp_path, 150)
    assert [state_bytes(tmp_path, number) for number in range(1, 151)] == kept
    assert check_record(tmp_path) == ()
    assert (tmp_path / "record.sqlite").stat().st_size < sum(map(len, kept)) / 5


def test_the_same_bytes_are_kept_once(tmp_path: Path) -> None:
    """Saving what is saved already adds nothing."""
    for _ in range(3):
        keep_state(tmp_path, "draft.md", b"one", "written")
    assert len(list_states(tmp_path)) == 1


def test_states_of_one_file_are_listed(tmp_path: Path) -> None:
    """The states may be listed for one file; a folder without a record has none."""
    assert list_states(tmp_path) == ()
    keep_state(tmp_path, "draft.md", b"one", "written")
    keep_state(tmp_path, "rough.md", b"two", "taken")
    assert [(state.name, state.how, state.size) for state in list_states(tmp_path, "rough.md")] == [
        ("rough.md", "taken", 3)
    ]


def test_a_state_comes_back_beside_the_present_file(tmp_path: Path) -> None:
    """The old state is a file of its own, named for its number and time; the present file stands."""
    keep_state(tmp_path, "draft.md", b"old", "written", at=AFTERNOON)
    (tmp_path / "draft.md").write_bytes(b"present")
    path = bring_back(tmp_path, 1, time_zone="Europe/Paris")
    assert (path.name, path.read_bytes()) == ("draft (state 1, 2026-03-02 15.05).md", b"old")
    assert bring_back(tmp_path, 1, time_zone="Europe/Paris") == path
    path.write_bytes(b"edited since")
    assert bring_back(tmp_path, 1, time_zone="Europe/Paris").name == "draft (state 1, 2026-03-02 15.05) 2.md"
    assert ((tmp_path / "draft.md").read_bytes(), path.read_bytes()) == (b"present", b"edited since")


def test_a_number_that_no_state_has_is_said(tmp_path: Path) -> None:
    """To ask for a state that is not there is told in one line."""
    keep_state(tmp_path, "draft.md", b"one", "written")
    for number in (0, 2, -1):
        with pytest.raises(NoSuchState, match="fairhand record"):
            state_bytes(tmp_path, number)


def test_changes_made_outside_are_noticed_at_opening(tmp_path: Path) -> None:
    """What another program wrote is a state from the next opening on; what is unchanged adds nothing."""
    (tmp_path / "draft.md").write_bytes(b"one")
    (tmp_path / "sources").mkdir()
    (tmp_path / "sources" / "a.txt").write_bytes(b"not the writer's own")
    for _ in range(2):
        assert notice_changes(read_paper(tmp_path)) == ()
    (tmp_path / "draft.md").write_bytes(b"two")
    notice_changes(read_paper(tmp_path))
    assert [(state.name, state.how, state_bytes(tmp_path, state.seq)) for state in list_states(tmp_path)] == [
        ("draft.md", "changed outside", b"one"),
        ("draft.md", "changed outside", b"two"),
    ]


def test_a_read_only_folder_keeps_no_states_and_says_so_once(tmp_path: Path) -> None:
    """However many files there are, one problem says that states are not kept."""
    for name in ("draft.md", "rough.md"):
        (tmp_path / name).write_bytes(b"x")
    tmp_path.chmod(0o555)
    try:
        problems = notice_changes(read_paper(tmp_path))
    finally:
        tmp_path.chmod(0o755)
    assert [problem.where for problem in problems] == ["record.sqlite"]
    assert not (tmp_path / "record.sqlite").exists()


@pytest.mark.parametrize("column", ["name", "at", "how", "size", "sha256", "place", "base", "hash", "blob"])
def test_a_change_to_any_part_of_a_state_is_noticed(tmp_path: Path, column: str) -> None:
    """Whatever is changed in a row, the check tells which state it is."""
    keep_many(tmp_path, 6)
    with contextlib.closing(sqlite3.connect(tmp_path / "record.sqlite")) as record:
        (value,) = record.execute(f"SELECT {column} FROM state WHERE seq = 4").fetchone()  # noqa: S608
        other = (
            value + 1
            if isinstance(value, int)
            else bytes([value[0], value[1] ^ 1, *value[2:]])
            if column == "blob"
            else "x"
        )
        record.execute(f"UPDATE state SET {column} = ? WHERE seq = 4", (other,))  # noqa: S608
        record.commit()
    assert any(problem.where == "record.sqlite, state 4" for problem in check_record(tmp_path))


def test_a_state_taken_out_is_noticed(tmp_path: Path) -> None:
    """A row that is missing from the middle breaks the chain."""
    keep_many(tmp_path, 6)
    with contextlib.closing(sqlite3.connect(tmp_path / "record.sqlite")) as record:
        record.execute("DELETE FROM state WHERE seq = 3")
        record.commit()
    assert "record.sqlite, state 4" in {problem.where for problem in check_record(tmp_path)}


@settings(deadline=None, max_examples=60)
@given(st.floats(0, 1, exclude_max=True), st.integers(1, 255))
def test_any_flipped_byte_is_noticed_or_changes_no_state(where: float, flip: int) -> None:
    """Wherever a byte of the file is flipped: either the check tells it, or every state comes back exactly."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        path = folder / "record.sqlite"
        path.write_bytes(RECORD)
        damaged = bytearray(RECORD)
        damaged[int(where * len(damaged))] ^= flip
        path.write_bytes(damaged)
        if check_record(folder) == ():
            assert [state_bytes(folder, state.seq) for state in list_states(folder)] == KEPT
        for number in range(1, len(KEPT) + 1):
            with contextlib.suppress(DeskError):
                assert state_bytes(folder, number) in KEPT
        keep_state(folder, "draft.md", b"after the damage", "written")
        assert b"after the damage" in [state_bytes(folder, state.seq) for state in list_states(folder)[-1:]]


def _make_record() -> tuple[list[bytes], bytes]:
    with tempfile.TemporaryDirectory() as place:
        kept = keep_many(Path(place), 12)
        return kept, (Path(place) / "record.sqlite").read_bytes()


KEPT, RECORD = _make_record()


@pytest.mark.parametrize("damage", ["no database", "cut", "another's"])
def test_a_damaged_record_is_set_aside_and_a_new_one_begun(tmp_path: Path, damage: str) -> None:
    """It is never deleted; what can be read of it is in the new record, and the check says that it stands aside."""
    path = tmp_path / "record.sqlite"
    if damage == "no database":
        path.write_bytes(b"this is no database" * 100)
    elif damage == "cut":
        path.write_bytes(RECORD[: len(RECORD) // 2])
    else:
        with contextlib.closing(sqlite3.connect(path)) as other:
            other.execute("CREATE TABLE state(colour)")
    before = path.read_bytes()
    with pytest.raises(RecordDamaged):
        list_states(tmp_path)
    keep_state(tmp_path, "draft.md", b"new", "written", at=AFTERNOON)
    aside = tmp_path / "record (damaged 2026-03-02 14.05.00).sqlite"
    assert aside.read_bytes() == before
    assert state_bytes(tmp_path, list_states(tmp_path)[-1].seq) == b"new"
    assert [problem.where for problem in check_record(tmp_path)] == [aside.name]


def test_one_damaged_state_takes_no_later_save_with_it(tmp_path: Path) -> None:
    """New states are kept whole after one that is damaged."""
    kept = keep_many(tmp_path, 6)
    with contextlib.closing(sqlite3.connect(tmp_path / "record.sqlite")) as record:
        record.execute("UPDATE state SET blob = x'00' WHERE seq IN (1, 6)")
        record.commit()
    with pytest.raises(RecordDamaged, match="state 6"):
        state_bytes(tmp_path, 6)
    keep_state(tmp_path, "draft.md", kept[-1] + b"more", "written")
    assert state_bytes(tmp_path, 7) == kept[-1] + b"more"


def test_a_record_held_by_another_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A record that another process holds for long is told, not waited for without end."""
    monkeypatch.setattr("fairhand.desk.record_file._PATIENCE_SECONDS", 0.05)
    keep_state(tmp_path, "draft.md", b"one", "written")
    with contextlib.closing(sqlite3.connect(tmp_path / "record.sqlite", isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(DeskError, match="another window"):
            keep_state(tmp_path, "draft.md", b"two", "written")


SAVING = """
import sys
from pathlib import Path
from fairhand.desk.seen import hash_bytes
from fairhand.desk.writing import write_file
folder, number, seen = Path(sys.argv[1]), 0, None
while True:
    number += 1
    seen = write_file(folder, "draft.md", (f"state {number}\\n" * 2000).encode(), seen).sha256
    print(number, flush=True)
"""


def test_a_process_killed_while_it_saves_loses_nothing(tmp_path: Path) -> None:
    """Killed again and again in the midst of saving: every save that was done is there, whole, and so is the file."""
    for turn in range(4):
        folder = tmp_path / str(turn)
        folder.mkdir()
        with subprocess.Popen([sys.executable, "-c", SAVING, str(folder)], stdout=subprocess.PIPE, text=True) as saving:
            assert saving.stdout
            for _ in range(5 + 3 * turn):
                done = int(saving.stdout.readline())
            saving.send_signal(signal.SIGKILL if hasattr(signal, "SIGKILL") else signal.SIGTERM)
            done = max([done, *map(int, saving.stdout.read().split())])
        assert check_record(folder) == ()
        states = [state_bytes(folder, state.seq) for state in list_states(folder)]
        assert states[:done] == [(f"state {number}\n" * 2000).encode() for number in range(1, done + 1)]
        assert hash_bytes((folder / "draft.md").read_bytes()) in {hash_bytes(data) for data in states[done - 1 :]}
