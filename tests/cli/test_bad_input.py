"""Bad input: one clear line each, the rest of the job done, nothing lost."""

from __future__ import annotations

import io
import json
import os
import shutil
import stat
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest


def bomb() -> bytes:
    """A DOCX that would expand to half a gigabyte."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as archive:
        archive.writestr("[Content_Types].xml", "<Types/>")
        with archive.open("word/document.xml", "w") as part:
            for _ in range(32):
                part.write(b"<w:p>" + b" " * (1 << 24))
    return buffer.getvalue()


BOMB = bomb()


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("lund-1999.pdf", b"%PDF-1.7\n1 0 obj\n<< /Type /Catalog"),
        ("lund-1999.pdf", b""),
        ("lund-1999.pdf", b"no pdf at all"),
        ("lund-1999.docx", b"no zip at all"),
        ("lund-1999.docx", BOMB),
        ("lund-1999.epub", b"PK\x03\x04 broken"),
    ],
    ids=["cut-short", "empty", "no-pdf", "no-zip", "bomb", "broken-epub"],
)
def test_a_source_that_cannot_be_read_is_told_and_the_rest_judged(
    told: Callable[..., tuple[int, str, str]], demo_paper: Path, name: str, data: bytes
) -> None:
    """The file is named in one line; quotations from the other sources are still looked for."""
    (demo_paper / "sources" / "lund-1999.txt").unlink()
    (demo_paper / "sources" / name).write_bytes(data)
    code, out, err = told("ready", str(demo_paper), "--on", "2027-02-08")
    assert code == 1
    assert err == ""
    assert f"Note. sources/{name}" in out
    assert "a query. " in " ".join(out.split())
    assert "differs from its source" in " ".join(out.split())


@pytest.mark.parametrize(
    ("name", "data"),
    [("brief.pdf", b"%PDF-1.7 broken"), ("brief.docx", b"no zip"), ("brief.docx", BOMB), ("brief.odt", b"")],
    ids=["broken-pdf", "no-zip", "bomb", "empty-odt"],
)
def test_a_sheet_that_cannot_be_read_is_told(
    told: Callable[..., tuple[int, str, str]], demo_paper: Path, name: str, data: bytes
) -> None:
    """The draft is judged without it."""
    (demo_paper / "brief.txt").unlink()
    (demo_paper / name).write_bytes(data)
    code, out, _ = told("ready", str(demo_paper))
    assert code == 1
    assert f"Note. {name}" in out
    assert "differs from its source" in " ".join(out.split())
    assert told("brief", str(demo_paper / name))[0] == 2


def test_no_sheet_at_all(told: Callable[..., tuple[int, str, str]], demo_paper: Path) -> None:
    """The draft is judged, and a sheet is asked for."""
    (demo_paper / "brief.txt").unlink()
    code, out, _ = told("ready", str(demo_paper))
    assert code == 1
    assert "Bring in the assignment sheet: put it into the paper's folder" in " ".join(out.split())


def test_a_faulty_record_among_the_sources(told: Callable[..., tuple[int, str, str]], demo_paper: Path) -> None:
    """The record is named by its number; the others are read."""
    path = demo_paper / "sources.json"
    records = json.loads(path.read_text("utf-8"))
    records[1] = ["not a record"]
    path.write_text(json.dumps(records), "utf-8")
    _, out, _ = told("ready", str(demo_paper))
    assert "sources.json, record 2" in out
    assert "Haldane (2008), p. 1" in " ".join(out.split())


def test_sources_that_are_no_json(told: Callable[..., tuple[int, str, str]], demo_paper: Path) -> None:
    """The place of the fault is told; nothing is written over."""
    path = demo_paper / "sources.json"
    broken = path.read_text("utf-8")[:-30]
    path.write_text(broken, "utf-8")
    _, out, _ = told("ready", str(demo_paper))
    assert "Note. sources.json" in out
    assert path.read_text("utf-8") == broken


@pytest.mark.parametrize("encoding", ["cp1252", "utf-16", "utf-8-sig"])
def test_a_draft_in_another_encoding(
    told: Callable[..., tuple[int, str, str]], demo_paper: Path, encoding: str
) -> None:
    """It is read, its encoding told, and the file left alone."""
    path = demo_paper / "draft.md"
    data = path.read_text("utf-8").replace("Velden", "Veldén").encode(encoding)
    path.write_bytes(data)
    code, out, _ = told("ready", str(demo_paper))
    assert code == 1
    assert "differs from its source" in " ".join(out.split())
    assert path.read_bytes() == data


def test_a_draft_of_thirty_megabytes(told: Callable[..., tuple[int, str, str]], demo_paper: Path) -> None:
    """It is not read, and that is told."""
    (demo_paper / "draft.md").write_bytes(b"word " * 6_000_000)
    code, out, _ = told("ready", str(demo_paper))
    assert code == 1
    assert "Note. draft.md" in out


def test_a_folder_that_is_a_link(told: Callable[..., tuple[int, str, str]], demo_paper: Path, tmp_path: Path) -> None:
    """A link to a paper is the paper."""
    link = tmp_path / "link"
    try:
        link.symlink_to(demo_paper, target_is_directory=True)
    except OSError:
        pytest.skip("this machine makes no links")
    assert told("ready", str(link))[1] == told("ready", str(demo_paper))[1]


def test_a_read_only_folder(told: Callable[..., tuple[int, str, str]], demo_paper: Path, tmp_path: Path) -> None:
    """It is judged and printed elsewhere; nothing is written in it."""
    names = sorted(path.name for path in demo_paper.rglob("*"))
    for path in (demo_paper, *demo_paper.rglob("*")):
        path.chmod(path.stat().st_mode & ~(stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH))
    try:
        assert told("ready", str(demo_paper))[0] == 1
        assert told("print", str(demo_paper), "--anyway", "--to", str(tmp_path / "a.pdf"))[0] == 0
        code, _, err = told("print", str(demo_paper), "--anyway")
        assert (code, err.count("\n")) == (2, 1)
        assert sorted(path.name for path in demo_paper.rglob("*")) == names
    finally:
        for path in (demo_paper, *demo_paper.rglob("*")):
            path.chmod(path.stat().st_mode | stat.S_IWUSR)


def test_names_with_quotes_and_accents(told: Callable[..., tuple[int, str, str]], demo_paper: Path) -> None:
    """Folder and title may hold anything that the system allows."""
    odd = demo_paper.parent / "l'été « à » l'ombre"
    shutil.move(demo_paper, odd)
    draft = odd / "draft.md"
    draft.write_text(draft.read_text("utf-8").replace("# Nine Minutes", "# \"Nine\" Minutes #$\\ 'd' l’été —"), "utf-8")
    assert told("ready", str(odd))[0] == 1
    assert told("print", str(odd), "--anyway")[0] == 0
    assert (odd / "fair" / f"{odd.name}.pdf").read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(
    "words",
    [
        ("ready", "no-such-folder"),
        ("brief", "no-such-file.txt"),
        ("print", "no-such-folder"),
        ("take", "no-such-file.docx"),
        ("new", "A title", "--brief", "no-such-file.txt"),
        ("record", "no-such-folder"),
        ("ready", ".", "--on", "next week"),
    ],
    ids=" ".join,
)
def test_what_is_not_there(
    told: Callable[..., tuple[int, str, str]], words: tuple[str, ...], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The request ends with 2, and says what was not there."""
    monkeypatch.chdir(tmp_path)
    code, _, err = told(*words)
    assert code == 2
    assert err.strip()
    assert os.listdir(tmp_path) == []  # noqa: PTH208 - a plain list is compared


def test_no_draft_at_all(told: Callable[..., tuple[int, str, str]], tmp_path: Path) -> None:
    """What is missing is not there yet: the verdict says what to begin with, and printing says why it cannot."""
    (tmp_path / "brief.txt").write_text("Write 900 words in MLA style. Sections: Introduction; Conclusion.", "utf-8")
    code, out, _ = told("ready", str(tmp_path))
    assert code == 1
    assert "Begin the draft" in out
    assert "section.introduction" not in out
    code, _, err = told("print", str(tmp_path))
    assert (code, err.count("\n")) == (2, 1)
