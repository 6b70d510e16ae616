"""The pages of a file are numbered as they are cited."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from fairhand.model.entry import Entry
from fairhand.reading.source import read_source

Make = Callable[..., bytes]
QUAY = ("The quay was sold.", "Nobody bought it.", "It stood empty.")


def labels(data: bytes, file: str, entry: Entry | None) -> tuple[list[str | None], str]:
    """The labels of a file's pages, and where they come from."""
    source, _ = read_source(data, file, entry)
    return [page.label for page in source.pages], source.labels_from


def text(*pages: str) -> bytes:
    """A text of several pages."""
    return "\f".join(pages).encode()


@pytest.mark.parametrize(
    ("page", "expected"),
    [
        ("101-103", ["101", "102", "103"]),
        ("101-3", ["101", "102", "103"]),
        ("B2", ["B2", "B3", "B4"]),
        ("xiv–xvi", ["xiv", "xv", "xvi"]),
        ("S12-S14", ["S12", "S13", "S14"]),
        ("A1, A14, A15", ["A1", "A14", "A15"]),
        ("40-60", ["40", "41", "42"]),
    ],
)
def test_the_entrys_range_numbers_the_pages(page: str, expected: list[str]) -> None:
    """Pages count on from the first label of the entry's range, in its own kind."""
    assert labels(text(*QUAY), "q.txt", Entry("q", "article-journal", page=page)) == (expected, "entry")


@pytest.mark.parametrize("kind", ["webpage", "post", "post-weblog", "personal_communication"])
def test_web_pages_have_no_pages(kind: str) -> None:
    """Whatever parts their file, a web page, a post or a letter has no pages to cite."""
    source, _ = read_source(text(*QUAY), "q.txt", Entry("q", kind))
    assert not source.paged
    assert [page.label for page in source.pages] == [None, None, None]


def test_without_a_range_pages_count_from_1() -> None:
    """A book, thesis or report without a range counts from 1."""
    for kind in ("book", "thesis", "report"):
        assert labels(text(*QUAY), "q.txt", Entry("q", kind)) == (["1", "2", "3"], "counted")


def test_printed_folios_number_the_pages() -> None:
    """Without a range the folios printed on the pages count, roman front matter too; they are no part of the text."""
    pages = ["Title", "Preface\nThanks.\nii", "More thanks.\niii", "Quays.\n1", "Piers.\n2", "Cranes.\n3", "Ropes.\n4"]
    source, _ = read_source(text(*pages), "q.txt", Entry("q", "book"))
    assert [page.label for page in source.pages] == ["i", "ii", "iii", "1", "2", "3", "4"]
    assert source.labels_from == "folio"
    assert source.pages[3].text == "Quays."


def test_running_heads_are_left_out() -> None:
    """Heads that recur with their folios, on left and right pages in turn, are no part of the text."""
    heads = ["Annals of Quays  11", "12  Lind and others", "Annals of Quays  13", "14  Lind and others"]
    pages = [
        f"{head}\nThe quay stood long.\nIt was {fate}."
        for head, fate in zip(heads, ("sold", "bought", "burnt", "built"), strict=True)
    ]
    source, _ = read_source(text(*pages), "q.txt", None)
    assert [page.label for page in source.pages] == ["11", "12", "13", "14"]
    assert source.pages[1].text == "The quay stood long.\nIt was bought."


def test_years_at_line_ends_are_no_folios() -> None:
    """Numbers in the prose at the edge of a page are not taken for its folio."""
    pages = ("The quay was sold in 1924", "It was bought again in 1925")
    assert labels(text(*pages), "q.txt", None) == (["1", "2"], "counted")


def test_a_pdfs_own_labels_win_where_they_hold_the_range(pdf: Make) -> None:
    """A chapter in the file of a whole book is numbered by the file's own labels; else the entry's range counts."""
    book = pdf(*QUAY, *QUAY, numbering='"1"', first=210)
    chapter = Entry("q", "chapter", page="212-213")
    assert labels(book, "q.pdf", chapter) == ([str(n) for n in range(210, 216)], "pdf")
    other = Entry("q", "chapter", page="12-17")
    assert labels(book, "q.pdf", other) == ([str(n) for n in range(12, 18)], "entry")


def test_a_cover_sheet_before_an_article_is_told_by_the_folios() -> None:
    """Where the printed folios hold the entry's range, a sheet put before the article does not shift its pages."""
    pages = ("Downloaded from the library", "Quays.\n101", "Piers.\n102", "Cranes.\n103")
    entry = Entry("q", "article-journal", page="101-103")
    assert labels(text(*pages), "q.txt", entry) == (["100", "101", "102", "103"], "folio")


def test_an_articles_number_is_no_page() -> None:
    """An electronic article's number does not number its pages."""
    for page in ("e1002345", "1002345"):
        assert labels(text(*QUAY), "q.txt", Entry("q", "article-journal", page=page)) == (["1", "2", "3"], "counted")


def test_a_newspaper_read_on_the_web_has_no_pages() -> None:
    """An article of a newspaper with an address and no page is not cited by page."""
    source, _ = read_source(text(*QUAY), "q.txt", Entry("q", "article-newspaper", url="https://example.org/q"))
    assert not source.paged
