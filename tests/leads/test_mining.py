"""References found in a source, split and taken apart."""

from __future__ import annotations

from pathlib import Path

import pypandoc
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.leads.fields import read_reference
from fairhand.leads.list_found import find_lists
from fairhand.leads.mining import mine_references
from fairhand.leads.record import record_of
from fairhand.leads.splitting import split_list
from fairhand.model.source import Page, SourceText
from fairhand.reading.source import read_source

TURNED = """The quays were sold in the end, as Lind (2001) has it.
Works Cited
Lind, Ada B. “The Salt Roads of the North and What Came
of Them.” Journal of Trade History, vol. 12, no. 3, 2001, pp.
113–28.
———. Harbours. Marsh Press, 1999.
Okafor, Chidi, and Bo Lind. “Tide Mills in Two Provinces.”
Annals of Quays, vol. 7, 2010, pp. 40–55.
Quist, Vera. The Debts of the Harbour. Quay University
Press, 2015.
Appendix
A table of tides, 1900 to 1950."""


def source(*texts: str) -> SourceText:
    """A source of these pages, numbered from 7."""
    return SourceText("x", tuple(Page(str(n), text) for n, text in enumerate(texts, 7)), paged=True)


def entries(*texts: str) -> list[str]:
    """The entries of its lists."""
    return [one.text for found in find_lists(source(*texts).pages) for one in split_list(found)]


def test_a_list_without_numbers_is_split_where_its_entries_begin() -> None:
    """Each entry is one, whatever lines it was set in, and what follows the list is not of it."""
    found = entries(TURNED)
    assert [one.split(",")[0].split(".")[0] for one in found] == ["Lind", "———", "Okafor", "Quist"]
    assert found[-1].endswith("Quay University Press, 2015.")


def test_a_dash_stands_for_the_authors_before() -> None:
    """The second work of an author has that author."""
    mined = mine_references(source(TURNED))
    assert mined[1].csl["author"] == mined[0].csl["author"] == [{"family": "Lind", "given": "Ada B."}]


def test_an_entry_that_runs_over_a_page_is_one_and_begins_on_the_first() -> None:
    """The page is where it begins."""
    mined = mine_references(
        source(
            "References\n1. Lind A. Salt roads of the north. J Trade.",
            "2001;12:113–28.\n2. Okafor C. Ebb. Leeds: Marsh Press; 1999.",
        )
    )
    assert [(one.page, one.csl["issued"]) for one in mined] == [
        ("7", {"date-parts": [[2001]]}),
        ("8", {"date-parts": [[1999]]}),
    ]


def test_numbers_in_brackets_part_the_entries() -> None:
    """Numbers on lines of their own do as well."""
    listed = "References\n[1]\nA. Lind, “Salt,” J. Trade, vol. 2, p. 7, 2001.\n"
    listed += "[2]\nB. Marsh, “Ebb,” J. Trade, vol. 3, p. 9, 2002."
    assert len(entries(listed)) == 2
    assert entries(listed)[1].startswith("B. Marsh")


def test_a_table_of_contents_is_no_list() -> None:
    """The heading alone tells nothing."""
    assert entries("Contents\nReferences\nIndex\nThe harbour in its first years, and how it was paid for.") == []


def test_notes_are_looked_at_where_nothing_else_lists_references() -> None:
    """A list headed Notes counts where its lines are references."""
    noted = "Notes\n1. Ada Lind, The Salt Roads (Hull: Marsh Press, 2001), 14.\n"
    noted += "2. Bo Marsh, Ebb (Leeds: Quay Press, 1999), 3."
    assert len(entries(noted)) == 2


