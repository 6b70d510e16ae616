"""Styles are found by the names that people give them."""

from __future__ import annotations

import pytest

from fairhand.citing.style_rules import RULES
from fairhand.citing.styles import find_style, rules, shipped_styles, style_for
from fairhand.errors import StyleUnknown

SPACE = 'xmlns="http://purl.org/net/xbiblio/csl"'


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("MLA", "mla-9"),
        ("MLA Handbook, 9th edition", "mla-9"),
        ("APA (7th ed.)", "apa-7"),
        ("Chicago", "chicago-notes-18"),
        ("The Chicago Manual of Style, 17th ed., notes and bibliography", "chicago-notes-17"),
        ("Chicago author-date 17", "chicago-author-date-17"),
        ("Turabian", "turabian-notes-9"),
        ("Harvard style", "harvard"),
        ("IEEE", "ieee"),
        ("Vancouver", "vancouver"),
    ],
)
def test_a_style_is_found_by_what_it_is_called(said: str, name: str) -> None:
    """Editions, systems and the words *style* and *edition* may be said or left out."""
    assert find_style(said).name == name


@pytest.mark.parametrize(
    ("values", "name"),
    [
        ({"style": "mla", "edition": 9}, "mla-9"),
        ({"style": "mla", "edition": 8}, "mla-9"),
        ({"style": "chicago-author-date", "edition": 17.0}, "chicago-author-date-17"),
        ({"style": "chicago-notes", "edition": None}, "chicago-notes-18"),
        ({"style": "asa"}, "asa"),
    ],
)
def test_a_requirement_names_a_style(values: dict[str, str | float | None], name: str) -> None:
    """The edition that the sheet names is taken where we have it, else the newest."""
    assert style_for(values) == name


def test_every_shipped_style_is_whole() -> None:
    """Each is there, names its edition, and has its row of rules."""
    assert set(shipped_styles()) == set(RULES)
    for name in shipped_styles():
        style = find_style(name)
        assert style.edition_says == rules(style).follows
        assert (rules(style).in_text == "note", rules(style).in_text == "numeric") == (style.is_note, style.numeric)


def test_an_unknown_style_is_refused_with_the_nearest() -> None:
    """The message names what stands near."""
    with pytest.raises(StyleUnknown, match="apa-7"):
        find_style("apaa 7")


@pytest.mark.parametrize("data", [b"", b"<a/>", b"\xff\x00", f"<style {SPACE}/>".encode()])
def test_a_file_that_is_no_style_is_refused(data: bytes) -> None:
    """Its name is said."""
    with pytest.raises(StyleUnknown, match=r"house\.csl"):
        find_style("house.csl", data)


def test_a_style_from_a_file() -> None:
    """A style of one's own has the rules of its kind; one that points to a shipped style is that style."""
    own = f'<style {SPACE} class="note"><info><title>House</title></info><citation><layout/></citation></style>'
    style = find_style("house.csl", own.encode())
    assert (style.name, style.is_note, rules(style).list_order) == ("House", True, "")
    link = '<link rel="independent-parent" href="https://example.org/styles/apa"/>'
    assert find_style("journal.csl", f"<style {SPACE}><info>{link}</info></style>".encode()).name == "apa-7"
