"""What was revised between two states, in words: how many sentences in argument, in wording, and in order."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from fairhand.language.counts import count_of
from fairhand.manuscript.revising import Revision
from fairhand.proof.comparison import Difference


def list_sentences(differences: Iterable[Difference]) -> tuple[Revision, ...]:
    """The sentences revised in some differences, each once."""
    return tuple(dict.fromkeys(one for difference in differences for one in difference.revisions))


def tell_revisions(revisions: Sequence[Revision]) -> str:
    """How many sentences were revised in what, in one line; empty where none was.

    That a sentence is new or gone is seen; that a changed one says something else is guessed from its words.

    >>> from fairhand.model.span import Span
    >>> new = Revision("new", "argument", (), (Span(0, 9),), "the sentence is new")
    >>> tell_revisions([new, Revision("edited", "wording", (Span(0, 9),), (Span(9, 20),), "")])
    'in argument: 1 sentence new; in wording: 1 sentence'
    """
    argument = [one for one in revisions if one.kind == "argument"]
    counted = (
        (sum(one.fate == "new" for one in argument), "new"),
        (sum(one.fate == "gone" for one in argument), "gone"),
        (sum(one.fate not in ("new", "gone") for one in argument), "changed, it may be"),
    )
    told = [f"{count_of(number, 'sentence')} {what}" for number, what in counted if number]
    lines = [f"in argument: {', '.join(told)}"] if told else []
    numbers = {kind: sum(one.kind == kind for one in revisions) for kind in ("wording", "order")}
    lines += [f"in {kind}: {count_of(number, 'sentence')}" for kind, number in numbers.items() if number]
    return "; ".join(lines)


def tell_signs(revisions: Sequence[Revision]) -> str:
    """What was gone by where a changed sentence may say something else; empty where none does.

    >>> tell_signs([Revision("edited", "argument", (), (), "a figure came or went: 12, 14")])
    'a figure came or went: 12, 14'
    """
    signs = (one.why for one in revisions if one.kind == "argument" and one.fate not in ("new", "gone"))
    return "; ".join(dict.fromkeys(signs))
