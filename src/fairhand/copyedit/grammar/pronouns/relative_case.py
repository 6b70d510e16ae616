"""*Who* and *whom*: the subject or the object of the clause that they open.

**Source**: "who, whom" in handbooks of usage. *Who* at the end of a question, and where a preposition is left at
the end, is let be: usage has given *whom* up there.
"""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.clauses import NOUNS, Clause, word_at
from fairhand.copyedit.grammar.slip import Slip, slip_at

_SAY = frozenset("say says said claim claims claimed argue argues argued allege alleges alleged".split())
"""Verbs that take a clause and no person: *who they say left*."""
_HOLD = _SAY | frozenset(
    "think thinks thought believe believes believed know knows knew suppose supposes supposed hope hopes hoped feel"
    " feels felt fear fears feared suggest suggests suggested guess guessed imagine imagines imagined insist insists"
    " insisted maintain maintains maintained declare declares declared report reports reported assume assumes assumed"
    " expect expects expected suspect suspects suspected understand understands understood realise realises realised"
    " realize realizes realized find finds found see sees saw hear hears heard show shows showed prove proves proved"
    " admit admits admitted agree agreed swear swore wish wishes wished decide decides decided conclude concludes"
    " concluded consider considers considered predict predicts predicted tell tells told want wants wanted deem deems"
    " deemed judge judges judged remember remembers remembered call calls called need needs needed".split()
)
"""Verbs after which another verb may follow that *who* belongs to."""
_LINKING = frozenset(
    "is are was were am be been become becomes became seem seems seemed remain remains remained appear"
    " appears appeared".split()
)
_OF_PERSONS = frozenset(
    "interviewed met admired hired married trusted questioned observed helped taught invited chose elected appointed"
    " loved hated followed quoted cited visited recruited surveyed criticized criticised befriended employed defended"
    " interviews meets admires hires trusts helps teaches invites loves hates follows quotes cites".split()
)
"""Verbs that have a person as their object."""
_SOME = frozenset("most many some all both none few several half each two three".split())
_HAVE = frozenset("had has have were are was is".split())
_ADVERBS = frozenset("never always often also then later still soon".split())
_DO = frozenset("do does did".split())
_NOMINATIVE = frozenset("i he she we they".split())
_SURE = frozenset("is are was were has had have did does will would can could may might must should".split())


def find_relative_slips(clause: Clause) -> Iterator[Slip]:
    """Each *whom* that is a subject, and each *who* that is plainly an object.

    Args:
        clause: The sentence.

    >>> from fairhand.language.parsing import parse_sentences
    >>> said = "The clerk whom wrote it left."
    >>> [one.instead for one in find_relative_slips(Clause(said, 0, parse_sentences([said])[0]))]
    ['who']
    """
    for at, word in enumerate(clause.words):
        if word.key in ("whom", "whomever") and _is_subject(clause, at):
            yield slip_at(clause, at, word.key.replace("m", ""), "who")
        elif word.key == "who" and _is_object(clause, at):
            yield slip_at(clause, at, "whom", "whom")


def _is_subject(clause: Clause, at: int) -> bool:
    words = clause.words
    before = word_at(words, at - 1)
    after = at + 1
    while after < len(words) and words[after].key in _ADVERBS:
        after += 1
    if after >= len(words) - 1:
        return False
    one, two = words[after], words[after + 1]
    if before is not None and before.tag in ("IN", "TO") and words[at].key == "whom":
        return False
    if clause.is_finite(after):
        asked = one.key in _DO or words[-1].text == "?" or two.key in _NOMINATIVE
        if one.tag in ("VBP", "VBZ") and clause.is_finite(after + 1):
            return False  # a noun taken for a verb: whom hunger drove
        return not asked and (one.tag != "MD" or two.tag == "VB")
    end = after
    while end < len(words) and words[end].tag in NOUNS | {"DT", "PRP$", "JJ"}:
        end += 1
    end = after + 1 if one.key in _NOMINATIVE else end
    while end < len(words) and (words[end].tag == "RB" or (end > after and words[end].key in ("later", "once"))):
        end += 1
    if end in (after, len(words)) or end + 1 >= len(words) or words[end].key not in _HOLD:
        return False
    return clause.is_finite(end + 1) and (words[end + 1].key in _SURE or words[end].key in _SAY)


def _is_object(clause: Clause, at: int) -> bool:
    words = clause.words
    before, one, two, three = (word_at(words, at + step) for step in (-1, 1, 2, 3))
    if before is None or one is None or two is None or three is None:
        return False
    governed = before.tag in ("IN", "TO") and before.key not in ("than", "as", "that", "but", "except")
    if before.key == "of" and at > 1 and words[at - 2].key in _SOME and (clause.is_finite(at + 1) or one.key in _HAVE):
        return True
    if governed and one.key in _DO and one.role == "aux" and three.tag in NOUNS | {"VB"}:
        return any(words[n].key == one.key for n in clause.of_role(words[at + 1].head, "aux")) and bool(
            [n for n in clause.of_role(words[at + 1].head, "nsubj") if n > at + 1]
        )
    if one.key not in _NOMINATIVE or not clause.is_finite(at + 2) or two.tag == "MD":
        return False
    if two.key in _HOLD or two.key in _LINKING or two.key in ("had", "has", "have", "did", "do", "does"):
        return False
    if governed:
        return True
    if before.tag not in NOUNS or clause.of_role(at + 2, "dobj", "ccomp", "xcomp", "acomp"):
        own = [words[n].key for n in clause.of_role(at + 2, "dobj")]
        if before.tag not in NOUNS or own != ["who"]:
            return False
    return clause.is_finite(at + 3) or three.text in (".", ",", ";") or (three.tag == "IN" and two.key in _OF_PERSONS)
