"""Slips of signs and small words: those of lists of our own, each told by its check, and none in good sentences."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import settings as hypothesis_settings
from hypothesis import strategies as st

from fairhand.copyedit.grammar.signs.plural_apostrophe import plural_of
from fairhand.copyedit.remarked import read_comment
from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

LISTS = Path(__file__).parent / "grammar"
SLIP = re.compile(r"\[([^>\]]*)>([^\]]*)\]")
FLOORS = {"apostrophe": 0.88, "missing_word": 0.75, "capital": 0.95, "hyphen": 0.94, "number_form": 0.95}
"""By list: the share that is told, at least."""
WANTS_ITS_HYPHEN = "A six week course was offered to forty first-year students."
"""Good in all else."""
CHECKED = [check for check in CHECKS if check.name.replace("-", "_") in FLOORS]


def told(text: str) -> list[Finding]:
    """What the checks of signs say of a draft."""
    return list(run_checks(Analysis(Paper("p", text, ()), lambda _: None), CHECKED, allowed=lambda _: "must"))


def lines_of(name: str) -> Iterator[str]:
    """The sentences of a list."""
    lines = (LISTS / f"{name}.txt").read_text("utf-8").splitlines()
    return (line for line in lines if not line.startswith("#"))


def is_told(line: str, name: str) -> bool:
    """Whether a slip is told by its check, at its place."""
    slip = SLIP.search(line)
    assert slip is not None
    place = range(slip.start(), slip.start() + len(slip[1]) + 1)
    return any(
        found.check == name.replace("_", "-")
        and found.span is not None
        and found.span.start <= place[-1]
        and found.span.end >= place[0]
        for found in told(SLIP.sub(r"\1", line))
    )


@pytest.mark.parametrize("name", FLOORS)
def test_the_slips_of_a_list_are_told(name: str) -> None:
    """Most of them, each by its own check."""
    lines = list(lines_of(name))
    missed = [line for line in lines if not is_told(line, name)]
    print(f"\n{name}: {len(lines) - len(missed)} of {len(lines)}; not told:", *missed, sep="\n")
    assert len(lines) - len(missed) >= FLOORS[name] * len(lines)


def test_good_sentences_are_let_be() -> None:
    """None of those that break a rule in looks only, and none of any list once it is mended."""
    good = [re.sub(r"[{}]", "", SLIP.sub(r"\2", line)) for path in LISTS.glob("*.txt") for line in lines_of(path.stem)]
    wrong = [(line, found.says) for line in good if line != WANTS_ITS_HYPHEN for found in told(line)]
    assert wrong == []


@pytest.mark.parametrize(
    "draft",
    [
        "> The authors argument is weak.\n",
        "He wrote “the citys council met in monday” (Vale 12).",
        "*The Authors Argument* is a novel.",
    ],
)
def test_what_is_not_the_writers_prose_is_let_be(draft: str) -> None:
    """Block quotations, quotations and titles."""
    assert told(draft) == []


@pytest.mark.parametrize(
    ("draft", "instead"),
    [
        ("These authors argument is weak.", "authors'"),
        ("This authors argument is weak.", "author's"),
        ("This authors argument isn’t weak.", "author’s"),
        ("In the 1990's it rained.", "1990s"),
        ("Marlo wrote it. Marlos play was lost, and Marlo with it. I met Marlo.", "Marlo's"),
    ],
)
def test_the_apostrophe_goes_where_number_and_draft_have_it(draft: str, instead: str) -> None:
    """By the word before, with the sign that the draft has; names are known from the draft."""
    assert [found.instead[0].words for found in told(draft)] == [instead]


@pytest.mark.parametrize(
    ("draft", "word"),
    [
        ("According the mayor, the bridge was safe.", " to"),
        ("The mill plays important role in the valley.", " an"),
        ("The bridge can seen from the tower.", " be"),
        ("Because the rain, the fair was cancelled.", " of"),
        ("They not ready.", " are"),
    ],
)
def test_a_missing_word_is_offered_at_its_place(draft: str, word: str) -> None:
    """After the word before it, with the blank that it wants."""
    (found,) = told(draft)
    (instead,) = found.instead
    assert instead.words == word
    assert instead.span.start == instead.span.end
    assert draft[instead.span.start] == " "


@pytest.mark.parametrize(
    ("draft", "instead"),
    [
        ("They met in may 1920 and in May.", ["May"]),
        ("They may march; the march was long.", []),
        ("It is a pro-american and an african-american paper.", ["American", "African", "American"]),
        ("Write to anna.greek@example.org, or see example.org/greek.", []),
        ("He ate french fries and read french novels.", ["French"]),
        ("See vol. ii, approx. ten pages, and so on, etc. and more.", []),
    ],
)
def test_a_capital_is_wanted_where_usage_has_it(draft: str, instead: list[str]) -> None:
    """Months by their place, words in addresses and abbreviations let be."""
    assert [found.instead[0].words for found in told(draft) if found.check == "capital"] == instead


@pytest.mark.parametrize(
    ("draft", "mended"),
    [
        ("It is a five year old mill.", "It is a five-year-old mill."),
        (
            "The long term plan failed; in the long term plans fail.",
            "The long-term plan failed; in the long term plans fail.",
        ),
        ("It was a widely-read paper and a family-owned mill.", "It was a widely read paper and a family-owned mill."),
        ("A non profit body ran it.", "A nonprofit body ran it."),
        ("An anti American speech was made.", "An anti-American speech was made."),
    ],
)
def test_a_compound_is_offered_whole(draft: str, mended: str) -> None:
    """With both hyphens in a compound of three; a prefix is closed up where the country's dictionaries have it so."""
    out = draft
    for found in reversed(told(draft)):
        for each in reversed(found.instead):
            out = out[: each.span.start] + each.words + out[each.span.end :]
    assert out == mended


