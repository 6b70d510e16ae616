"""A pronoun in the case of a subject where an object belongs, or the other way about; a reflexive with no subject.

**Source**: "pronoun case" in handbooks of usage; *who* and *whom* by the clause they stand in. What formal usage leaves
open (*it is me*, *than him*, *who* for *whom* at the end of a question) is let be.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.copyedit.grammar.clauses import FINITE, NOUNS, SUBJECTS, Clause, word_at
from fairhand.copyedit.grammar.pronouns.relative_case import find_relative_slips
from fairhand.copyedit.grammar.slip import Slip, slip_at

OBJECT_OF = {"i": "me", "i.": "me", "he": "him", "she": "her", "we": "us", "they": "them"}
SUBJECT_OF = {"me": "I", "him": "he", "her": "she", "us": "we", "them": "they"}
"""The other case of each."""
_TAKES_OBJECT = frozenset(
    "to with from of by about against without near behind beside toward towards upon between among like for".split()
)
_CLAUSE_AFTER = frozenset("for like".split())
"""Those after which a clause may begin as well."""
_PAIRED = frozenset("neither either both".split())
_LINKS = frozenset("and or nor".split())
_OPENS_CLAUSE = frozenset("because when while if although though that whereas unless".split())
_INNER = NOUNS | {"DT", "PRP$", "JJ", "CD", "VBN"}
_ENDS = frozenset(".;:?!")
_BEING = frozenset("was were became seemed remained said thought".split())
"""Verbs after which a subject's form may stand, or a new subject."""
_NUMERAL = re.compile(r"[IVX]{2,}|[VX]|\d+")
_NUMBERED = frozenset("type class phase part stage level war act volume book chapter group grade figure table".split())
"""Nouns after which *I* is a number."""
_FIRST = frozenset("i me my mine".split())


def find_case_slips(clause: Clause) -> Iterator[Slip]:
    """The pronouns of a sentence that stand in the wrong case.

    Args:
        clause: The sentence.

    >>> from fairhand.language.parsing import parse_sentences
    >>> said = "Him and the clerk argued."
    >>> [one.instead for one in find_case_slips(Clause(said, 0, parse_sentences([said])[0]))]
    ['He']
    """
    keys = {word.key for word in clause.words}
    if "and" in keys and keys & OBJECT_OF.keys():
        yield from _subjects_as_objects(clause)
    if keys & _LINKS and keys & SUBJECT_OF.keys():
        yield from _objects_as_subjects(clause)
    if "myself" in keys:
        yield from _reflexives(clause)
    if keys & {"who", "whom", "whomever"}:
        yield from find_relative_slips(clause)
    if clause.words[0].key == "us" and (slip := _before_noun(clause)):
        yield slip


def _subjects_as_objects(clause: Clause) -> Iterator[Slip]:
    """*Between the duke and he*, *with she and the clerk*."""
    words = clause.words
    for at, word in enumerate(words):
        if word.key not in OBJECT_OF or not _is_pronoun(clause, at):
            continue
        before, after = word_at(words, at - 1), word_at(words, at + 1)
        if before is None:
            continue
        if before.key == "and":
            head = _opens_phrase(clause, at - 1)
            opens = words[head].key if head is not None else ""
            ends = (
                after is None or after.tag in (".", "IN", ",") or word.key == "i"
            )  # he took the coast and they the hills
            takes = opens in _TAKES_OBJECT or (head is not None and ends and _is_chosen(clause, head))
            one = words[at - 2].tag in ("NN", "NNP", "PRP")  # the space between the houses, and they left
            sure = opens == "between" and (one or not _verb_follows(clause, at))
            ends = after is None or after.key not in ("and", ",")
            if sure or (takes and ends and not _finite_after(clause, at)):
                yield slip_at(clause, at, OBJECT_OF[word.key], "object")
        elif after is not None and after.key == "and":
            both = at > 1 and before.key == "both"
            opens = words[at - 2].key if both else before.key
            takes = opens in _TAKES_OBJECT and (both or opens not in _CLAUSE_AFTER)
            chosen = _is_chosen(clause, at - 1)
            if ((takes or chosen) and not _finite_after(clause, at)) or (takes and opens == "between"):
                yield slip_at(clause, at, OBJECT_OF[word.key], "object")


def _opens_phrase(clause: Clause, link: int) -> int | None:
    """The index of the preposition or verb whose object ends before *and*, where a noun phrase alone lies between."""
    at = link - 1
    while at >= 0 and (clause.words[at].tag in _INNER or clause.words[at].tag in ("PRP", "POS")):
        at -= 1
    found = 0 <= at < link - 1 and clause.words[at].tag in ("IN", "TO", "VBD")
    return at if found else None


