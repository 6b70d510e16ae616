"""CSL-JSON, BibTeX and RIS: each fault named with its place, the rest kept."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.bibtex import read_bibtex
from fairhand.citing.csl_json import read_csl_json
from fairhand.citing.entry_files import detect, read_entries
from fairhand.citing.ris import read_ris

BROKEN_JSON = """[
 {"id": "a", "type": "book", "title": "A"},
 {"id": "b", "type": "book" "title": "B"},
 {"id": "c", "type": "book", "title": "C},
 {"title": "D", "id": "d", "type": "book", "author": [{"family": "Ame"}]}
]
"""
BIBTEX = r"""
@string{tides = "Tides"}
@article{ame, author = {Am{\'e}, Ana and {Salt Board} and van der Berg, Jan}, title = {On \emph{Salt} \& Water},
  journal = tides, year = 2019, month = mar, pages = {101--13}}
@book{broken, title = "Broken
@phdthesis{quill, author = {Quill, A.}, title = {Rope}, school = {Quay}, year = {1999}}
@inproceedings{child, author = {Quill, A.}, title = {Knots}, crossref = {parent}}
@proceedings{parent, title = {Proceedings}, year = {2001}, editor = {Ed, It}}
@misc{web, title = {Page}, howpublished = {\url{https://example.org/a_b}}, date = {2019-05-02}}
"""
RIS = """TY  - JOUR
AU  - Ame, Ana
AU  - Salt Board
TI  - On Salt
  and Water
JO  - Tides
SP  - 101
EP  - 113
PY  - 2019/03//
TY  - BOOK
TI  - Rope
ID  - rope
ER  -
"""


def test_a_fault_in_one_json_record_costs_that_record() -> None:
    """A missing comma is told with line and column; the records around it are read."""
    entries, problems = read_csl_json(BROKEN_JSON)
    assert [entry.id for entry in entries] == ["a", "d"]
    assert "record 2 (line 3): line 3, column 29" in str(problems[0])
    assert len(problems) == 2


@pytest.mark.parametrize(("text", "told"), [("Salt, 2001.", "line 1, column 1"), ("[" * 100_000, "")])
def test_what_is_no_json_is_told(text: str, told: str) -> None:
    """Text that is no JSON at all gives no entries and one problem."""
    entries, problems = read_csl_json(text)
    assert entries == ()
    assert len(problems) == 1
    assert told in str(problems[0])


def test_two_records_of_one_id_are_both_kept_and_told() -> None:
    """The second gets another id; a word-for-word double is left out."""
    one, other = '{"id": "a", "type": "book", "title": "A"}', '{"id": "a", "type": "book", "title": "B"}'
    entries, problems = read_csl_json(f"[{one}, {other}, {one}]")
    assert [(entry.id, entry.title) for entry in entries] == [("a", "A"), ("a-2", "B")]
    assert ["record 2" in str(problems[0]), "word for word" in str(problems[1])] == [True, True]


def test_bibtex_is_read_with_its_faults() -> None:
    """LaTeX, bodies in braces, particles, abbreviations and parents are understood; a broken entry is told."""
    entries, problems = read_bibtex(BIBTEX, "refs.bib")
    by_id = {entry.id: entry for entry in entries}
    assert list(by_id) == ["ame", "quill", "child", "parent", "web"]
    assert [name.surname for name in by_id["ame"].authors] == ["Amé", "Salt Board", "van der Berg"]
    assert by_id["ame"].csl["title"] == "On <i>Salt</i> & Water"
    assert (by_id["ame"].container_title, by_id["ame"].page) == ("Tides", "101–13")
    assert by_id["child"].container_title == "Proceedings"
    assert by_id["child"].issued == by_id["parent"].issued
    assert (by_id["web"].type, by_id["web"].url) == ("webpage", "https://example.org/a_b")
    assert [problem.where for problem in problems] == ["refs.bib, line 5"]


def test_ris_without_its_end_is_read_and_told() -> None:
    """A record that does not end is ended by the next; values may run on in the next line."""
    entries, problems = read_ris(RIS, "refs.ris")
    assert [(entry.id, entry.title) for entry in entries] == [("ame-2019", "On Salt and Water"), ("rope", "Rope")]
    assert entries[0].page == "101-113"
    assert [problem.where for problem in problems] == ["refs.ris, record 1 (line 1)"]


def test_latin_1_is_read_and_told() -> None:
    """Accents survive, with a line that says what was done."""
    entries, problems = read_entries("@book{a, title = {Café}, year = 2001}".encode("latin-1"), "refs.bib")
    assert entries[0].title == "Café"
    assert "not UTF-8" in str(problems[0])


def test_another_format_is_told() -> None:
    """A list typed as prose is no format that is read here."""
    entries, problems = read_entries(b"Ame, A. (2001). Salt.", "refs.txt")
    assert entries == ()
    assert "none of the formats" in str(problems[0])


@given(
    st.text(alphabet=st.characters(codec="utf-8"), max_size=200) | st.sampled_from([BROKEN_JSON, BIBTEX, RIS]),
    st.data(),
)
def test_no_text_crashes_a_reader(text: str, data: st.DataObject) -> None:
    """Any text, and any piece of a right file, is read by each reader."""
    low = data.draw(st.integers(0, len(text)))
    piece = text[low : data.draw(st.integers(low, len(text)))]
    detect(piece)
    for read in (read_csl_json, read_bibtex, read_ris):
        read(piece, "here")


@given(st.binary(max_size=80))
def test_no_bytes_crash_a_reader(data: bytes) -> None:
    """Any bytes are read or told."""
    read_entries(data, "here")
