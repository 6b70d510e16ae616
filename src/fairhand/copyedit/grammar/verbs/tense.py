"""A shift of tense between two verbs of one event: *She walked to the window and looks out*.

**Source**: "unnecessary shift in verb tense" in A. A. Lunsford and K. J. Lunsford 2008. The present of literature and
of what still holds beside the past of history is lawful, so that only deeds of a moment, by one person, are told: of
two verbs that share a subject, and of a deed and the clause with *when*, *as* or *while* that times it.
"""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.clauses import PAST_ONLY, Clause
from fairhand.copyedit.grammar.slip import Slip
from fairhand.copyedit.grammar.verbs.narrative import WAIVED, is_doer, is_lasting, is_literary
from fairhand.language.lexicon import find_word

_DEEDS = (
    "walk walked run ran sit sat stand stood turn turned look looked see saw go went come came take took open"
    " opened close closed leave left enter entered hear heard shout shouted cry cried pick picked grab grabbed"
    " meet met jump jumped climb climbed wave waved wake woke hide hid wait waited draw drew cut cut fall fell"
    " throw threw catch caught push pushed pull pulled smile smiled laugh laughed nod nodded knock knocked stop"
    " stopped start started begin began arrive arrived return returned rush rushed step stepped drop dropped"
    " lift lifted cross crossed reach reached find found give gave get got drive drove ride rode swim swam fly"
    " flew kiss kissed kick kicked hit hit put put bring brought carry carried follow followed point pointed"
    " stare stared whisper whispered scream screamed sleep slept eat ate drink drank ask asked answer answered"
    " reply replied decide decided notice noticed grip gripped kneel knelt seize seized hand handed"
).split()
_PRESENT = frozenset(_DEEDS[::2])
_PAST = frozenset(_DEEDS[1::2]) - frozenset("cut hit put".split())
"""Deeds of a moment, in the present and in the past."""
_TIMED = frozenset("when as while".split())


_TAGS = frozenset("VBZ VBP VBD VB".split())


def find_tense_shift(clause: Clause) -> Iterator[Slip]:
    """Each deed of a sentence whose time is not that of the deed beside it.

    Args:
        clause: The sentence.

    >>> from fairhand.language.parsing import parse_sentences
    >>> said = "When he opened the door, he sees a stranger."
    >>> [one.word for one in find_tense_shift(Clause(said, 0, parse_sentences([said])[0]))]
    ['sees']
    """
    words = clause.words
    if {word.key for word in words} & WAIVED:
        return
    for at, word in enumerate(words):
        if word.tag in _TAGS and word.role in ("conj", "advcl"):
            other = word.head
            if word.role == "conj":
                yield from _joined(clause, other, at)
            elif any(words[n].key in _TIMED for n in clause.of_role(at, "advmod", "mark")):
                yield from _told(clause, at, other, max(at, other))
        elif word.tag == "NNS" and _is_deed_alone(word.key) and words[at - 1].key == "and":
            yield from _after_deed(clause, at)


def _is_deed_alone(word: str) -> bool:
    """Whether it is the present of a deed, whatever the tagger says, since no noun is spelled so: *begins*, *goes*."""
    base = next((each for each in (word.removesuffix("s"), word.removesuffix("es")) if each in _PRESENT), None)
    known = find_word(base) if base is not None and word.endswith("s") else None
    return known is not None and "n" not in known.kinds


def _after_deed(clause: Clause, at: int) -> Iterator[Slip]:
    """*Sat down and begins*: a present straight after the past of one that did the other too."""
    words = clause.words
    before = next((n for n in range(at - 2, 0, -1) if clause.is_finite(n)), None)
    if before is None or words[before].tag != "VBD" or words[before].key not in _PAST:
        return
    subject = clause.subject_of(before)
    if (
        subject is not None
        and words[subject].tag in ("PRP", "NN", "NNP")
        and words[subject].key not in ("i", "we", "they")
    ):
        yield Slip(clause.place(at), words[at].text, "", "tense")


def _joined(clause: Clause, first: int, second: int) -> Iterator[Slip]:
    """Two verbs joined by *and* with one subject, or with the same pronoun."""
    words = clause.words
    links = [words[n].key for n in clause.of_role(first, "cc")]
    if links != ["and"] or clause.of_role(second, "aux"):
        return
    one, two = clause.subject_of(first), clause.subject_of(second)
    if one is None or (two is not None and words[two].key != words[one].key):
        return
    yield from _told(clause, first, second, second)


def _told(clause: Clause, one: int, two: int, shown: int) -> Iterator[Slip]:
    words = clause.words
    if (
        {words[one].tag, words[two].tag} - _TAGS
        or clause.of_role(one, "aux", "auxpass")
        or clause.of_role(two, "aux", "auxpass", "neg")
    ):
        return
    times = {_time(words[one].key, words[one].tag), _time(words[two].key, words[two].tag)}
    if times == {"present", "past"} or _parts(clause, one, two):
        yield Slip(clause.place(shown), words[shown].text, "", "tense")


def _parts(clause: Clause, first: int, second: int) -> bool:
    """Whether persons do two things by verbs that can be no habit, the one in the past and the other in the present."""
    words = clause.words
    subject = clause.subject_of(first)
    tags = (words[first].tag, words[second].tag)
    if subject is None or words[second].role not in ("conj", "ROOT") or is_literary(clause):
        return False
    named = words[subject].tag == "NNP" and not clause.hides((subject,)) and words[second].role == "conj"
    if not (named or is_doer(clause, subject)):
        return False
    if "VBD" not in tags or not {"VBZ", "VBP"} & set(tags):
        return False
    past = words[first if tags[0] == "VBD" else second].key
    if not (past.endswith("ed") or past in _PAST or past in PAST_ONLY):
        return False  # a noun taken for a verb
    return not any(is_lasting(words[n].key) and not _is_deed(words[n].key) for n in (first, second))


def _is_deed(verb: str) -> bool:
    return _time(verb, "VBZ") == "present" or verb in _PAST


def _time(verb: str, tag: str) -> str | None:
    if tag == "VBD":
        return "past" if verb in _PAST else None
    base = (
        verb
        if verb in _PRESENT
        else verb.removesuffix("s")
        if verb.removesuffix("s") in _PRESENT
        else verb.removesuffix("es")
    )
    if verb.endswith("ies"):
        base = verb[:-3] + "y"
    return "present" if base in _PRESENT and verb not in _PAST else None