def _is_chosen(clause: Clause, verb: int) -> bool:
    """Whether a verb in the past has its subject before it, so that what follows is its object."""
    plain = clause.words[verb].tag == "VBD" and clause.words[verb].key not in _BEING
    return plain and any(each < verb for each in clause.of_role(verb, "nsubj"))


def _is_pronoun(clause: Clause, at: int) -> bool:
    """Whether it is no abbreviation (*US*, *ME*) and no roman numeral."""
    words, text = clause.words, clause.words[at].text
    if len(text.rstrip(".")) > 1:
        return not text.isupper()
    near = words[max(0, at - 3) : at + 4]
    numbered = any(_NUMERAL.fullmatch(each.text) for each in near if each is not words[at])
    return not numbered and not (at > 0 and words[at - 1].key in _NUMBERED)


def _verb_follows(clause: Clause, at: int) -> bool:
    """Whether the next word is a finite verb, adverbs passed over."""
    after = at + 1
    while after < len(clause.words) and clause.words[after].tag.startswith("RB"):
        after += 1
    return after < len(clause.words) and clause.is_finite(after)


def _finite_after(clause: Clause, at: int) -> bool:
    """Whether a finite verb stands between here and the end of the sentence's part."""
    for number in range(at + 1, len(clause.words)):
        if clause.words[number].text in _ENDS:
            return False
        if clause.is_finite(number):
            return True
    return False


def _clause_starts(clause: Clause) -> Iterator[int]:
    """Where a clause begins with its subject: at the start of the sentence, and after a subordinating word."""
    yield 0
    for at, word in enumerate(clause.words[:-1]):
        if word.key in _OPENS_CLAUSE and word.tag in ("IN", "WRB"):
            yield at + 1


def _objects_as_subjects(clause: Clause) -> Iterator[Slip]:
    """*Him and the clerk argued*, *my brother and me went*."""
    words = clause.words
    for opening in _clause_starts(clause):
        start = opening + (words[opening].key in _PAIRED)
        first, link = words[start], word_at(words, start + 1)
        if first.key in SUBJECT_OF and not _is_pronoun(clause, start):
            continue
        if first.key in SUBJECT_OF and link is not None and link.key in _LINKS:
            end = _phrase_end(clause, start + 2)
            owned = word_at(words, start + 2)
            both_own = first.key == "her" and owned is not None and owned.tag == "PRP$"
            owner = end is not None and words[end].tag == "POS"
            verb = end is not None and words[end].tag in FINITE | {"VBN"}
            if not both_own and (verb or (first.tag == "PRP" and first.role in SUBJECTS and not owner)):
                yield slip_at(clause, start, SUBJECT_OF[first.key], "subject")
            continue
        end = _phrase_end(clause, start)
        if end is None or end + 2 >= len(words) or words[end].key not in _LINKS or words[end + 1].key not in SUBJECT_OF:
            continue
        if _verb_follows(clause, end + 1) and _is_pronoun(clause, end + 1):
            yield slip_at(clause, end + 1, SUBJECT_OF[words[end + 1].key], "subject")


def _phrase_end(clause: Clause, start: int) -> int | None:
    """The index after a plain noun phrase or pronoun."""
    words = clause.words
    at = start
    if at < len(words) and words[at].tag == "PRP":
        return at + 1
    while at < len(words) and words[at].tag in _INNER:
        at += 1
    while at > start and words[at - 1].tag == "VBN":
        at -= 1  # a past form taken for a participle
    return at if at > start and words[at - 1].tag in NOUNS and at < len(words) else None


def _reflexives(clause: Clause) -> Iterator[Slip]:
    """*The editor and myself*, where nothing of the first person stands for it to point back to."""
    words = clause.words
    for at, word in enumerate(words):
        if word.key != "myself":
            continue
        before, after = word_at(words, at - 1), word_at(words, at + 1)
        first = at
        if before is not None and before.key == "and":
            first = at - 1
            while first > 0 and words[first - 1].tag in _INNER | {"PRP"}:
                first -= 1
        elif after is None or after.key != "and":
            continue
        if any(each.key in _FIRST for each in words[:first]) or any(each.key == "i" for each in words):
            continue
        opens = first == 0 or words[first - 1].key in _OPENS_CLAUSE
        subject = opens and (_verb_follows(clause, at) or (first == at and _finite_after(clause, at)))
        yield slip_at(clause, at, "I" if subject else "me", "reflexive")


def _before_noun(clause: Clause) -> Slip | None:
    """*Us students pay*."""
    words = clause.words
    if len(words) > 3 and words[0].text == "Us" and words[1].tag == "NNS" and _verb_follows(clause, 1):
        return slip_at(clause, 0, "we", "subject")
    return None
