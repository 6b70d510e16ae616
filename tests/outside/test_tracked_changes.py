"""Tracked changes and comments of other people's DOCX files, against the published texts and the XML itself."""

from __future__ import annotations

import re
import zipfile
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

from lxml import etree

from fairhand.errors import FairhandError
from fairhand.press.pandoc import run_pandoc
from fairhand.reading.returned_docx import read_returned_docx
from fairhand.reading.taking import read_taken, take_request
from fairhand.reading.tracked import settle_changes
from fairhand.reading.word_files import read_docx

W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
FALLBACK = "{http://schemas.openxmlformats.org/markup-compatibility/2006}Fallback"
PARTS = re.compile(r"word/(?:document|footnotes|endnotes|header\d*|footer\d*)\.xml")
NO_CHANGE = ("comment", "moveFromRangeStart", "moveToRangeStart")
"""What names an author and is no change of its own: a move's range repeats the author of what it holds."""


def lines_of(data: bytes) -> list[list[str]]:
    """The words of each line, as our reader of sheets and sources has them; none where there is no text."""
    try:
        text = read_docx(data, "x.docx").texts[0]
    except FairhandError:
        return []
    return [line.split() for line in text.split("\n") if line.strip()]


def test_published_triples_are_accepted_and_refused(outside_data: Callable[[str], Path]) -> None:
    """Every text with its changes accepted, and with them refused, is the published one, line by line.

    Source: the revision accepter's test files of the Open XML PowerTools (MIT), those of which all three exist. The
    draft taken over from a file with its changes is the draft taken over from the published file.
    """
    files = {path.stem: path for path in outside_data("data/docx/set-5").rglob("*.docx")}
    triples = sorted(name for name in files if f"{name}-Accepted" in files and f"{name}-Rejected" in files)
    right = taken = 0
    for name in triples:
        for ending, accept in (("Accepted", True), ("Rejected", False)):
            data, published = files[name].read_bytes(), files[f"{name}-{ending}"].read_bytes()
            right += lines_of(settle_changes(data, name, accept=accept)) == lines_of(published)
            ours = read_taken(run_pandoc(take_request(data, ".docx", refuse=not accept)))[0]
            taken += ours == read_taken(run_pandoc(take_request(published, ".docx")))[0]
    total = 2 * len(triples)
    print(f"\ntracked changes settled as published: {right} of {total} texts; as drafts {taken} of {total}")
    assert len(triples) >= 40
    assert right == total
    assert taken == total


def named_in(path: Path) -> Iterator[tuple[str, str, str, str]]:
    """Every comment and change that the XML names an author of: what it is, its id, author and time."""
    with zipfile.ZipFile(path) as archive:
        for name in archive.namelist():
            if not PARTS.fullmatch(name) and name != "word/comments.xml":
                continue
            for element in etree.fromstring(archive.read(name)).iter(f"{W}*"):
                tag = etree.QName(element).localname
                wanted = tag == "comment" if name == "word/comments.xml" else tag not in NO_CHANGE
                former = any(one.tag == FALLBACK or str(one.tag).endswith("Change") for one in element.iterancestors())
                if element.get(f"{W}author") is not None and wanted and not former:
                    yield tag, element.get(f"{W}id", ""), element.get(f"{W}author", ""), element.get(f"{W}date", "")


def anchors_in(path: Path) -> dict[str, str]:
    """The words between the two ends of each comment, what was put in left out, straight from the XML."""
    found: dict[str, str] = {}
    open_: set[str] = set()
    with zipfile.ZipFile(path) as archive:
        for element in etree.fromstring(archive.read("word/document.xml")).iter(f"{W}*"):
            tag, name = etree.QName(element).localname, element.get(f"{W}id", "")
            if tag == "commentRangeStart":
                open_.add(name)
                found[name] = ""
            elif tag == "commentRangeEnd":
                open_.discard(name)
            elif tag in ("t", "delText") and not any(one.tag == f"{W}ins" for one in element.iterancestors()):
                for each in open_:
                    found[each] += element.text or ""
    return found


def test_every_comment_and_change_comes_in(outside_data: Callable[[str], Path]) -> None:
    """Each with its author and time as the XML has them, and each comment with the words that it stands over.

    Source: the DOCX test files of pandoc, Apache POI, python-docx, mammoth.js and the Open XML PowerTools.
    """
    kinds: Counter[str] = Counter()
    anchored = 0
    for path in sorted(outside_data("data/docx").rglob("*.docx")):
        try:
            returned = read_returned_docx(path.read_bytes(), path.name)
        except FairhandError:
            continue
        there = Counter((one[1], one[2], one[3]) for one in named_in(path))
        assert Counter((one.id, one.by, one.when) for one in returned.remarks) == there, path.name
        kinds.update(one.kind for one in returned.remarks)
        for one in returned.remarks:
            if one.kind == "comment" and (words := anchors_in(path).get(one.id)):
                assert "".join(one.span.of(returned.text).split()) == "".join(words.split()), (path.name, one)
                anchored += 1
    told = ", ".join(f"{number} {kind}s" for kind, number in kinds.items())
    print(f"\nwhat readers wrote, all come in: {told}; {anchored} comments over words, each over the right ones")
    assert kinds["comment"] >= 20
    assert kinds["insertion"] >= 1000
    assert kinds["deletion"] >= 800