def test_a_compound_is_told_once_with_its_number() -> None:
    """Since one who writes it without its hyphen does so throughout."""
    (found,) = told("The self driving car came. A self driving car went. Self driving cars are seen.")
    assert "at 2 more places" in found.says


def test_two_forms_of_one_number_are_asked_about_once() -> None:
    """Where the noun is the same; a label before the figure is none."""
    found = [
        one for one in told("He met four envoys. Of 4 envoys, and 4 envoys, one spoke.") if one.check == "number-form"
    ]
    assert [(one.weight, one.instead[0].words) for one in found] == [("query", "four")]
    assert told("He met four envoys. Delegation 4 envoys spoke.") == []


def test_a_decade_is_only_asked_about() -> None:
    """Since some houses still have its apostrophe."""
    (found,) = told("It began in the 1860's, and it lasted.")
    assert found.weight == "query"
    assert "1860s" in found.says


@given(st.sampled_from("study church idea box loss day wish".split()))
def test_a_plain_plural_has_no_apostrophe(noun: str) -> None:
    """Whatever its ending."""
    assert "'" not in plural_of(noun)
    assert plural_of(noun).endswith("s")


@given(
    st.lists(
        st.sampled_from(
            "the authors argument ones 's s' its citys was of , and i monday ( ) “ 3 22 km long term \n".split(" ")
        ),
        max_size=20,
    )
)
@hypothesis_settings(max_examples=60, deadline=None)
def test_no_run_of_words_breaks_a_check(words: list[str]) -> None:
    """Whatever is written, each place lies within the draft and holds something."""
    draft = " ".join(words)
    for finding in told(draft):
        assert finding.span is not None
        assert finding.span.of(draft).strip()


@pytest.mark.parametrize(
    ("comment", "check"),
    [
        ("missing apostrophe", "apostrophe"),
        ("Cap.", "capital"),
        ("hyphen here", "hyphen"),
        ("word missing!", "missing-word"),
    ],
)
def test_a_teachers_remark_names_the_check(comment: str, check: str) -> None:
    """So that a lapse is learnt from it."""
    lapse = read_comment(comment)
    assert lapse is not None
    assert lapse.check == check
