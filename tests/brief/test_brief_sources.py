"""Sources asked for and banned. Wordings: common practice of assignment sheets."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from fairhand.model.requirement import Value

Reading = Callable[..., list[dict[str, Value]]]


def _short(rows: list[dict[str, Value]]) -> list[tuple[Value, ...]]:
    return [(v["type"], v["min"], v["max"], v["since"]) for v in rows]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Use at least eight sources.", [("any", 8, None, None)]),
        (
            "Sources: at least seven; four of them scholarly; one must be a dataset.",
            [("any", 7, None, None), ("scholarly", 4, None, None), ("data", 1, None, None)],
        ),
        ("Cite 12-15 peer-reviewed articles, from 2015 onwards.", [("peer-reviewed", 12, 15, 2015)]),
        (
            "At least five sources, three of them scholarly, and nothing older than 2010.",
            [("any", 5, None, 2010), ("scholarly", 3, None, None)],
        ),
        (
            "Use six articles at least, two of which were published in 2016 or later.",
            [("any", 6, None, None), ("any", 2, None, 2016)],
        ),
        ("Use no more than two newspaper articles.", [("news", None, 2, None)]),
        ("A minimum of five peer-reviewed papers from the last ten years.", [("peer-reviewed", 5, None, 2016)]),
        ("At least three sources from outside the course reader.", [("outside", 3, None, None)]),
        ("All sources must be peer-reviewed.", [("peer-reviewed", None, None, None)]),
    ],
)
def test_sources_are_counted_by_kind(values_of: Reading, text: str, expected: list[tuple[Value, ...]]) -> None:
    """Number, kind and age of each group; "of them" and "of which" begin a group of their own."""
    assert _short(values_of("sources", text)) == expected


@pytest.mark.parametrize(
    "text",
    [
        "There is no minimum number of sources.",
        "Examiners are impressed by one article understood.",
        "The sample essay cites thirty sources.",
        "Books and articles fall into two categories.",
    ],
)
def test_talk_of_sources_asks_nothing(values_of: Reading, text: str) -> None:
    """Advice and denial give no requirement."""
    assert values_of("sources", text) == []


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("Do not cite blogs or encyclopaedias.", ("blog", "encyclopedia")),
        ("Study-guide websites and dictionaries are off limits.", ("dictionary", "website")),
        ("Wikipedia must not be cited. Nor may the course reader.", ("course-readings", "encyclopedia")),
        ("The textbook may not be cited, and neither may blogs; press reports are fine.", ("blog", "textbook")),
        ("Do not\n- name the school\n- use websites as sources\n", ("website",)),
        ("Encyclopedias are banned. So are AI-written summaries.", ("ai-generated", "encyclopedia")),
    ],
)
def test_banned_kinds_are_one_list(values_of: Reading, text: str, what: tuple[str, ...]) -> None:
    """Neighbouring bans are one sorted list; what is spared in the same sentence is not in it."""
    assert values_of("sources_banned", text)[0]["what"] == what


def test_a_warning_about_openings_bans_no_source(values_of: Reading) -> None:
    """A dictionary definition as a first sentence is a matter of style."""
    assert values_of("sources_banned", "Don't use a dictionary definition as your first sentence.") == []


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Six sources; no more than one may be a website.", [("any", 6, None, None), ("website", None, 1, None)]),
        (
            "At least six sources, of which at least two must be articles or chapters.",
            [("any", 6, None, None), ("article", 2, None, None)],
        ),
        ("At least nine sources, at least two of which must be Welsh.", [("any", 9, None, None)]),
        ("Please do not consult any outside sources.", [("outside", None, 0, None)]),
    ],
)
def test_a_limit_on_one_kind_is_none_on_all(values_of: Reading, text: str, expected: list[tuple[Value, ...]]) -> None:
    """A part of the sources keeps its own kind; one that we have no word for is left out."""
    assert _short(values_of("sources", text)) == expected


@pytest.mark.parametrize(
    ("text", "cited"),
    [
        ("At least eight sources, all of them cited in the essay.", "all"),
        ("Every source on your list must be cited.", "all"),
        ("Everything on your list must be cited in the essay.", "all"),
        ("Use at least seven sources, and cite every source on your list.", "all"),
        ("All works listed must appear in the text.", "all"),
        ("Do not list works that you do not cite.", "all"),
        ("At least eight sources. You do not have to cite every source on your list.", None),
        ("At least eight sources. All quotations must be cited properly.", None),
        ("At least eight sources. Every work must be cited in APA style.", None),
    ],
)
def test_every_listed_source_may_have_to_be_cited(values_of: Reading, text: str, cited: str | None) -> None:
    """Said of the list, not of the manner of citing."""
    assert values_of("sources", text)[0].get("cited") == cited


@pytest.mark.parametrize(
    ("text", "banned"),
    [
        ("The course textbook is useful, but please don't cite it.", ("textbook",)),
        ("Blogs and web sites don't count as references.", ("blog", "website")),
        ("Don't use blogs; encyclopedias are a place to begin.", ("blog",)),
        ("The lab manual can be cited but doesn't count toward the six.", None),
    ],
)
def test_a_ban_falls_on_its_object_or_its_subject(
    values_of: Reading, text: str, banned: tuple[str, ...] | None
) -> None:
    """An order bans what follows it, a verdict what comes before, and a pronoun what it stands for."""
    assert [v["what"] for v in values_of("sources_banned", text)] == ([banned] if banned else [])


@pytest.mark.parametrize(
    "text",
    [
        "Six sources; no more than two blogs may be cited.",
        "At most one encyclopedia may be cited.",
        "Do not cite more than one website.",
    ],
)
def test_a_bound_on_a_kind_is_no_ban(values_of: Reading, text: str) -> None:
    """So many of a kind may be cited: the kind itself is not banned."""
    assert values_of("sources_banned", text) == []


def test_a_bound_told_as_a_prohibition_is_the_most(values_of: Reading) -> None:
    """*Do not cite more than one* allows one."""
    assert _short(values_of("sources", "Do not cite more than one website.")) == [("website", None, 1, None)]
