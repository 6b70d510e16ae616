"""One of two words taken for the other, told by the words around it and by nothing else."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.copyedit.around import read_pattern, read_tokens
from fairhand.copyedit.own_prose import own_prose
from fairhand.copyedit.words.confused import confused_in, confusions, find_confused
from fairhand.manuscript.draft import read_manuscript


@pytest.mark.parametrize(
    ("sentence", "told"),
    [
        ("The tree shows it's roots.", "it's: its"),
        ("It is clear that its a long way.", "its: it's"),
        ("They lost there jobs.", "there: their"),
        ("Their were three boats.", "Their: There"),
        ("They are better then the others.", "then: than"),
        ("The quay was to expensive for them.", "to: too"),
        ("Salt effects everyone on the coast.", "effects: affects"),
        ("The tax had no affect on trade.", "affect: effect"),
        ("The principle reason was thirst.", "principle: principal"),
        ("In principal, they agreed.", "principal: principle"),
        ("They would loose the boat.", "loose: lose"),
        ("She should of known.", "of: have"),
        ("He asked weather or not it held.", "weather: whether"),
        ("The dry season has lead to ruin.", "lead: led"),
        ("Everyone accept the pilot left.", "accept: except"),
        ("The writer who’s name is lost.", "who’s: whose"),
        ("They gave good advise.", "advise: advice"),
        ("It was a guilty conscious.", "conscious: conscience"),
        ("In the passed century it sank.", "passed: past"),
        ("A large amount of students lay there.", "amount: number"),
    ],
)
def test_a_confusion_is_told(sentence: str, told: str) -> None:
    """Handbooks' pairs (check-values, section 7), each in a sentence that wants the other word."""
    assert [f"{each.word}: {each.instead}" for each in confused_in(sentence)] == [told]


@pytest.mark.parametrize(
    "sentence",
    [
        "Its roots are old, and it's clear that it's not a weed.",
        "There they were, and their boats were there too.",
        "There seems to be a way to completely rebuild it.",
        "More than that, she then left; what then?",
        "The side effects of the cure affect everyone, and reform was effected.",
        "In principle the principal agreed on the principle.",
        "In the worst weather the boats stay in.",
        "It may lead to ruin; the lead pipe led nowhere.",
        "Much of the loose cargo was lost.",
        "The conscience of a conscious mind.",
        "You can tell where you are.",
        "A large amount of goods, and a set of the tools.",
        "In neither case were the heirs told, and at no point were they asked.",
        "The drug can also effect a change in mood.",
        "A flattened affect is a common symptom.",
        "They were denied access to the site, which was closed.",
    ],
)
def test_the_right_word_is_let_be(sentence: str) -> None:
    """Neither word is told for standing there."""
    assert confused_in(sentence) == ()


def test_every_row_asks_for_a_neighbour_that_there_can_be() -> None:
    """No row is without neighbours; those that let the word be stand first."""
    for wrote, rows in confusions().items():
        kept = [row.meant == wrote for row in rows]
        assert kept == sorted(kept, reverse=True)
        for row in rows:
            assert row.pattern.before or row.pattern.after, wrote
            assert all(part.words or part.kinds for part in (*row.pattern.before, *row.pattern.after)), wrote


def test_a_pattern_reads_the_nearest_word_first() -> None:
    """Before the word, from right to left; what may be missing may be there."""
    tokens = read_tokens("as far as the old quay goes")
    assert read_pattern("far as the? old? _").fits(tokens, 5)
    assert not read_pattern("far as the _").fits(tokens, 5)


@given(st.text())
def test_any_sentence_is_looked_through(text: str) -> None:
    """Places lie within the sentence and hold the word that is told."""
    assert all(each.span.of(text) == each.word for each in confused_in(text))


FAULTS = [
    (*pair.split(" > "), sentence)
    for line in (Path(__file__).parent / "confused_faults.txt").read_text("utf-8").splitlines()
    if not line.startswith("#")
    for pair, sentence in [line.split(": ", 1)]
]
TOLD = 0.8
"""The share of them that is told, at least."""


def test_sentences_of_many_subjects_with_a_word_taken_for_another() -> None:
    """Four of five are told, and nothing in the same sentences set right."""
    told = 0
    for wrote, meant, sentence in FAULTS:
        told += (wrote, meant) in {(each.word.lower(), each.instead.lower()) for each in confused_in(sentence)}
        mended = re.sub(rf"\b{wrote}\b", meant, sentence, count=1, flags=re.IGNORECASE)
        assert confused_in(mended) == (), mended
    print(f"{told} of {len(FAULTS)} told")
    assert told >= TOLD * len(FAULTS)


@pytest.mark.parametrize(
    ("draft", "told"),
    [
        ("It is shorter still then in science.", "then: than"),
        ("The rebuke is a fare one.", "fare: fair"),
        ("It also altars the way in which they work.", "altars: alters"),
        ("The council sat late. Each ward was heard. The counsellors refused.", "counsellors: councillors"),
    ],
)
def test_what_has_no_telling_neighbour_is_told_by_its_place_or_the_paper(draft: str, told: str) -> None:
    """A comparative at a distance, an adjective's or a verb's place, or what the paper is about."""
    found = find_confused(own_prose(read_manuscript(draft), ()))
    assert [f"{each.word}: {each.instead}" for each in found] == [told]


def test_a_counsellor_in_therapy_is_let_be() -> None:
    """What the paper is about has to be the council, and nothing else."""
    draft = "The council paid for therapy. Each ward had a place. The counsellors met patients there."
    assert list(find_confused(own_prose(read_manuscript(draft), ()))) == []


UNSEEN = [
    line.split(": ", 1)
    for line in (Path(__file__).parent / "confused_unseen.txt").read_text("utf-8").splitlines()
    if not line.startswith("#")
]
OF_UNSEEN = 0.75
"""The share of these that is told, at least; with the rows of before they were written it was .61."""
RIGHT = 3
"""Sentences in which a right word is told, at most."""


def test_sentences_in_the_manner_of_students_papers() -> None:
    """Three of four confusions are told, and in as many look-alikes hardly any right word."""
    told, wrong = 0, []
    for pair, sentence in UNSEEN:
        found = {(each.word.lower(), each.instead.lower()) for each in confused_in(sentence)}
        told += " > " in pair and tuple(pair.split(" > ")) in found
        wrong += [sentence for each in found if pair == "right" or each != tuple(pair.split(" > "))]
    faulty = sum(" > " in pair for pair, _ in UNSEEN)
    print(f"{told} of {faulty} told", *wrong, sep="\n")
    assert told >= OF_UNSEEN * faulty
    assert len(wrong) <= RIGHT


@pytest.mark.parametrize(
    ("sentence", "told"),
    [
        ("In Britain a driver must hold a valid license.", "license: licence"),
        ("They were not allowed to practice law.", "practice: practise"),
    ],
)
def test_british_writers_part_the_noun_from_the_verb(sentence: str, told: str) -> None:
    """A noun with c and a verb with s, told where the paper keeps to British spelling alone."""
    assert [f"{each.word}: {each.instead}" for each in confused_in(sentence, "GB")] == [told]
    assert confused_in(sentence, "US") == ()
