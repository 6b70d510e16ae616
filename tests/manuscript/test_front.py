"""The writer's own lines beside the title."""

from __future__ import annotations

import pytest

from fairhand.manuscript.counting import count_words
from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.front import front_lines

BODY = "The ferry lay below the town, and nobody was going down.\n"


def _told(draft: str) -> list[tuple[str, str]]:
    return [(line.what, line.says) for line in front_lines(read_manuscript(draft))]


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        ("Eva van der Berg", [("author", "Eva van der Berg")]),
        ("By Eva Lind", [("author", "Eva Lind")]),
        (
            "Eva Lind\nProfessor A. Moss\nENGL 201: Reading the Sea\n3 March 2027",
            [
                ("author", "Eva Lind"),
                ("instructor", "Professor A. Moss"),
                ("course", "ENGL 201: Reading the Sea"),
                ("date", "3 March 2027"),
            ],
        ),
        (
            "**Name:** Eva Lind\\\nCourse: Tides\\\nDue: spring",
            [("author", "Eva Lind"), ("course", "Tides"), ("date", "spring")],
        ),
        (
            "Eva Lind\n\nEastholm College\n\n2027-03-03",
            [("author", "Eva Lind"), ("institution", "Eastholm College"), ("date", "2027-03-03")],
        ),
        (
            "Eva Lind\nOmar Reyes Jr.\nDr. Moss",
            [("author", "Eva Lind"), ("", "Omar Reyes Jr."), ("instructor", "Dr. Moss")],
        ),
        ("Eva Lind [NB: spell it?]", [("author", "Eva Lind")]),
    ],
)
def test_lines_beside_the_title_are_told(lines: str, told: list[tuple[str, str]]) -> None:
    """Above the title and below it, each line says whose it is, as far as it can be told."""
    assert _told(f"{lines}\n\n# On Salt\n\n{BODY}") == told
    assert _told(f"# On Salt\n\n{lines}\n\n{BODY}") == told


@pytest.mark.parametrize(
    "first",
    [
        "In this essay I will argue that",
        "In March 1924 the dockers struck and",
        "**Early Life**",
        "**Introduction**",
        "[NB: better opening]",
        "TK",
        "> Salt and Time",
        "Salt is the sea’s account.",
    ],
)
def test_what_begins_the_paper_is_no_line_of_its_front(first: str) -> None:
    """Unfinished sentences, headings that are only bold and remarks to oneself stay where they are."""
    assert _told(f"# On Salt\n\n{first}\n\n{BODY}") == []


def test_front_lines_are_counted_with_the_title_page() -> None:
    """One rule tells what is printed on the first page and what is counted there."""
    draft = read_manuscript(f"Eva Lind\n\n# On Salt\n\nMarch 3, 2027\n\n{BODY}")
    count = count_words(draft, ["title-page"])
    assert dict(count.excluded) == {"title-page": 7}
    assert count.counted == 11


def test_a_title_that_stands_once_more_is_the_pages_own() -> None:
    """A draft from a word processor has its title again above the text; it is neither printed twice nor counted."""
    draft = read_manuscript(f"# What *Salt* Says?\n\nEva Lind\n\nWhat Salt Says?\n\n{BODY}")
    assert [(line.what, line.text) for line in front_lines(draft)] == [
        ("author", "Eva Lind"),
        ("title", "What Salt Says?"),
    ]
    assert count_words(draft, ["title-page"]).counted == 11
