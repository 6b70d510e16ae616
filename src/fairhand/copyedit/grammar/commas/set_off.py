"""A comma missing beside what could be left out: a clause after a name, the second of a pair.

**Source**: "Missing comma with a nonrestrictive element" in A. A. Lunsford and K. J. Lunsford 2008 and in handbooks of
usage. A clause that tells which of several is meant takes none (*the clerk who wrote it*), so that only a name that
names one alone speaks for a comma; and a part that has a comma on one side needs it on the other.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from fairhand.copyedit.grammar.clauses import NOUNS, Clause
from fairhand.copyedit.grammar.left_out import names_time_or_way
from fairhand.model.span import Span

Kind = Literal["name", "relative", "apposition", "adverb", "adverb before"]
_ADVERBS = (
    *("however", "therefore", "moreover", "nevertheless", "consequently", "furthermore", "in fact", "of course"),
    *("for example", "for instance", "in contrast", "by contrast", "on the other hand", "as a result", "in turn"),
)
_ADVERBS_KEYS = tuple(tuple(each.split()) for each in _ADVERBS)
_MANY = frozenset("few those any all some many most every each no one several both only other".split())
_BREAKS = frozenset({":", ";", "—", "–", "--", "---", "(", ")", "[", "]", "/", "=", "∘"})


@dataclass(frozen=True, slots=True)
class Unset:
    """What could be left out and has no comma on one side."""

    span: Span
    """The words on either side of the place, in the draft."""
    comma: Span
    """Where the comma belongs; empty."""
    kind: Kind
    about: str
    """The name, or the words that open what could be left out."""


def find_unset(clause: Clause) -> Unset | None:
    """The first place of a sentence where a comma beside what could be left out is missing.

    >>> from fairhand.language.parsing import parse_sentences
    >>> text = "The river, which had flooded twice was dammed in 1911."
    >>> find_unset(Clause(text, 0, parse_sentences([text])[0])).kind
    'relative'
    """
    words = clause.words
    if len(words) < 6 or words[-1].text not in (".", "!"):
        return None
    roots = [n for n, each in enumerate(words) if each.head == n]
    if len(roots) != 1:
        return None
    found = _name(clause) or _pair(clause, roots[0]) or _adverb(clause, roots[0])
    if found is None:
        return None
    at, kind, about = found
    if clause.hides((at - 1, at)):
        return None
    end = clause.place(at - 1).end
    return Unset(clause.place(at - 1, at), Span(end, end), kind, about)


def _name(clause: Clause) -> tuple[int, Kind, str] | None:
    """A name with *who* or *which* right after it; one with *the* only where a comma closes what was not opened."""
    words = clause.words
    for at in range(1, len(words) - 3):
        if words[at].tag not in ("WP", "WDT") or words[at - 1].tag != "NNP" or words[at].key not in ("who", "which"):
            continue
        chief = words[at].head
        head = words[chief].head
        if words[chief].role != "relcl" or head >= at or words[head].tag != "NNP" or clause.finite_of(chief) is None:
            continue
        before = [n for n in clause.below(head) if n < at]
        first, last = before[0], clause.below(chief)[-1]
        if before != list(range(first, at)) or not words[at - 1].text[1:].islower():
            continue
        plain = [words[n] for n in before if words[n].tag not in ("NNP", "IN")]
        closed = [each.text for each in words[last + 1 : last + 2]] == [","] and clause.is_finite(
            min(last + 2, len(words) - 1)
        )
        person = words[at].key == "who" and words[at - 2].tag == "NNP" and plain[:1] != [words[at - 2]]
        if words[first].key in _MANY or (plain and not closed and not person):
            continue
        if any(each.tag not in (("DT", "NN", "JJ") if person else ("DT",)) for each in plain):
            continue
        if words[head].role in ("attr", "dep", "npadvmod") or words[0].key == "it":
            continue
        return at, "name", clause.text[words[first].span.start : words[at - 1].span.end]
    return None


def _pair(clause: Clause, root: int) -> tuple[int, Kind, str] | None:
    """A part between a subject and its verb that opens with a comma and closes with none."""
    words = clause.words
    verb, subject = clause.finite_of(root), clause.subject_of(root)
    if verb is None or subject is None or subject > verb or words[subject].tag not in NOUNS:
        return None
    commas = [n for n in range(verb) if words[n].text == ","]
    if len(commas) != 1 or any(each.text in _BREAKS or each.tag == "CC" for each in words[:verb]):
        return None
    comma = commas[0]
    if comma < subject or any(words[n].tag in NOUNS and n not in clause.below(subject) for n in range(comma)):
        return None
    opens = words[comma + 1]
    starts = range(comma + 1, verb)
    if opens.key in ("which", "who", "whose"):
        inner = [n for n in clause.of_role(subject, "relcl") if n > comma and clause.finite_of(n) is not None]
        whole = clause.below(inner[0]) if inner else ()
        at = verb
        while at > comma and words[at - 1].tag == "RB" and words[at - 1].head == root:
            at -= 1
        return (at, "relative", opens.text) if whole == tuple(starts)[: at - comma - 1] and whole else None
    inner = [n for n in clause.of_role(subject, "appos") if n > comma]
    if not inner:
        inner = [n for n in clause.of_role(root, "nsubj") if n > comma and opens.key in ("a", "an")]
    if opens.tag not in ("DT", "PRP$") or not inner or not _names_one(clause, subject):
        return None
    own = [n for n in clause.below(inner[0]) if words[n].role != "punct"]
    if own != list(starts) or any(clause.is_finite(n) for n in starts):
        return None
    return verb, "apposition", clause.text[opens.span.start : words[inner[0]].span.end]


def _names_one(clause: Clause, subject: int) -> bool:
    """Whether a subject may have another name beside it: a name, or a noun with its article, that is no time."""
    words = clause.words
    known = words[subject].tag == "NNP" or any(words[n].tag in ("DT", "PRP$") for n in clause.children[subject])
    return known and not names_time_or_way(words[subject].key) and words[clause.below(subject)[0] - 1].tag != "IN"


def _adverb(clause: Clause, root: int) -> tuple[int, Kind, str] | None:
    """*However* and the like between a subject and its verb, with a comma on one side only."""
    words = clause.words
    verb, subject = clause.finite_of(root), clause.subject_of(root)
    if verb is None or subject is None or subject > verb or not any(each.text == "," for each in words[subject:verb]):
        return None
    if any(each.text in _BREAKS for each in words[:verb]):
        return None
    keys = [each.key for each in words]
    for long in _ADVERBS_KEYS:
        for at in range(subject + 1, verb - len(long) + 1):
            if tuple(keys[at : at + len(long)]) != long:
                continue
            after = at + len(long)
            said = clause.text[words[at].span.start : words[after - 1].span.end]
            commas = [n for n in range(subject, verb) if words[n].text == ","]
            if commas == [at - 1] and after == verb and clause.is_finite(verb):
                return after, "adverb", said
            if commas == [after] and after + 1 == verb and len(long) == 1 and words[at - 1].tag != "CC":
                return at, "adverb before", said
    return None
