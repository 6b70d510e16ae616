from __future__ import annotations

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.errors import FileUnreadable
from fairhand.model.focus import Focus, Question
from fairhand.planning.focus_file import drop_question, put_focus, put_question, read_focus
from fairhand.planning.task_verbs import VERBS, ask_of_task
from fairhand.planning.thesis import ask_of_thesis

FULL = Question("", "Who rang?", "answered", ("urn:uuid:1",), ("p2",))


def test_what_is_put_is_read_again() -> None:
    """The focus, its flag and audience, and each question in its place."""
    text = put_focus("", Focus("Bells in fog", is_thesis=True, audience="pilots"))
    text = put_question(put_question(text, FULL), Question("", "Who paid?"))
    text = put_question(text, Question("q1", "Who rang it?"))
    focus, problems = read_focus(tomllib.loads(text))
    both = (Question("q1", "Who rang it?"), Question("q2", "Who paid?"))
    assert focus == Focus("Bells in fog", is_thesis=True, audience="pilots", questions=both)
    assert problems == ()
    assert read_focus(tomllib.loads(drop_question(text, "q1")))[0].questions == (Question("q2", "Who paid?"),)


def test_what_the_program_does_not_know_stays() -> None:
    """Remarks and keys of the writer's own are not touched, nor is the question that did not change."""
    text = (
        '# mine\nmood = "grey"\n\n[[questions]]\ntext = "Who rang?" # at night\nwhy = 1\n\n[[questions]]\ntext = "b"\n'
    )
    changed = put_question(put_focus(text, Focus("Fog")), Question("q2", "c", "answered"))
    for kept in ("# mine", 'mood = "grey"', '"Who rang?" # at night', "why = 1", 'focus = "Fog"'):
        assert kept in changed
    assert [one.state for one in read_focus(tomllib.loads(changed))[0].questions] == ["open", "answered"]


def test_a_file_that_cannot_be_read_is_not_written_over() -> None:
    """It is to be mended first."""
    for text in ("[[", "questions = 3"):
        with pytest.raises(FileUnreadable, match="nothing was written"):
            put_question(text, FULL)


def test_each_fault_is_named_and_the_rest_is_read() -> None:
    """A question without words or with another's id is left out; a strange state is open."""
    table = {
        "focus": 3,
        "thesis": "yes",
        "questions": [{}, {"id": "a", "text": "x", "state": "?"}, {"id": "a", "text": "y"}],
    }
    focus, problems = read_focus(table)
    assert focus == Focus(questions=(Question("a", "x"),))
    assert len(problems) == 4


@given(
    st.recursive(
        st.none() | st.booleans() | st.integers() | st.text(max_size=8),
        lambda inner: (
            st.lists(inner, max_size=3)
            | st.dictionaries(st.sampled_from("focus thesis questions text id notes state".split()), inner, max_size=4)
        ),
    ).filter(lambda value: isinstance(value, dict))
)
def test_no_table_is_too_odd(table: dict[str, object]) -> None:
    """Any table is read."""
    read_focus(table)


@given(st.text(max_size=300))
def test_any_sentence_can_be_asked_about(text: str) -> None:
    """Nothing crashes, and no query is a verdict without a source."""
    for query in (*ask_of_thesis(text), *ask_of_task(text, VERBS)):
        assert query.asks.endswith((".", "?"))
        assert query.source


def test_long_runs_are_read_at_once() -> None:
    """The time grows with the length alone."""
    for odd in ("from " * 20_000, "a; the " * 5_000, "the ed " * 5_000, "this x " * 10_000, "not a " * 10_000):
        ask_of_thesis(odd)
        ask_of_task(odd, VERBS)


def test_spellings_of_a_verb_are_one() -> None:
    """Analyze and analyse ask for the same; a verb that is not known asks nothing."""
    assert ask_of_task("A sermon", ["analyze"]) == ask_of_task("A sermon", ["analyse", "analyze"])
    assert ask_of_task("A sermon", ["sing"]) == ()
    assert ask_of_task("", ["analyse"]) == ()


def test_two_sentences_are_asked_about() -> None:
    """A thesis is one."""
    asked = ask_of_thesis("Bells failed in fog because they were cheap. Horns were better.")
    assert [query.asks for query in asked] == ["It is more than one sentence. Which of them is the claim?"]
