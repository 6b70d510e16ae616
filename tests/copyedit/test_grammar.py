"""Slips of grammar: those of four lists of our own, each told by its check, and none in good sentences."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import settings as hypothesis_settings
from hypothesis import strategies as st

from fairhand.copyedit.grammar.clauses import show
from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

LISTS = Path(__file__).parent / "grammar"
GRAMMAR = ("plural-missing", "agreement", "comma-splice", "fragment", "verb-form", "article")
SLIP = re.compile(r"\[([^>\]]*)>([^\]]*)\]")
FLOORS = {
    "agreement": 0.78,
    "plural": 0.80,
    "splice": 0.78,
    "fragment": 0.85,
    "papers_agreement": 0.93,
    "papers_fragment": 0.93,
    "papers_plural": 0.93,
    "papers_splice": 0.87,
    "papers_verb_form": 0.9,
}
"""The share of each list that is told, at least."""
CHECK = {
    "agreement": "agreement",
    "plural": "plural-missing",
    "splice": "comma-splice",
    "fragment": "fragment",
    "verb_form": "verb-form",
}


def told(text: str) -> list[Finding]:
    """What the checks of grammar say of a draft."""
    checks = [check for check in CHECKS if check.name in GRAMMAR]
    return list(run_checks(Analysis(Paper("p", text, ()), lambda _: None), checks, allowed=lambda _: "must"))


def lines_of(name: str) -> Iterator[str]:
    """The sentences of a list."""
    lines = (LISTS / f"{name}.txt").read_text("utf-8").splitlines()
    return (line for line in lines if not line.startswith("#"))


def is_told(line: str, check: str) -> bool:
    """Whether a slip is told by its check, at its place and, where the list has it, with what was meant."""
    slip = SLIP.search(line)
    if slip is None:
        at = line.index("{")
        return any(f.check == check and f.span and f.span.start == at for f in told(re.sub(r"[{}]", "", line)))
    rest = SLIP.sub(r"\2", line[slip.end() :])
    for finding in told(line[: slip.start()] + slip[1] + rest):
        if finding.check == check and finding.span is not None and abs(finding.span.start - slip.start()) < 24:
            return check == "comma-splice" or finding.instead[0].words == slip[2]
    return False


@pytest.mark.parametrize("name", FLOORS)
def test_the_slips_of_a_list_are_told(name: str) -> None:
    """Most of them, each with the correction of its word."""
    lines = list(lines_of(name))
    missed = [line for line in lines if not is_told(line, CHECK[name.removeprefix("papers_")])]
    print(f"\n{name}: {len(lines) - len(missed)} of {len(lines)}; not told:", *missed, sep="\n")
    assert len(lines) - len(missed) >= FLOORS[name] * len(lines)


def test_good_sentences_are_let_be() -> None:
    """None of those that break a rule in looks only, and none of the lists' own once they are mended."""
    good = [
        *lines_of("right"),
        *(
            SLIP.sub(r"\2", line)
            for name in ("agreement", "plural", "splice", "papers_verb_form")
            for line in lines_of(name)
        ),
    ]
    wrong = [(line, found) for line in good if (found := told(line))]
    assert wrong == []


@pytest.mark.parametrize(
    "draft",
    [
        "## Which is the question\n\nIt rained.",
        "> Because the river moved.\n",
        "- Because of the price\n- Although it rained.\n",
        "He wrote “the result are clear, it rained” (Vale 12).",
        "*The Boats Was Lost* is a novel.",
        "Figure 1: Because the river moved.",
    ],
)
def test_what_is_not_the_writers_prose_is_let_be(draft: str) -> None:
    """Headings, block quotations, items of a list, quotations and titles."""
    assert told(draft) == []


@pytest.mark.parametrize(
    ("draft", "instead"),
    [
        ("It was an useful and a old book.", ["a", "an"]),
        ("A orchard stood there. An hotel was built.", ["An"]),
        ("They waited a hour for an unicorn and an union.", ["an", "a"]),
        ("Plan A involves a unit, a European office, a one-off fee, an X-ray and an MRI.", []),
        ("Vitamin A is found there, and a and b are equal.", []),
    ],
)
def test_the_article_goes_with_the_sound(draft: str, instead: list[str]) -> None:
    """Letters, abbreviations and words said both ways are let be."""
    assert [found.instead[0].words for found in told(draft) if found.check == "article"] == instead


@pytest.mark.parametrize(
    ("draft", "instead"),
    [
        ("The river could has risen.", ["have"]),
        ("She did not went to the meeting.", ["go"]),
        ("The clerk had never wrote to them.", ["written"]),
        ("He has also began a novel.", ["begun"]),
        ("The model cannot explains it, and nobody would agreed to it.", ["explain", "agree"]),
        ("The letters were wrote by clerks who seemed to enjoyed it.", ["written", "enjoy"]),
        ("The reform was intend to help them, and the road was build by soldiers.", ["intended", "built"]),
        ("Surveys are subject to doubt, and all that was left to do was wait.", []),
        ("Those who could left the city, and what it did changed little.", []),
        ("They had left the house that they could have saved.", []),
        ("What the will said was that the might of the can made sense.", []),
        ("Those who could did so, and all that we had came from them.", []),
    ],
)
def test_a_verb_is_in_the_form_that_its_auxiliary_takes(draft: str, instead: list[str]) -> None:
    """With its right form; nouns that look like auxiliaries are let be."""
    assert [found.instead[0].words for found in told(draft) if found.check == "verb-form"] == instead


