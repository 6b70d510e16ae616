"""Whether a noun is the last of its phrase, so that it is the one that a number or *these* before it counts.

**Source**: common practice in finding noun phrases by their parts of speech.
"""

from __future__ import annotations

from fairhand.copyedit.grammar.clauses import NOUNS, Clause
from fairhand.language.lexicon import find_word


def ends_phrase(clause: Clause, at: int) -> bool:
    """Whether the noun is the last of its phrase: nothing that it could belong to follows."""
    words = clause.words
    if at + 1 >= len(words):
        return True
    after = words[at + 1]
    spaced = after.span.start > words[at].span.end and clause.text[after.span.end : after.span.end + 1] == " "
    if words[at].role == "compound" or (
        after.text in ("-", "–", "/", "—", "'", "’") and not (spaced and after.text in "–—")
    ):
        return False
    if after.tag in ("POS", "HYPH", "CD", "$", "NNS", "NNP", "NNPS", "SYM", "FW"):
        return False
    if after.text == "(" and not _closes_before_verb(clause, at + 1):
        return False
    if after.tag == "VBZ" and after.key not in ("is", "was", "has", "does") and not _is_each_of(clause, at):
        return False
    if after.tag == "NN" and words[at].role not in ("nsubj", "nsubjpass"):
        return False
    if words[at].role == "ROOT" and not any(each.head == at and each.tag == "CD" for each in words[:at]):
        return False
    if words[at].role == "conj" and words[words[at].head].tag.startswith("VB"):
        return False  # few rent and many work
    beyond = words[at + 2] if at + 2 < len(words) else after
    if (
        after.tag in ("VBN", "VBD", "JJ")
        and after.key not in ("was", "were", "had")
        and beyond.tag in ("NNS", "NNP", "NN")
        and words[at].role != "nsubj"
    ):
        return False  # these baseline corrected spectra
    if after.key == "to" and words[at - 1].key == "few":
        return False  # a few migrate to
    if after.tag == "CC" and beyond.tag not in ("DT", "PRP$", "CD", "PRP", "MD", "VBD", "VBP", "VBZ", "IN", ","):
        return beyond.tag == "NNS" and at + 3 < len(words) and words[at + 3].tag not in NOUNS | {"HYPH"}
    if after.text == "," and beyond.tag in ("JJ", "VBN", "NN", "NNS", "JJR") and beyond.key != "such":
        return not _may_be_list(clause, at + 1)
    if after.tag in ("DT", "PRP$") and words[at].role not in ("npadvmod", "pobj") and words[at - 1].tag != "CD":
        return False
    if after.key == "to" and at + 2 < len(words) and words[at + 2].key == words[at].key:
        return False  # face to face
    if after.tag.startswith("JJ") and after.head > at + 1:
        return False
    gap = after.span.start - words[at].span.end
    return not clause.hides((at + 1,)) and (gap > 0 or after.text in ".,;:?!)")


def _closes_before_verb(clause: Clause, opens: int) -> bool:
    """Whether brackets after the noun end the phrase: *two lengths (254 and 420) at*."""
    words = clause.words
    closes = next((n for n in range(opens, len(words)) if words[n].text == ")"), len(words))
    after = words[closes + 1] if closes + 1 < len(words) else None
    return after is not None and (after.tag in ("IN", ".", "MD", "VBD", "VBP") or after.text == ",")


def _is_each_of(clause: Clause, at: int) -> bool:
    """Whether the verb after the noun belongs to *each* or *one* before it: *each of the chapter begins*."""
    words = clause.words
    subject = clause.subject_of(at + 1)
    known = find_word(words[at + 1].key)
    return subject is not None and words[subject].key in ("each", "one") and known is not None and known.kinds == "s"


def _may_be_list(clause: Clause, comma: int) -> bool:
    """Whether a comma may stand in a list before one noun: *many state, county and city offices*."""
    words = clause.words
    for n in range(comma + 1, min(comma + 8, len(words))):
        if words[n].key in ("and", "or"):
            return True
        if words[n].tag in ("NNS", "MD", "VBD", "VBP", "VBZ", ".", "IN"):
            return False
    return True