def test_the_end_of_an_encyclopedia_article_is_mined() -> None:
    """What leads back to the text is left out, further reading is a list too, and a day of looking is no year."""
    page = """<html><body><main><h1>Tide mill</h1><p>A tide mill is driven by the tide, and much is said of it here.</p>
    <h2>References</h2><ol><li>^ a b Lind, Ada (2001). <i>Tide Mills of the North</i>. Hull: Quay Press. p. 14. ISBN
    0-306-40615-2.</li><li>^ Okafor, B.; Marsh, C. (2016). "How moorings were paid for". <i>Journal of Quay History</i>.
    7 (2): 40–55.</li><li>^ "Mills open to all". Harbour Museum. Retrieved 12 May 2019.</li></ol>
    <h2>Further reading</h2><ul><li>Quist, Vera (2015). <i>The Debts of the Harbour</i>. Leeds: Marsh Press.</li></ul>
    <h2>External links</h2><ul><li>Mills of 1999</li></ul></main></body></html>"""
    text, _ = read_source(page.encode(), "mill.html", None)
    mined = mine_references(text)
    assert [one.csl["title"] for one in mined] == [
        "Tide Mills of the North",
        "How moorings were paid for",
        "Mills open to all",
        "The Debts of the Harbour",
    ]
    assert mined[0].csl["ISBN"] == "9780306406157"
    assert "page" not in mined[0].csl
    assert [one["family"] for one in mined[1].csl["author"]] == ["Okafor", "Marsh"]  # type: ignore[attr-defined]
    assert mined[2].csl["accessed"] == {"date-parts": [[2019, 5, 12]]}
    assert "issued" not in mined[2].csl


@pytest.mark.parametrize("ending", ["docx", "odt", "epub", "txt"])
def test_a_list_is_found_in_files_of_every_kind(ending: str, tmp_path: Path) -> None:
    """Each entry a paragraph, however long."""
    written = """# Tides

Much is said of tides.

# References

Lind, A. (2001). *Tide mills of the northern coast*. Quay University Press.

Okafor, B., & Marsh, C. (2016). How moorings were paid for in small harbours, and how they were not: The books of
two provinces, with a note on boats that were moored by night alone. *Journal of Quay History*, 7(2), 40–55.

# Appendix

A table of 1999.
"""
    path = tmp_path / f"tides.{ending}"
    pypandoc.convert_text(written, "plain" if ending == "txt" else ending, format="markdown", outputfile=str(path))
    text, _ = read_source(path.read_bytes(), path.name, None)
    assert [one.csl["issued"] for one in mine_references(text)] == [{"date-parts": [[2001]]}, {"date-parts": [[2016]]}]


@pytest.mark.parametrize("text", ["(" * 20_000, "1. " * 20_000, "Lind, A. " * 20_000, "[1]\n" * 20_000, "—" * 20_000])
def test_a_list_that_is_no_list_does_not_stop_the_reader(text: str) -> None:
    """However long it is, it is over at once."""
    mine_references(source(f"References\nLind, A. 2001.\n{text}\nOkafor, B. 1999."))


@pytest.mark.parametrize(
    ("reference", "kind", "says"),
    [
        (
            "Lind, A. (2001). The salt roads of the north. Journal of Trade, 12(3), 113–128.",
            "article-journal",
            ("volume", "12"),
        ),
        (
            "Lind, A. Modelling tides. PhD thesis, University of Hull, 1994.",
            "thesis",
            ("publisher", "University of Hull"),
        ),
        (
            "Lind A, Marsh B. Salt and ebb. J Trade. 2001;12(3):113-28. doi:10.5555/salt.7",
            "article-journal",
            ("DOI", "10.5555/salt.7"),
        ),
        (
            "A. Lind. Salt. In B. Marsh, editor, Proceedings of the Third Conference on Tides, pages 1-9, Hull, 1999.",
            "paper-conference",
            ("page", "1-9"),
        ),
    ],
)
def test_the_kind_of_work_is_told_from_what_its_reference_names(
    reference: str, kind: str, says: tuple[str, str]
) -> None:
    """A journal, a degree, a meeting."""
    csl = record_of(read_reference(reference)).csl
    assert csl["type"] == kind
    assert csl[says[0]] == says[1]


@given(st.text(max_size=400))
def test_no_text_stops_the_reader(text: str) -> None:
    """Whatever stands after the heading, the parts of what is read lie within it, and nothing is raised."""
    reference = read_reference(text)
    assert all(0 <= part.start < part.end <= len(reference.raw) for part in reference.parts)
    mine_references(source(f"References\n{text}\n2001"))
