"""Sources added, whatever they come as; what stands at the end is the same however often it was begun."""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.citing.described import origins_of
from fairhand.citing.entries import read_entry
from fairhand.desk.clock import now
from fairhand.desk.inbox import list_inbox, put_in_inbox
from fairhand.desk.paper_files import read_paper
from fairhand.errors import DeskError, NotAllowedOutside, UnknownFormat
from fairhand.model.note import Note
from fairhand.planning.points import read_points
from fairhand.session.job import Job
from fairhand.session.opened import OpenPaper
from fairhand.session.research.noting import keep_note, list_notes
from fairhand.session.sources.adding import Added, Asked, add_sources, sort_asked
from fairhand.session.sources.intake import take_files
from fairhand.session.sources.joining import join_works
from fairhand.session.sources.looking_up import allow_outside, refuse_outside
from fairhand.session.sources.photographs import find_photograph

PAGE = "<!DOCTYPE html><title>Ebb</title><meta name='citation_author' content='Ada Lind'><p>The ebb scours {}.</p>"
RIS = b"TY  - BOOK\nAU  - Dun, Eva\nTI  - Peat\nPY  - 2004\nER  - \n"


@pytest.fixture
def paper(demo_paper: Path) -> Path:
    """A copy of the demo's paper."""
    return demo_paper


@pytest.fixture
def give(tmp_path: Path) -> Callable[[str, bytes], Path]:
    """Writes a file outside the paper."""

    def write(name: str, data: bytes) -> Path:
        path = tmp_path / "given" / name
        path.parent.mkdir(exist_ok=True, parents=True)
        path.write_bytes(data)
        return path

    return write


def add(paper: Path, *whats: Path | str) -> Added:
    """What came of adding these."""
    return Job[Added](lambda job: add_sources(paper, sort_asked([str(what) for what in whats]), job)).run()


def listed(paper: Path) -> dict[str, dict[str, object]]:
    """The records of the paper's list, by id."""
    return {one["id"]: one for one in json.loads((paper / "sources.json").read_text("utf-8"))}


def test_files_and_lists_join_together(paper: Path, give: Callable[[str, bytes], Path]) -> None:
    """A folder is taken whole: a page, a text, a photograph, a list; what is broken is told and stays."""
    before = set(listed(paper))
    give("ebb.html", PAGE.format("the quay").encode())
    give("notes on peat.txt", b"Peat grows slowly.\n")
    give("IMG_2.jpg", b"\xff\xd8\xff\xe0 picture")
    give("list.ris", RIS)
    broken = give("bad.pdf", b"%PDF-1.4 cut short")
    give("desktop.ini", b"[x]")
    added = add(paper, broken.parent)
    assert set(added.new) == set(listed(paper)) - before
    assert len(added.new) == 4
    assert [(one.name, one.outcome) for one in added.taken if one.outcome == "refused"] == [("bad.pdf", "refused")]
    assert broken.exists()
    page = next(one for one in listed(paper).values() if one.get("title") == "Ebb")
    assert origins_of(page)["author"] == "its citation tags"
    text = OpenPaper(paper).look().paper.texts[str(page["id"])]
    assert "The ebb scours the quay" in text.pages[0].text


def test_the_same_file_is_there_already(paper: Path, give: Callable[[str, bytes], Path]) -> None:
    """By its content, whatever its name; a second copy in the same folder too."""
    one, two = give("a.html", PAGE.format("x").encode()), give("b.html", PAGE.format("x").encode())
    first = add(paper, one, two)
    assert sorted(taken.outcome for taken in first.taken) == ["new", "there"]
    again = add(paper, two)
    assert (again.new, again.taken[0].outcome, again.taken[0].id) == ((), "there", first.new[0])


def test_a_file_that_was_put_in_place_but_not_listed_is_entered_under_its_name(
    paper: Path, give: Callable[[str, bytes], Path]
) -> None:
    """As when the program was killed between the two."""
    data = PAGE.format("y").encode()
    (paper / "sources" / "lind-nd.html").write_bytes(data)
    added = add(paper, give("c.html", data))
    assert added.new == ("lind-nd",)
    assert not list((paper / "sources").glob("lind-nd-2*"))


def test_no_new_source_takes_up_anothers_text(paper: Path, give: Callable[[str, bytes], Path]) -> None:
    """A file that stands there under the id that would be made keeps its own."""
    (paper / "sources" / "lind-nd.txt").write_bytes(b"Somebody else's.")
    assert add(paper, give("d.html", PAGE.format("z").encode())).new == ("lind-nd-2",)


def test_the_inbox_is_taken_in_one_step(paper: Path) -> None:
    """What is taken leaves it, what is refused stays, what is still being saved is not touched."""
    put_in_inbox(paper, "ebb.html", PAGE.format("w").encode())
    put_in_inbox(paper, "ebb.html", PAGE.format("v").encode())
    put_in_inbox(paper, "bad.pdf", b"%PDF-1.4 cut short")
    put_in_inbox(paper, "half.pdf.crdownload", b"%PDF")
    assert [path.name for path in list_inbox(paper)] == ["bad.pdf", "ebb 2.html", "ebb.html"]
    added = add(paper, *list_inbox(paper))
    assert len(added.new) == 2
    assert [path.name for path in list_inbox(paper)] == ["bad.pdf"]


def test_it_stops_where_it_is_told_to_and_goes_on(paper: Path, give: Callable[[str, bytes], Path]) -> None:
    """Nothing is half done; the same once more does the rest."""
    paths = [give(f"p{n}.html", PAGE.format(f"quay {n}").encode()) for n in range(6)]
    job: Job[Added] = Job(lambda job: add_sources(paper, sort_asked(list(map(str, paths))), job))
    job.cancel()
    stopped = job.run()
    assert (stopped.new, stopped.left) == ((), 6)
    assert len(add(paper, *paths).new) == 6