@pytest.mark.parametrize(
    "draft",
    [
        "The costs rise, and where they outweigh the gains, the trade will stop.",
        "The valley has two mills, one of which was burned, and the other still stands.",
        "This matters because, as the ledger shows, the rents were paid in kind.",
        "They relied on a shop, an inn, or a chapel, and a road that led to them.",
        "It is known that if the wages, the rents, and the price of bread rise, the poor leave.",
        "It was a law that, in most of the towns, nobody obeyed.",
        "A neighbor who expects noise will resist, the reasoning goes, until the price is right.",
        "The records agree, putting the average case, suits included, at a high figure.",
        "They cannot explain why, among towns that all chose boards, the suits fell.",
        "A conscience accuses, however, and this book accuses nobody.",
        "The leaflets, whose advice, however sound, assumes much, were printed.",
        "It may run the other way, since, as the authors themselves admit, keen walkers move there.",
        "They are like two shifts of the same watch, Nan’s and the clerk’s, each beginning where the other ends.",
    ],
)
def test_a_comma_after_an_opening_is_no_splice(draft: str) -> None:
    """Though what stands on either side of it would be a sentence by itself."""
    assert [found for found in told(draft) if found.check == "comma-splice"] == []


@pytest.mark.parametrize(
    ("draft", "instead"),
    [
        ("These evidence were weak.", ["this"]),
        ("Several new information came to light. They gave many advice about it.", ["much"]),
        ("This evidence and many pieces of information are new, as are these traffic rules.", []),
    ],
)
def test_a_noun_that_is_not_counted_takes_no_word_for_many(draft: str, instead: list[str]) -> None:
    """The word that goes with one is offered, where there is one."""
    found = [each for each in told(draft) if "not counted" in each.says]
    assert [each.instead[0].words for each in found if each.instead] == instead


@pytest.mark.parametrize(
    ("draft", "check"),
    [
        ("Neither the article nor the report claim that it is true.", "agreement"),
        ("There was 22 who blamed the lack of arms.", "agreement"),
        ("Behind removals of this sort lie an assumption.", "agreement"),
        ("The cost of these weeks, so he reckoned, were small.", "agreement"),
        ("A boat might be left for three week and, from 1861, for ten.", "plural-missing"),
        ("The survey asked 40 teacher about it.", "plural-missing"),
        ("It rained. Quietly enrolling the dead among his readers.", "fragment"),
    ],
)
def test_unusual_slips_are_told(draft: str, check: str) -> None:
    """Those in whose order the parser errs."""
    assert [found.check for found in told(draft)] == [check]


def test_a_clause_with_that_may_be_the_subject() -> None:
    """It is no fragment then."""
    assert told("It lasted. That a ditch is cheap to keep explains why nobody need close it.") == []
    assert told("It was new. That a whole age should have ended in a year is more than I can believe.") == []


def test_a_citation_in_brackets_is_no_word_of_its_sentence() -> None:
    """A fragment and a splice that end in one are told."""
    draft = "It failed (Vale, 2009), this was known (Okoro 4). Although nobody had said so (Vale, 2009)."
    assert {found.check for found in told(draft)} >= {"comma-splice", "fragment"}


def test_what_is_opaque_has_a_stand_in_of_the_same_length() -> None:
    """So that every place in the sentence stays."""
    text = "He \ufffc\ufffc said (\ufffc\ufffc\ufffc, \ufffc) it."
    assert len(show(text)) == len(text)
    assert show(text).replace("(", "") == show(text)


def test_a_sentence_without_end_is_passed_over() -> None:
    """A table or a list without a full stop costs no time, and nothing is said of it."""
    assert told("many ship " * 2000) == []


@given(
    st.lists(
        st.sampled_from("the they was were of , and because which ship ships lay . ( ) “ 3 many \n".split(" ")),
        max_size=24,
    )
)
@hypothesis_settings(max_examples=60)
def test_no_run_of_words_breaks_a_check(words: list[str]) -> None:
    """Whatever is written, each place lies within the draft and holds something."""
    draft = " ".join(words)
    for finding in told(draft):
        assert finding.span is not None
        assert finding.span.of(draft).strip()


def test_each_rule_is_named() -> None:
    """By the handbook's word for it, with the word that is amiss."""
    (found,) = told("The results of the second survey shows a fall.")
    assert "Subject and verb do not agree" in found.says
    assert "“results”" in found.says
    (found,) = told("The tide fell early, the boats lay on the mud.")
    assert "comma splice" in found.says
    (found,) = told("The mill closed. Although the river had moved.")
    assert "fragment" in found.says
    assert "“Although”" in found.says
    (found,) = told("Several letter were sent.")
    assert "plural is missing" in found.says
