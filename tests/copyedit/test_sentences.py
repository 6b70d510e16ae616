"""Slips of the sentence: pronouns, mixed constructions, pairs and series, openings, tenses; each told by its check.

The lists in ``grammar/`` were written before the rules; what was told of them then stands in ``docs/decisions/0088``.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import settings as hypothesis_settings
from hypothesis import strategies as st

from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

LISTS = Path(__file__).parent / "grammar"
SLIP = re.compile(r"\[([^>\]]*)>([^\]]*)\]")
CHECKED = {
    "pronoun_case": ("pronoun-case",),
    "pronoun_agreement": ("pronoun-agreement",),
    "structure": ("mixed-construction",),
    "parallel": ("paired-words", "parallel-series"),
    "dangling": ("dangling-opening",),
    "tense": ("tense-shift",),
}
"""The checks that tell the slips of each list."""
NAMES = tuple(name for names in CHECKED.values() for name in names)
FLOORS = {
    "pronoun_case": 0.95,
    "pronoun_agreement": 0.92,
    "structure": 0.92,
    "parallel": 0.75,
    "dangling": 0.7,
    "tense": 0.75,
}
"""The share of each list that is told, at least."""


def told(text: str, names: tuple[str, ...] = NAMES) -> list[Finding]:
    """What the checks of the sentence say of a draft."""
    checks = [check for check in CHECKS if check.name in names]
    return list(run_checks(Analysis(Paper("p", text, ()), lambda _: None), checks, allowed=lambda _: "must"))


def lines_of(name: str) -> Iterator[str]:
    """The sentences of a list."""
    lines = (LISTS / f"{name}.txt").read_text("utf-8").splitlines()
    return (line for line in lines if not line.startswith("#"))


def is_told(line: str, names: tuple[str, ...]) -> bool:
    """Whether a slip is told at its place and, where the list has it, with what was meant."""
    slip = SLIP.search(line)
    if slip is None:
        start, end = line.index("{"), line.index("}") - 1
        found = told(re.sub(r"[{}]", "", line), names)
        return any(f.span and f.span.start < end and start < f.span.end for f in found)
    found = told(SLIP.sub(r"\1", line), names)
    start, end = slip.start(), slip.start() + len(slip[1])
    return any(f.span and f.span.start < end and start < f.span.end and f.instead[0].words == slip[2] for f in found)


@pytest.mark.parametrize("name", FLOORS)
def test_the_slips_of_a_list_are_told(name: str) -> None:
    """Most of them, each with the word that belongs there where one word mends it."""
    lines = list(lines_of(name))
    missed = [line for line in lines if not is_told(line, CHECKED[name])]
    print(f"\n{name}: {len(lines) - len(missed)} of {len(lines)}; not told:", *missed, sep="\n")
    assert len(lines) - len(missed) >= FLOORS[name] * len(lines)


def test_the_slips_of_longer_sentences_are_told() -> None:
    """Most of those that were written once the rules had stood."""
    lines = [line.split("|") for line in lines_of("sentence_fresh")]
    missed = [text for check, text in lines if not any(found.check == check for found in told(text))]
    print(f"\nlonger sentences: {len(lines) - len(missed)} of {len(lines)}; not told:", *missed, sep="\n")
    assert len(lines) - len(missed) >= 0.88 * len(lines)


def test_good_sentences_are_let_be() -> None:
    """None of those that break a rule in looks only, and none of the lists' own once they are mended."""
    mended = [SLIP.sub(r"\2", line) for name in FLOORS for line in lines_of(name) if SLIP.search(line)]
    wrong = [
        (line, found) for line in (*lines_of("sentence_right"), *lines_of("right"), *mended) if (found := told(line))
    ]
    assert wrong == []


@pytest.mark.parametrize(
    "draft",
    [
        "> Him and the clerk argued.\n",
        "He wrote “him and me was there, between you and I” (Vale 12).",
        "## The reason is because\n\nIt rained.",
        "Each of the pupils brought their own chair, and a reader may lose themselves.",
        "The committee praised themselves, and the firm has their own rules.",
    ],
)
def test_what_is_lawful_or_not_the_writers_is_let_be(draft: str) -> None:
    """Quotations, headings, singular *they*, bodies of people."""
    assert told(draft) == []


def test_each_rule_is_named() -> None:
    """By the handbook's word for it, with the word that is amiss."""
    for draft, name in (
        ("It was settled between you and I.", "Pronoun case"),
        ("The mayor and myself signed it.", "reflexive pronoun"),
        ("These towns governed itself.", "do not agree in number"),
        ("The reason it failed is because the river moved.", "Faulty predication"),
        ("By raising the rent makes it harder to live.", "mixed construction"),
        ("The author he argues that rivers move.", "double subject"),
        ("Neither the mayor or the bishop signed.", "“neither” goes with “nor”"),
        ("She liked walking, reading, and to sketch the harbour.", "Faulty parallelism"),
        ("Having read the letters, the war looks different.", "dangling modifier"),
        ("When he opened the door, he sees a stranger.", "shift in verb tense"),
    ):
        (found,) = told(draft)
        assert name in found.says


@given(
    st.lists(
        st.sampled_from(
            "who whom and him he myself the reason is because neither or both between 5 to , . By raising in which"
            " its own one you walked looks when While it Although but reading I".split()
        ),
        max_size=16,
    )
)
@hypothesis_settings(max_examples=80)
def test_no_run_of_words_breaks_a_check(words: list[str]) -> None:
    """Whatever is written, each place lies within the draft and holds something."""
    draft = " ".join(words)
    for finding in told(draft):
        assert finding.span is not None
        assert finding.span.of(draft).strip()
