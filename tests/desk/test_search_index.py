"""The full-text index on disk."""

from __future__ import annotations

import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from fairhand.desk.search_index import INDEX, Known, SearchIndex
from fairhand.model.piece import Piece
from fairhand.session.research.searching import read_words

SEEN = Known("looks", "content")


def pieces(source: str, *texts: str) -> list[Piece]:
    """A page for each text."""
    return [Piece(source, number, str(number + 1), 0, text, "Tides") for number, text in enumerate(texts)]


@pytest.fixture
def index(tmp_path: Path) -> SearchIndex:
    """An index of two sources."""
    made = SearchIndex(tmp_path, read_words)
    made.put("lind", SEEN, "Tides", pieces("lind", "The moorings were let.", "It rained."))
    made.put("reyes", SEEN, "Tides", pieces("reyes", "A mooring cost a mark; moorings are dear."))
    return made


def test_pieces_are_found_whole(index: SearchIndex) -> None:
    """With their source, page, place, words and title, the weightiest first."""
    assert index.find('"moor"', 9) == (
        *pieces("reyes", "A mooring cost a mark; moorings are dear."),
        *pieces("lind", "The moorings were let."),
    )
    assert index.count(["moor", "rain", "quay"]) == {"moor": 2, "rain": 1}
    assert index.measure()[0] == 3
    assert index.stems_beginning("moor") == ("moor",)
    assert index.vocabulary()["moorings"] == 2


def test_a_source_put_again_leaves_nothing_of_what_it_was(index: SearchIndex) -> None:
    """No piece, no word and no count; nor does one that is dropped."""
    index.put("lind", SEEN, "Tides", pieces("lind", "The quay was sold."))
    assert [piece.source for piece in index.find('"moor"', 9)] == ["reyes"]
    assert "rained" not in index.vocabulary()
    assert index.count(["moor", "rain", "quai"]) == {"moor": 1, "quai": 1}
    index.drop("reyes")
    assert not index.find('"moor"', 9)
    assert index.known() == {"lind": SEEN}
    index.drop("nobody")


def test_it_is_there_when_it_is_opened_again(index: SearchIndex, tmp_path: Path) -> None:
    """In its file."""
    index.close()
    again = SearchIndex(tmp_path, read_words)
    assert again.known().keys() == {"lind", "reyes"}
    again.close()


@pytest.mark.parametrize("damage", [b"no data base", b"SQLite format 3\0" + b"\xff" * 4000])
def test_a_damaged_index_is_made_anew(index: SearchIndex, tmp_path: Path, damage: bytes) -> None:
    """It held nothing that is not in the sources."""
    index.close()
    (tmp_path / ".fairhand" / INDEX).write_bytes(damage)
    again = SearchIndex(tmp_path, read_words)
    assert again.known() == {}
    again.put("lind", SEEN, "", pieces("lind", "The quay."))
    assert again.find('"quai"', 9)
    again.close()


def test_a_closed_folder_is_searched_all_the_same(tmp_path: Path) -> None:
    """The index is in memory, and nothing is written."""
    tmp_path.chmod(0o555)
    made = SearchIndex(tmp_path, read_words)
    made.put("lind", SEEN, "", pieces("lind", "The quay."))
    assert made.find('"quai"', 9)
    made.close()
    tmp_path.chmod(0o755)
    assert list(tmp_path.iterdir()) == []


def test_half_a_letter_hinders_nothing(tmp_path: Path) -> None:
    """SQLite cannot hold it; its place is kept."""
    made = SearchIndex(tmp_path, read_words)
    made.put("lind", SEEN, "", pieces("lind", "The \ud800quay."))
    assert made.find('"quai"', 9)[0].text == "The ?quay."
    made.close()


KILLED = """
import sys
from pathlib import Path
from fairhand.desk.search_index import Known, SearchIndex
from fairhand.model.piece import Piece
from fairhand.session.research.searching import read_words
index = SearchIndex(Path(sys.argv[1]), read_words)
print("begun", flush=True)
for number in range(100_000):
    name = f"s{number % 7}"
    pages = [Piece(name, page, "", 0, f"tide {number} and page {page}") for page in range(9)]
    index.put(name, Known("", str(number)), "", pages)
"""


def test_a_process_that_is_killed_leaves_a_whole_index(tmp_path: Path) -> None:
    """Whenever it happens: each source is in it once and whole."""
    for pause in (0.0, 0.03, 0.11, 0.27):
        writer = subprocess.Popen([sys.executable, "-c", KILLED, str(tmp_path)], stdout=subprocess.PIPE, text=True)
        assert writer.stdout is not None
        writer.stdout.readline()
        time.sleep(pause)
        writer.send_signal(signal.SIGKILL)
        writer.wait()
        writer.stdout.close()
        index = SearchIndex(tmp_path, read_words)
        known = index.known()
        assert len(index.find('"tide"', 999)) == 9 * len(known) == index.measure()[0]
        for one in known.values():
            assert len(index.find(f'"tide {one.content}"', 99)) == 9
        index.close()


def test_two_processes_begin_one_index(tmp_path: Path) -> None:
    """At the same moment; each puts its own source in."""
    script = KILLED.replace("range(100_000)", "[int(sys.argv[2])]")
    both = [
        subprocess.Popen([sys.executable, "-c", script, str(tmp_path), str(n)], stdout=subprocess.DEVNULL)
        for n in range(2)
    ]
    assert [writer.wait() for writer in both] == [0, 0]
    index = SearchIndex(tmp_path, read_words)
    assert index.known().keys() == {"s0", "s1"}
    index.close()
