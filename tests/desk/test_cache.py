"""What was worked out once."""

import os
from pathlib import Path

import pytest

from fairhand.desk.cache import fingerprint, keep_cached, read_cached
from fairhand.desk.disk import put_file
from fairhand.desk.record import keep_state


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    """A paper on a desk with a course."""
    for name in ("desk.toml", "courses/geo/course.toml", "peat/draft.md", "peat/sources/a.txt", "peat/brief/b.txt"):
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("1234", encoding="utf-8")
    (tmp_path / "peat" / "big.png").write_bytes(b"0" * 300_000)
    return tmp_path / "peat"


@pytest.mark.parametrize(
    "name", ["draft.md", "sources/a.txt", "brief/b.txt", "big.png", "../desk.toml", "../courses/geo/course.toml"]
)
def test_any_change_changes_the_fingerprint(paper: Path, name: str) -> None:
    """A change of the same size, within one tick of the clock and with the old time put back, is told."""
    path = paper / name
    before, stat = fingerprint(paper), path.stat()
    path.write_bytes(b"5" * stat.st_size)
    os.utime(path, ns=(stat.st_atime_ns, stat.st_mtime_ns))
    assert fingerprint(paper) != before


def test_a_file_that_comes_or_goes_changes_the_fingerprint(paper: Path) -> None:
    """A new source, or one that has gone, is told."""
    prints = {fingerprint(paper)}
    (paper / "sources" / "b.txt").write_bytes(b"x")
    prints.add(fingerprint(paper))
    (paper / "sources" / "a.txt").unlink()
    prints.add(fingerprint(paper))
    assert len(prints) == 3


def test_what_the_program_writes_by_itself_does_not_count(paper: Path) -> None:
    """The record, the cache and the prints leave the fingerprint as it is."""
    before = fingerprint(paper)
    keep_state(paper, "draft.md", b"1234", "written")
    keep_cached(paper, "k", b"v")
    (paper / "fair").mkdir()
    put_file(paper / "fair" / "peat.pdf", b"%PDF")
    assert fingerprint(paper) == before


def test_an_answer_is_kept_under_its_key(paper: Path) -> None:
    """What was kept comes back; another key has nothing."""
    assert keep_cached(paper, "ready 1", b"\0answer")
    assert (read_cached(paper, "ready 1"), read_cached(paper, "ready 2")) == (b"\0answer", None)


def test_a_damaged_answer_is_none(paper: Path) -> None:
    """An answer with a flipped byte is as good as missing, and so is one in a cache that was deleted."""
    keep_cached(paper, "k", b"answer")
    (stored,) = (paper / ".fairhand" / "answers").iterdir()
    data = bytearray(stored.read_bytes())
    data[-1] ^= 1
    stored.write_bytes(data)
    assert read_cached(paper, "k") is None
    stored.unlink()
    assert read_cached(paper, "k") is None


def test_a_read_only_folder_has_no_cache(paper: Path) -> None:
    """Nothing is written where the folder is closed, and that is no fault."""
    paper.chmod(0o555)
    try:
        assert not keep_cached(paper, "k", b"v")
        assert not (paper / ".fairhand").exists()
    finally:
        paper.chmod(0o755)


def test_the_cache_stays_small(paper: Path) -> None:
    """Old answers make way for new ones."""
    for number in range(70):
        keep_cached(paper, str(number), b"v")
    assert len(list((paper / ".fairhand" / "answers").iterdir())) == 64
    assert read_cached(paper, "69") == b"v"
