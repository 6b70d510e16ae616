"""Words, by part."""

from __future__ import annotations

import pytest

from fairhand.manuscript.counting import count_words, place_words
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.span import Span

PAPER = """\
Ada Moor
History 12

# Two Bells

## Abstract

Short and plain.

## One

He said “no bell rang” (Orr 3).[^1] [NB: not a word of this] It came TK later — so *they* say.

> A quoted block. (Orr 4)

Table 1. Bells

| a | b |
|---|---|
| c | 9 |

[^1]: A note here (Orr 5).

## Works Cited

Orr, A. Bells.

## Appendix A

Extra words here.
"""


def citations(text: str) -> list[Span]:
    """Where the paper cites."""
    return [Span(at, at + 7) for at in range(len(text)) if text.startswith("(Orr ", at)]


def test_every_word_stands_in_one_part() -> None:
    """The parts add up to all that is printed; remarks and matter to come are in none."""
    count = count_words(read_manuscript(PAPER), (), citations(PAPER))
    assert dict(count.parts) == {
        "title-page": 6,
        "headings": 1,
        "abstract": 4,
        "body": 8,
        "quotations": 3,
        "citations": 2,
        "block-quotes": 5,
        "captions": 3,
        "tables": 4,
        "footnotes": 5,
        "references": 5,
        "appendices": 5,
    }
    assert count.counted == count.total == sum(count.parts.values())
    assert count.rule == "every word that is printed"


@pytest.mark.parametrize(
    ("exclude", "fewer"),
    [
        (["references"], 5),
        (["title-page", "headings"], 7),
        (["figures"], 7),
        (["footnotes"], 5),
        (["citations"], 6),
        (["quotations", "block-quotes"], 8),
        (["abstract", "appendices"], 9),
        (["no such part"], 0),
    ],
)
def test_what_the_sheet_excludes_is_not_counted(exclude: list[str], fewer: int) -> None:
    """Each exclusion takes its words away, told by part; a citation in a note or block goes with either."""
    draft = read_manuscript(PAPER)
    everything, count = count_words(draft), count_words(draft, exclude, citations(PAPER))
    assert everything.counted - count.counted == fewer
    assert sum(count.excluded.values()) == fewer
    assert count.total == everything.total


def test_the_rule_is_told_in_words() -> None:
    """What was excluded is said, so that it can be shown beside the count."""
    assert count_words(read_manuscript("a"), ["references", "footnotes"]).rule == "without footnotes and references"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("well-known 1,200 half—done", 3),
        ("a – b & c", 3),
        ("*two* **words** [a link](http://of.no/words)", 4),
        ("It’s five o'clock.", 3),
        ("`x = 1`", 2),
        ("# \n\n- one\n- two", 2),
        ("", 0),
        ("naïve Дом 東京", 3),
    ],
)
def test_words_are_what_a_word_processor_counts(text: str, words: int) -> None:
    """What stands between blanks and holds a letter or figure is a word; markup and addresses are not."""
    assert count_words(read_manuscript(text)).counted == words


SWITCHED = """\
# On Two Bells

Ada Moor

## Abstract

One two three.

## Contents

- The bell
- The tower

## The bell

Five words stand here first.[^1] He said “no bell rang” (Orr 3).[^2]

> A quoted block of six words.

Table 1. Bells by year

| a | b |
|---|---|
| c | 9 |

[^1]: Ada Orr, *Bells of the Coast* (Hull: Tern Press, 1998), 12.

[^2]: The ledger does not say so.

## Bibliography

Orr, Ada. *Bells of the Coast*. Tern Press, 1998.

## Appendix

Extra words.
"""
ALL = {
    "title-page": 5,
    "abstract": 4,
    "contents": 5,
    "headings": 2,
    "body": 7,
    "quotations": 3,
    "citations": 2,
    "block-quotes": 6,
    "bibliographic-notes": 11,
    "footnotes": 6,
    "captions": 5,
    "tables": 4,
    "references": 10,
    "appendices": 3,
}


def test_every_switch_has_its_words() -> None:
    """Each part that some rule counts and another does not is counted by itself."""
    assert dict(count_words(read_manuscript(SWITCHED), (), citations(SWITCHED)).parts) == ALL


@pytest.mark.parametrize(
    ("rule", "exclude", "left_out"),
    [
        (
            "Exeter, humanities: in-text references, notes, quotations count; captions, bibliography, appendix do not",
            ["captions", "references", "appendices"],
            5 + 10 + 3,
        ),
        (
            "Auckland, law: all notes and headings count, abstract and contents do not",
            ["abstract", "contents"],
            4 + 5,
        ),
        (
            "Manchester, history of science: everything but bibliography, title and appendix",
            ["references", "title-page", "appendices"],
            10 + 5 + 3,
        ),
        ("UEA and Melbourne, history: purely bibliographic notes do not count", ["bibliographic-notes"], 11),
    ],
)
def test_rules_of_counting_that_were_seen(rule: str, exclude: list[str], left_out: int) -> None:
    """Each house's rule (read on its page) leaves out what it says, and nothing else."""
    count = count_words(read_manuscript(SWITCHED), exclude, citations(SWITCHED))
    assert count.counted == sum(ALL.values()) - left_out, rule
    assert sum(count.excluded.values()) == left_out


def test_a_heading_over_a_list_that_is_set_later_is_no_part() -> None:
    """Where only the heading of the references stands in the draft, its words are neither counted nor left out."""
    counted = count_words(read_manuscript("# On Quays\n\nTwo words.\n\n## Works Cited\n"), ["references"])
    assert (counted.counted, dict(counted.excluded)) == (4, {})
    counted = count_words(
        read_manuscript("# On Quays\n\nTwo words.\n\n## Works Cited\n\nVale, Anna. *Quay*.\n"), ["references"]
    )
    assert (counted.counted, dict(counted.excluded)) == (4, {"references": 5})


@pytest.mark.parametrize(
    "exclude", [(), ("headings",), ("quotations", "citations"), ("figures", "footnotes", "references")]
)
def test_the_words_that_count_have_their_places(exclude: tuple[str, ...]) -> None:
    """Each word that counts begins at its place, in order, and there are as many as are counted."""
    manuscript, cited = read_manuscript(PAPER), citations(PAPER)
    places = place_words(manuscript, exclude, cited)
    assert len(places) == count_words(manuscript, exclude, cited).counted
    assert list(places) == sorted(set(places))
    assert not any(PAPER[place].isspace() for place in places)