def test_the_same_work_is_offered_and_joined_only_when_asked(paper: Path, give: Callable[[str, bytes], Path]) -> None:
    """A record first and its file later: offered; then the file is the record's text, and notes go along."""
    add(paper, give("l.bib", b"@article{ebb, title={Ebb}, author={Lind, Ada}, doi={10.5555/e}, year=2016, volume=3}"))
    page = f"{PAGE.format('u')}<meta name='citation_doi' content='10.5555/E'><meta name='citation_issue' content='4'>"
    added = add(paper, give("e.html", page.encode()))
    (double,) = added.doubles
    assert (double.there, double.why) == ("ebb", "the same DOI")
    assert double.new in listed(paper)
    texts = OpenPaper(paper).look().paper.texts
    note = Note("", double.new, quotation="The ebb scours u.")
    keep_note(paper, note, "", texts, now())
    says = join_works(paper, double.there, double.new)
    record = listed(paper)["ebb"]
    assert double.new not in listed(paper)
    assert (record["volume"], record["issue"]) == ("3", "4")
    assert origins_of(record)["issue"] == "its citation tags"
    assert "sources/ebb.html" in " ".join(says)
    assert "The ebb scours u" in OpenPaper(paper).look().paper.texts["ebb"].pages[0].text
    assert "ebb" in [one.source for one in list_notes(paper)[0]]
    with pytest.raises(DeskError):
        join_works(paper, "ebb", double.new)


def test_joining_moves_what_points_rest_on(paper: Path) -> None:
    """A point that named both names one."""
    ids = list(listed(paper))[:2]
    data = {
        "points": [{"id": "p1", "text": "x", "sources": [{"id": ids[0], "page": "3"}, {"id": ids[1], "page": "3"}]}]
    }
    (paper / "points.json").write_text(json.dumps(data), "utf-8")
    join_works(paper, ids[0], ids[1])
    points, _ = read_points((paper / "points.json").read_text("utf-8"))
    assert [(one.source, one.page) for one in points.points[0].support] == [(ids[0], "3")]


def test_nothing_is_asked_elsewhere_until_it_is_allowed(paper: Path) -> None:
    """A number and an address are refused in one line; then the desk's settings say that they may be asked."""
    added = add(paper, "10.5555/tide", "https://shore.example/")
    assert [one.outcome for one in added.taken] == ["refused", "refused"]
    assert "desk.toml" in added.taken[0].problems[0]
    with pytest.raises(NotAllowedOutside):
        refuse_outside(read_paper(paper), "x")
    allow_outside(read_paper(paper))
    refuse_outside(read_paper(paper), "x")
    assert "outside = true" in (paper.parent / "desk.toml").read_text("utf-8")


def test_what_is_nothing_is_refused(paper: Path) -> None:
    """No file, no address, no number: said before anything is done."""
    with pytest.raises(UnknownFormat, match="no such file"):
        sort_asked(["nosuch.pdf"])
    assert sort_asked(["978-0-306-40615-7", "PMID 7", "https://doi.org/10.5555/x"]).numbers[2].kind == "DOI"
    assert len(Asked()) == 0


def test_a_list_in_a_text_file_is_told_from_a_text(give: Callable[[str, bytes], Path]) -> None:
    """By its first line."""
    asked = sort_asked([str(give("a.txt", RIS)), str(give("b.txt", b"PMID, a history\n@home"))])
    assert [path.name for path in (*asked.lists, *asked.files)] == ["a.txt", "b.txt"]


def test_a_file_that_goes_while_it_is_read_is_told(paper: Path, give: Callable[[str, bytes], Path]) -> None:
    """And the others go on."""
    gone = give("gone.html", PAGE.format("t").encode())
    path = shutil.copy(gone, gone.with_name("kept.html"))
    gone.unlink()
    job: Job[object] = Job(lambda _: None)
    taken = take_files(paper, (gone, Path(path)), job)
    assert {one.name: one.outcome for one in taken} == {"gone.html": "refused", "kept.html": "new"}


@pytest.mark.skipif(os.name != "posix", reason="the stand-in is a shell script")
def test_a_photograph_is_read_by_machine_where_there_is_one(
    paper: Path, give: Callable[[str, bytes], Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Its words stand beside it as a text, and are told to be doubtful; a stand-in reads the letters here."""
    reader = give("bin/tesseract", b"#!/bin/sh\ncat > /dev/null\necho 'The lane was drowned.'\n")
    reader.chmod(0o755)
    monkeypatch.setenv("PATH", f"{reader.parent}{os.pathsep}{os.environ['PATH']}")
    added = add(paper, give("lane.png", b"\x89PNG x"))
    opened = OpenPaper(paper)
    entry = opened.look().entries[added.new[0]]
    assert opened.look().paper.texts[entry.id].pages[0].text == "The lane was drowned."
    assert find_photograph(opened.source_texts, entry) == (b"\x89PNG x", "image/png")
    assert "by machine" in added.taken[0].problems[0]


def test_a_record_of_a_file_can_always_be_cited(paper: Path, give: Callable[[str, bytes], Path]) -> None:
    """Where a file says nothing at all its name is its title, told as such."""
    added = add(paper, give("IMG_0007.png", b"\x89PNG x"))
    entry, _ = read_entry(listed(paper)[added.new[0]], "")
    assert entry is not None
    assert entry.title == "IMG 0007"
    assert origins_of(entry.csl)["title"] == "the file’s name"
