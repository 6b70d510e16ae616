"""A semicolon with a mere part of a sentence beside it, or a colon that parts a verb or a preposition from its list.

**Source**: the chapters on the semicolon and the colon in A. A. Lunsford's handbooks, from memory, and handbooks of
usage. A semicolon stands between two sentences, or between the items of a series that has commas; a colon follows what
could be a sentence. Where a sentence has more than one semicolon, it is a series and let be.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from fairhand.copyedit.grammar.clauses import NOUNS, WH, Clause
from fairhand.model.span import Span

Kind = Literal["opening", "part", "series", "colon"]
_IN_SERIES = frozenset({"NN", "NNS", "NNP", "JJ", "DT", "CC", ",", "PRP$", "VBN", "CD"})
_OPENS = frozenset("although though because since while whereas if unless until when whenever after before as".split())
_PARTS = frozenset("such including especially particularly namely whereas although though because unless".split())
_RELATIVE = frozenset("which who whom whose".split())
_INCLUDES = frozenset(
    "include includes included including contain contains contained comprise comprises comprised are were".split()
)
_PREPOSITIONS = frozenset("of to in on with from for by as between into at about on like".split())


@dataclass(frozen=True, slots=True)
class Misplaced:
    """A semicolon or a colon where it does not belong."""

    span: Span
    """From the word before it to the one after it, in the draft."""
    comma: Span
    """The mark."""
    kind: Kind
    instead: str
    """The mark that belongs there; empty where none does."""
    by: str
    """The word that makes the part beside a semicolon a part; the one before a colon."""


def find_misplaced(clause: Clause) -> Misplaced | None:
    """The semicolon or colon of a sentence that does not belong where it stands.

    >>> from fairhand.language.parsing import parse_sentences
    >>> text = "The kit includes: a lamp, a rope and two blankets."
    >>> find_misplaced(Clause(text, 0, parse_sentences([text])[0])).by
    'includes'
    """
    words = clause.words
    roots = [n for n, each in enumerate(words) if each.head == n]
    if len(roots) != 1 or words[-1].text not in (".", "!"):
        return None
    marks = [n for n, each in enumerate(words) if each.text in (";", ":")]
    if len(marks) != 1 or not 1 < marks[0] < len(words) - 2 or clause.hides((marks[0] - 1, marks[0] + 1)):
        return None
    at = marks[0]
    if any(each.text in "()[]/" or each.text in ("—", "–", "--") for each in words):
        return None
    found = _colon(clause, at) if words[at].text == ":" else _semicolon(clause, at, roots[0])
    if found is None:
        return None
    kind, instead, by = found
    return Misplaced(clause.place(at - 1, at + 1), clause.place(at), kind, instead, by)


def _semicolon(clause: Clause, at: int, root: int) -> tuple[Kind, str, str] | None:
    words = clause.words
    left, right = range(at), range(at + 1, len(words) - 1)
    first = 1 if words[0].key in ("even", "just", "only") else 0
    if root in right and words[first].key in _OPENS and not any(words[n].text == "," for n in left):
        head = words[first].head
        whole = clause.subject_of(head) is not None and clause.finite_of(head) is not None
        whole = whole and sum(map(clause.is_finite, left)) == 1
        if head in left and words[head].role == "advcl" and words[head].head == root and whole:
            return ("opening", ",", words[0].text) if clause.subject_of(root) in right else None
    if root in left and clause.finite_of(root) is not None and not _has_main(clause, right):
        opens, beyond = words[at + 1], words[at + 2]
        if opens.key in _RELATIVE and opens.tag in WH:
            return "part", ",", opens.text
        if opens.key in _PARTS and (opens.key != "such" or beyond.key == "as"):
            return "part", ",", clause.text[opens.span.start : (beyond if opens.key == "such" else opens).span.end]
        if (opens.key, beyond.key) in (("for", "example"), ("for", "instance")) and _is_bare(clause, right):
            return "part", ",", f"{opens.text} {beyond.text}"
        if _is_series(clause, right):
            return "series", ":", opens.text
    return None


def _is_series(clause: Clause, within: range) -> bool:
    """Whether a stretch is a series of nouns and nothing else: *glass, paper and salt*."""
    words = clause.words
    if any(words[n].tag not in _IN_SERIES for n in within) or words[within[0]].tag not in ("NN", "NNS", "JJ", "DT"):
        return False
    last = [n for n in within if words[n].key in ("and", "or")]
    commas = [n for n in within if words[n].text == ","]
    return len(last) == 1 and bool(commas) and commas[-1] < last[0] and within[0] + 4 >= commas[0]


def _has_main(clause: Clause, within: range) -> bool:
    """Whether a stretch has a clause that no word makes a part of another."""
    words = clause.words
    for n in within:
        subject = clause.subject_of(n)
        if subject is None or clause.finite_of(n) is None or subject not in within:
            continue
        bound = any(words[m].role == "mark" or words[m].tag in WH for m in clause.children[n])
        bound = bound or any(words[m].tag in WH for m in clause.below(subject))
        hangs = words[n].role in ("ccomp", "conj") and words[n].head in within
        if not bound and not hangs and words[n].role not in ("relcl", "acl"):
            return True
    return False


def _is_bare(clause: Clause, within: range) -> bool:
    return not any(clause.is_finite(n) or clause.words[n].text == "," for n in within)


def _colon(clause: Clause, at: int) -> tuple[Kind, str, str] | None:
    """A colon after a verb or a preposition, with its list after it in the same sentence."""
    words = clause.words
    before, after = words[at - 1], words[at + 1]
    rest = range(at + 1, len(words) - 1)
    listed = any(words[n].text == "," or words[n].tag == "CC" for n in rest)
    if any(words[n].tag in WH for n in range(at)):
        return None  # what they had asked for: bread, oil and salt
    if not listed or not after.text.islower() or any(clause.is_finite(n) for n in rest):
        return None
    if before.key in _INCLUDES and (before.tag in ("VBP", "VBZ", "VBD", "VBG", "VB", "IN")):
        return "colon", "", before.text
    if before.key in _PREPOSITIONS and before.tag in ("IN", "TO") and before.role != "prt":
        objects = clause.of_role(at - 1, "pobj")
        if before.key == "as" and words[at - 2].key not in ("such", "as"):
            return None
        if all(n > at for n in objects) and after.tag in NOUNS | {"DT", "JJ", "VBG"}:
            return "colon", "", before.text
    return None
