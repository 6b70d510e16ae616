"""A comma that parts what belongs together: a subject from its verb, a verb from its *that*.

**Source**: "Unnecessary comma" in A. A. Lunsford and K. J. Lunsford 2008 and in handbooks of usage. A comma that is one
of a pair is let be, and so is the one between a verb and the same verb (*those who can, do*).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from fairhand.copyedit.grammar.clauses import PAST_ONLY, WH, Clause
from fairhand.language.lexicon import find_word
from fairhand.language.stems import stem
from fairhand.model.span import Span

Kind = Literal["subject", "that", "such as", "although"]
_SAYS = frozenset(
    map(
        stem,
        "say said argue claim believe think thought show shown suggest find found conclude state explain assume know"
        " knew known report prove reveal indicate demonstrate maintain insist hope fear realize realise discover"
        " understand understood mean meant propose predict admit deny hold held agree feel felt note observe".split(),
    )
)
_PLAIN = frozenset("clear obvious true likely possible certain evident known important necessary surprising".split())
_BEGINS = frozenset({"NN", "NNS", "NNP", "JJ", "DT", "PRP$", "VBG", "CD", "PRP"})
"""What a noun or a subject may begin with."""
_AUXILIARIES = frozenset("is are was were has have had does do did".split())
_VERBS = frozenset({"VB", "VBD", "VBG", "VBN", "VBP", "VBZ", "MD", "TO", "IN"})
_BREAKS = frozenset({":", ";", "—", "–", "--", "---", "(", ")", "[", "]", "/", "=", "∘"})


@dataclass(frozen=True, slots=True)
class Unneeded:
    """A comma that parts what belongs together."""

    span: Span
    """From the word before the comma to the one after it, in the draft."""
    comma: Span
    kind: Kind
    before: str
    """The word before the comma."""


def find_unneeded(clause: Clause) -> Iterator[Unneeded]:
    """The commas of a sentence that part what belongs together.

    >>> from fairhand.language.parsing import parse_sentences
    >>> text = "She found, that most of the letters had been opened."
    >>> [found.kind for found in find_unneeded(Clause(text, 0, parse_sentences([text])[0]))]
    ['that']
    """
    words = clause.words
    for at in range(1, len(words) - 2):
        if words[at].text != "," or clause.hides((at - 1, at + 1)):
            continue
        kind = _kind_of(clause, at)
        if kind is not None:
            yield Unneeded(clause.place(at - 1, at + 1), clause.place(at), kind, words[at - 1].text)


_ASIDE = 9
"""Words of a parenthesis whose second comma may stand before *that*, at most."""


def _kind_of(clause: Clause, at: int) -> Kind | None:
    words = clause.words
    before, after = words[at - 1], words[at + 1]
    if (before.key == "as" and words[at - 2].key == "such") or (before.key == "including" and at > 1):
        return "such as" if after.tag in _BEGINS else None
    if at <= 2 and before.key in ("although", "though") and (at == 1 or words[0].key == "even"):
        return "although" if _begins_subject(clause, at + 1) else None
    if after.key in ("that", "whether"):
        return "that" if _parts_that(clause, at) else None
    return "subject" if _parts_subject(clause, at) else None


def _begins_subject(clause: Clause, number: int) -> bool:
    """Whether a word begins the subject of a clause with a verb of its own."""
    words = clause.words
    return any(
        (subject := clause.subject_of(n)) is not None
        and clause.finite_of(n) is not None
        and clause.below(subject)[0] == number
        for n in range(number, len(words))
    )


def _parts_that(clause: Clause, at: int) -> bool:
    """Whether the comma stands between a verb, or *it is clear*, and the clause that it takes."""
    words = clause.words
    if any(each.text == "," for each in words[max(0, at - _ASIDE) : at]):
        return False  # it is true, as Vale insisted, that
    opens = words[at + 1]
    if opens.key == "that" and words[at + 2].tag in ("DT", "PRP", "PRP$", "EX") and _says(clause, at - 1):
        return True
    chief = opens.head if opens.role == "mark" else words[opens.head].head
    governor = words[chief].head
    before = words[at - 1]
    if words[chief].role != "ccomp" or clause.subject_of(chief) is None or clause.finite_of(chief) is None:
        return False
    if governor > at - 1 or clause.finite_of(governor) is None:
        return False
    verb = governor == at - 1 and (stem(before.key) in _SAYS or before.key in ("is", "was"))
    if opens.role != "mark" and (
        opens.role != "det" or before.key in ("says", "said", "thinks", "thought", "is", "was")
    ):
        return False  # he said, that man is guilty
    adjective = before.key in _PLAIN and words[at - 1].head == governor and words[0].key == "it"
    subject = clause.subject_of(governor)
    if not (verb or adjective) or subject is None:
        return False
    return not any(each.text == "," or each.text in _BREAKS for each in words[subject:at])


def _says(clause: Clause, number: int) -> bool:
    """Whether a word is a verb that takes *that*, with its subject just before it."""
    words = clause.words
    if stem(words[number].key) not in _SAYS or not words[number].tag.startswith("VB"):
        return False
    subject = clause.subject_of(number)
    return subject is not None and not any(each.text == "," or each.text in _BREAKS for each in words[subject:number])


def _parts_subject(clause: Clause, at: int) -> bool:
    """Whether the comma is the only one between a subject that opens the sentence and its verb."""
    words = clause.words
    verb = at + 1
    if not _is_surely_finite(clause, verb) or any(each.text == "," or each.text in _BREAKS for each in words[:at]):
        return False
    head = words[verb].head if words[verb].role in ("aux", "auxpass") else verb
    if words[head].head != head:
        return False
    subject = next(iter(clause.of_role(head, "nsubj", "nsubjpass", "csubj", "csubjpass")), None)
    if subject is None and (words[0].tag == "VBG" or words[0].key in ("whether", "what", "how")):
        subject = next((n for n in clause.of_role(head, "advcl") if n < at), None)  # smoking in public places, is
    if subject is None:
        return False
    if words[-1].text not in (".", "!", "?") or _is_one_of_several(clause, subject, verb):
        return False
    own = [n for n in clause.below(subject) if words[n].role != "punct"]
    if own != list(range(at)) or at < 2:
        return False
    return words[at - 1].tag not in _VERBS | {"RB"} and words[verb].key != words[at - 1].key


def _is_one_of_several(clause: Clause, subject: int, verb: int) -> bool:
    """Whether the verb may be the second of several: *to stop costs nothing, can be tried, and can be undone*."""
    words = clause.words
    if words[0].tag not in WH and words[0].key not in ("that", "whether"):
        whole = clause.below(subject)
        bound = {m for n in whole if words[n].role in ("relcl", "ccomp", "acl") for m in clause.below(n)}
        if any(clause.is_finite(n) for n in whole if n not in bound):
            return True
    for n in range(verb, len(words) - 2):
        if words[n].text == "," and words[n + 1].key in ("and", "or") and clause.is_finite(n + 2):
            return True
    return False


def _is_surely_finite(clause: Clause, number: int) -> bool:
    """Whether a word is a finite verb, and neither a participle nor a noun."""
    word = clause.words[number]
    if word.tag == "MD" or word.key in _AUXILIARIES or (word.key in PAST_ONLY and word.tag == "VBD"):
        return True
    known = find_word(word.key)
    return word.tag in ("VBZ", "VBP") and known is not None and bool(set(known.kinds) & set("vs"))
