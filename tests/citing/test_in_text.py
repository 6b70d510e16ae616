"""Citations written: in the style's form, and understood again as the source that is meant."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.in_text import write_in_text
from fairhand.citing.recognise import recognise
from fairhand.citing.resolve import resolve
from fairhand.citing.style_rules import RULES, rules_of
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.entry import Entry, Issued, Name


def entry(name: str, title: str = "Ebb and Flow", year: int | None = 2019, *more: str, given: str = "Ada") -> Entry:
    """A source by people of those surnames."""
    authors = tuple(Name(one, given) for one in (name, *more) if one)
    return Entry(f"{name}-{title}-{year}-{given}", "book", title, authors=authors, issued=Issued(year))


# The manuals' own forms. **Source**: check-values of the trade, section 3 [page, memory].
@pytest.mark.parametrize(
    ("style", "source", "page", "written"),
    [
        ("mla-9", entry("Baron"), "194", "(Baron 194)"),
        ("mla-9", entry("Dorris", "Crown", 1991, "Erdrich"), "23", "(Dorris and Erdrich 23)"),
        ("mla-9", entry("Burdick", "Digital", 2012, "Drucker", "Lunenfeld"), "42", "(Burdick et al. 42)"),
        ("apa-7", entry("Massoud", "X", 2020), "4", "(Massoud, 2020, p. 4)"),
        ("apa-7", entry("Ali", "X", 1999, "Thompson"), "3–5", "(Ali & Thompson, 1999, pp. 3–5)"),
        ("apa-7", entry("Ali", "X", None), "", "(Ali, n.d.)"),
        ("apa-7", entry("", "The Strike Kitchens: A Record", 1912), "3", "(“Strike Kitchens,” 1912, p. 3)"),
        ("mla-9", entry("", "The Strike Kitchens: A Record", 1912), "3", "(“Strike Kitchens” 3)"),
        ("chicago-author-date-17", entry("Smith", "X", 2016), "315–16", "(Smith 2016, 315–16)"),
        ("chicago-author-date-17", entry("Keng", "X", 2017, "Lin", "Orazem"), "9", "(Keng, Lin, and Orazem 2017, 9)"),
        ("chicago-author-date-18", entry("Keng", "X", 2017, "Lin", "Orazem"), "9", "(Keng et al. 2017, 9)"),
        ("asa", entry("Smith", "X", 2016), "315", "(Smith 2016:315)"),
        ("harvard", entry("Smith", "X", 2016), "315", "(Smith, 2016, p. 315)"),
    ],
)
def test_the_form_is_the_styles_own(style: str, source: Entry, page: str, written: str) -> None:
    """Author and page, or author, year and page, with the style's own marks between them."""
    assert write_in_text(source, page, [source], rules_of(style)) == written


HARD = (
    entry("Marsh", "Kitchens", 2021, given="Olive"),
    entry("Marsh", "Ledgers", 2021, given="Olive"),
    entry("Marsh", "Weirs", 2021, given="Tom"),
    entry("García Márquez", "Cien", 1967),
    Entry("vd", "book", "Quays", authors=(Name("Berg", "Jan", particle="van den"),), issued=Issued(1999)),
    Entry("who", "report", "Water", authors=(Name(literal="World Health Organization"),), issued=Issued(2020)),
    entry("", "A Halfpenny the Ride", 1927),
    entry("", "Nobody Counted the Ships That Came", 1931),
    entry("O’Neill", "Salt", None, "Lind"),
    entry("Keng", "College", 2017, "Lin", "Orazem", "Reyes"),
)


@pytest.mark.parametrize(("style", "page"), list(product(sorted(RULES), ("12", "12–15", "xiv", ""))))
def test_what_is_written_is_understood_as_the_source_that_is_meant(style: str, page: str) -> None:
    """Of a list with namesakes, works of one year, bodies, titles without an author, particles: in every style."""
    for source in HARD:
        written = write_in_text(source, page, HARD, rules_of(style))
        draft = read_manuscript(f"The town paid for it in the end {written}.\n")
        found = resolve(draft, recognise(draft, HARD), HARD)
        assert [(one.entry, one.trouble) for one in found] == [(source.id, None)], written
        if page:
            assert found[0].cite.locator is not None, written
            assert found[0].cite.locator.text == page


@given(st.sampled_from(sorted(RULES)), st.text(max_size=6), st.text(max_size=12), st.text(max_size=20))
def test_nothing_in_a_record_stops_it(style: str, page: str, name: str, title: str) -> None:
    """Whatever stands in its fields."""
    source = Entry("x", "book", title, authors=(Name(name),) if name else ())
    assert write_in_text(source, page, [source], rules_of(style)).startswith("(")
