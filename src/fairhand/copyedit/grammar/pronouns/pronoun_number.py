"""A pronoun that is one where the word it stands for is many, or the other way about, or of another person.

**Source**: "pronoun–antecedent agreement" in A. A. Lunsford and K. J. Lunsford 2008 and in handbooks of usage. Singular
*they* for a person is accepted (MLA Handbook, 9th ed., 3.5; APA Manual, 7th ed., 5.5) and is never told; nor is *they*
for a body, which British usage has. What is told is bound to its subject by the grammar: a reflexive, *its own*, *their
own*; and *one* that becomes *you*.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from fairhand.copyedit.grammar.clauses import NOUNS, SUBJECTS, Clause, word_at
from fairhand.copyedit.grammar.counted import PERSONS
from fairhand.copyedit.grammar.number import number_of
from fairhand.copyedit.grammar.slip import Slip, slip_at

_SINGULAR = frozenset("itself himself herself".split())
_MOST_STEPS = 5
_OTHERS = NOUNS | {"PRP", "WDT", "WP", "DT"}
"""What else a pronoun could stand for."""
_SINGULARS = frozenset("NN NNP PRP WDT WP EX".split())
"""What a plain *its* could stand for."""
_DAYS = frozenset(
    "end day month year week morning evening night spring summer autumn winter january february march april may june"
    " july august september october november december century beginning time decade war".split()
)
_OF_ONES_OWN = frozenset(
    "lose loses lost shed sheds retain retains retained regain regains regained derive derives derived owe owes owed"
    " publish published publishes celebrate celebrates celebrated withdraw withdraws withdrew reach reaches reached"
    " earn earns earned".split()
)
"""What one does to what is one's own: what another has is seldom lost, shed or published by the subject."""
_HAVING = frozenset(
    "they have has had having keep keeps kept need needs needed retain retained govern governed protect protects defend"
    " build built print printed elect elected hold held use used".split()
)
_PARTED = frozenset("separate respective individual".split())
"""Words for what belongs to each of several."""
_OFFICES = frozenset("commissioners trustees governors directors magistrates ministers councillors guardians".split())
_OBJECTS = frozenset("dobj pobj dative".split())
_THINGS = frozenset(
    "theory method law poem novel essay argument engine book report system process idea model language island"
    " river plant cell city town village house building factory mill machine protein gene star planet treaty text"
    " story film play image concept policy programme program project structure tree lake sea mountain road bridge"
    " church hospital landscape dog cat bird horse shark whale wolf bee spider fox animal atom molecule enzyme"
    " brain body economy market contract document letter paper work artwork painting device computer virus"
    " bacterium".split()
)
"""Nouns that are one thing, no body of people, and no person."""


def find_number_slips(clause: Clause) -> Iterator[Slip]:
    """Each reflexive, *its own*, *their own* and *you* that does not go with its subject.

    Args:
        clause: The sentence.

    >>> from fairhand.language.parsing import parse_sentences
    >>> said = "These towns governed itself."
    >>> [one.instead for one in find_number_slips(Clause(said, 0, parse_sentences([said])[0]))]
    ['themselves']
    """
    words = clause.words
    for at, word in enumerate(words):
        if word.key in _SINGULAR and (
            (word.role in _OBJECTS and _number(clause, at) == "many") or _beside_many(clause, at)
        ):
            yield slip_at(clause, at, "themselves", "number")
        elif word.key == "themselves" and word.role in _OBJECTS:
            if _number(clause, at) == "thing":
                yield slip_at(clause, at, "itself", "number")
        elif word.key in ("its", "their") and at + 2 < len(words) and words[at + 1].key == "own":
            number = _number(clause, at) if _is_had(clause, at) else None
            if (word.key, number) in (("its", "many"), ("their", "thing")):
                yield slip_at(clause, at, "their" if number == "many" else "its", "number")
        elif word.key in ("its", "their") and word.role == "poss":
            other = _owner_is_other(clause, at)
            if other:
                yield slip_at(clause, at, other, "plain")
    yield from _one_and_you(clause)


def _number(clause: Clause, at: int) -> Literal["many", "thing"] | None:
    """Number of the subject of the clause that holds a word, where nothing else can be meant."""
    words = clause.words
    verb = words[at].head
    steps = 0
    while not words[verb].tag.startswith("VB") or clause.subject_of(verb) is None:
        steps += 1
        role = words[verb].role
        if words[verb].tag.startswith("VB") and (
            role not in ("xcomp", "conj") or (role == "xcomp" and clause.of_role(words[verb].head, "dobj"))
        ):
            return None
        if words[verb].head == verb or steps > _MOST_STEPS:
            return None
        verb = words[verb].head
    subject = clause.subject_of(verb)
    if subject is None or subject > at:
        return None
    bound = words[at].role == "dobj"  # nothing but the subject can be meant
    if not bound and any(each.key in ("that", "which", "whom") for each in words[max(0, subject - 4) : subject]):
        return None  # an end that we want for itself
    if not bound and any(words[n].tag in _OTHERS or words[n].text in ",;:" for n in range(subject + 1, at)):
        return None
    if words[subject].tag in ("WDT", "WP") and words[verb].role == "relcl":
        subject = words[verb].head
        if any(words[n].key == "one" for n in range(max(0, subject - 4), subject)):
            return None
    chief = words[subject]
    number = number_of(clause, subject)
    if number == "many" and (chief.tag == "NNS" or chief.key in ("they", "we", "these", "both")):
        return "many"
    if number == "one" and chief.key in _THINGS and not clause.of_role(subject, "conj", "cc"):
        return "thing"
    return None


