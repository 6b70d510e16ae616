"""What was used on a paper, and for what, listed for the writer's own statement."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.language_tools import shut_by
from fairhand.readiness.measure import loudest_allowed
from fairhand.readiness.table import CHECKS

_WORDS = {"spelling", "spelling-mixed", "confused-words", "doubled-word"}
"""Checks that have a line of their own; every other check of the language is of grammar and marks."""


def list_used(analysis: Analysis) -> tuple[str, ...]:
    """What looked through the paper, a line for each kind, and what none of it does."""
    return tuple(_list(analysis))


def _list(analysis: Analysis) -> Iterator[str]:
    if shut_by(analysis):
        yield "Spelling, grammar and words confused: not looked at, by the sheet’s rule on tools and your answer to it."
    else:
        rest = [
            one.name.replace("-", " ")
            for one in CHECKS
            if one.of_language and one.name not in _WORDS and loudest_allowed(one.name)
        ]
        yield "Spelling: words held against American and British dictionaries made from SCOWL, the likeliest offered."
        yield "Words confused or doubled: by lists, rules, and a model of the parts of speech that stand beside a word."
        yield f"Grammar and marks: by rules on each sentence as a parser (spaCy) takes it apart: {', '.join(rest)}."
    yield (
        "Copying: the draft held word by word against the paper’s sources and your other papers on the desk, for words"
        " without quotation marks."
    )
    yield "Quotations and citations: held against the sources and their pages, and the style manual’s rules."
    yield (
        "All of it ran on this machine, by the program Fairhand. It points at places and offers at most a word or a"
        " mark: it wrote and rewrote no sentence."
    )