def _is_had(clause: Clause, at: int) -> bool:
    """Whether it is told of what the subject has or keeps, or of *they*: elsewhere another owner may be meant."""
    return any(word.key in _HAVING for word in clause.words[max(0, at - 6) : at])


def _owner_is_other(clause: Clause, at: int) -> str:
    """What a plain *its* or *their* should be, where the one noun before it is its subject, of the other number.

    Only in the object of a sentence's chief verb: *the committees published its report*.
    """
    words = clause.words
    noun = words[at].head
    verb = words[noun].head
    if words[noun].role != "dobj" or words[verb].role not in ("ROOT", "conj") or not words[verb].tag.startswith("VB"):
        return ""
    parted = words[at + 1].key in _PARTED and words[at + 2].tag == "NNS"
    if words[verb].key not in _OF_ONES_OWN and not parted:
        return ""
    subject = clause.subject_of(verb)
    if subject is None and words[verb].role == "conj":
        subject = clause.subject_of(words[verb].head)
    if subject is None or subject > at or clause.of_role(subject, "conj", "appos"):
        return ""
    chief, number = words[subject], number_of(clause, subject)
    between, before = words[subject + 1 : at], words[:subject]
    if words[at].key == "its":
        many = (number == "many" and chief.tag == "NNS" and (parted or not _is_person(chief.key))) or (
            chief.tag == "NNPS" and chief.key in _OFFICES
        )
        plain = many and not any(each.tag in _SINGULARS for each in between)
        return "their" if plain and all(each.tag not in _SINGULARS or each.key in _DAYS for each in before) else ""
    plural = {"NNS", "NNPS", "CD", "CC"}
    thing = number == "one" and chief.tag == "NN" and chief.key in _THINGS
    own = ("they", "these", "those", "people", "everyone", "each")
    return "its" if thing and not any(w.tag in plural or w.key in own for w in words[:at]) else ""


def _is_person(noun: str) -> bool:
    return noun in PERSONS or noun.removesuffix("s") in PERSONS or noun in ("men", "women", "children", "people")


def _beside_many(clause: Clause, at: int) -> bool:
    """Whether it stands beside a plural that it lays weight on: *the drivers itself*, *they are itself*."""
    words = clause.words
    if at > 1 and (
        words[at - 1].key in ("are", "were") or (words[at - 1].tag in ("VBP", "VBD") and words[at].role == "nsubj")
    ):
        verb = words[at - 1].head if words[at - 1].role in ("aux", "auxpass") else at - 1
        subject = clause.subject_of(verb)
        return subject is not None and subject < at - 1 and number_of(clause, subject) == "many"
    if at == 0 or words[at].key != "itself" or words[at - 1].tag != "NNS" or number_of(clause, at - 1) != "many":
        return False
    start = at - 1
    while start > 0 and words[start - 1].tag in ("DT", "PRP$", "JJ", "NN"):
        start -= 1
    return (
        start == 0 or words[start - 1].tag in ("CC", ",", "VBP", "VBD") or words[start - 1].key in ("that", "because")
    )


def _one_and_you(clause: Clause) -> Iterator[Slip]:
    """*When one reads it, you see*."""
    words = clause.words
    one = next(
        (n for n, each in enumerate(words) if each.key == "one" and each.role == "nsubj" and _is_generic(clause, n)),
        None,
    )
    if one is None:
        return
    for at in range(one + 1, len(words)):
        if at + 1 == len(words):
            break
        if words[at].key == "you" and words[at].role in SUBJECTS and words[at + 1].key != "and":
            yield slip_at(clause, at, "one", "person")
            return


def _is_generic(clause: Clause, at: int) -> bool:
    """Whether *one* is anybody: with no word that makes it one of several."""
    before, after = word_at(clause.words, at - 1), word_at(clause.words, at + 1)
    opens = before is None or before.tag in ("IN", "WRB", ",", "CC") or before.key == "that"
    follows = after is not None and (after.tag in ("VBZ", "MD", "RB", "VBD", "VBP"))
    return opens and follows and not clause.of_role(at, "prep", "relcl", "amod", "det", "nummod")
