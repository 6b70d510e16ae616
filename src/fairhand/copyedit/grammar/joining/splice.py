"""Two sentences that only a comma holds together.

**Source**: "Comma splice" in A. A. Lunsford and K. J. Lunsford 2008 and in handbooks of usage. Short clauses in a row
of three, a contrast after *not*, and a clause that names who says or thinks so are let be: good writers have them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from fairhand.copyedit.grammar.clauses import WH, Clause, close
from fairhand.copyedit.grammar.joining.halves import Parse, commas_to_cut, cut_at, put_together
from fairhand.copyedit.grammar.joining.late_opening import opens_late
from fairhand.copyedit.grammar.joining.two_clauses import (
    ADVERBS,
    INVERTS,
    NO_ENDS,
    OPENS,
    SAYS,
    adverb_joins,
    and_another,
    chief,
    has_dash,
    is_absolute,
    is_contrast,
    is_part,
    may_be_participle,
    may_close,
    may_open,
    says_so,
    subject_of,
)
from fairhand.language.parsing import Sentence, parse_sentences
from fairhand.model.span import Span

_SERIES = 14
"""Words of a first clause with which three in a row are a series."""
_NO_PROSE = frozenset({":", "?", "…", "∘", "=", "<", ">"})


_SHORT_PART = 4
"""Words from one comma to the next of a part that is one of a series."""


@dataclass(frozen=True, slots=True)
class Splice:
    """A comma between two sentences."""

    span: Span
    """From the last word before the comma to the first after it, in the draft."""
    comma: Span
    adverb: str
    """The adverb that joins the two, such as *however*; empty where there is none."""


def find_splices(clause: Clause, parse: Parse = parse_sentences) -> Iterator[Splice]:
    """The commas of a sentence that stand where a full stop or a semicolon belongs.

    Args:
        clause: The sentence.
        parse: Parses sentences: halves of this one, where the parse of the whole leaves it open.
    """
    words = clause.words
    commas = [n for n, each in enumerate(words) if each.text == "," and 1 < n < len(words) - 3]
    found = [at for at in commas if _splices(clause, at)]
    if not found:
        found = [at for at in commas_to_cut(clause, ADVERBS) if _is_two(clause, at, parse)]
    found = [at for at in found if not (_in_series(clause, at, commas) or _is_cleft(clause, at) or _hangs(clause, at))]
    if len(commas) > 1 and len(words) < 13 and not any(words[at + 1].key in ADVERBS for at in found):
        return
    if len(found) > 1 and len(words) < 8 * (len(found) + 1):
        return  # he came, he saw, he conquered
    for at in found:
        after = words[at + 1].key
        yield Splice(clause.place(at - 1, at + 1), clause.place(at), after if after in ADVERBS else "")


def _in_series(clause: Clause, at: int, commas: Sequence[int]) -> bool:
    """Whether what follows is one of three or more short parts in a row: *names learned, rules explained, and …*."""
    words = clause.words
    after = next((each for each in commas if each > at), None)
    if after is None or after - at > _SHORT_PART:
        return False
    return any(words[each + 1].key in ("and", "or") for each in commas if each >= after)


def _is_cleft(clause: Clause, at: int) -> bool:
    """Whether the comma is within *it is here, in the streets, that …*."""
    words = clause.words
    opens = words[0].key == "it" and any(each.key in ("is", "was") for each in words[1:3])
    return opens and any(one.text == "," and other.key == "that" for one, other in pairwise(words[at:]))


def _hangs(clause: Clause, at: int) -> bool:
    """Whether what follows may be a noun with its participle: *the hall stood empty, its lands sold*."""
    words = clause.words
    if words[at + 1].tag != "PRP$":
        return False
    verb = next((n for n in range(at + 2, min(at + 6, len(words))) if words[n].tag[:2] == "VB"), None)
    if verb is None or words[verb].tag not in ("VBD", "VBN", "VBG") or not may_be_participle(words[verb].key):
        return False
    after = words[verb + 1] if verb + 1 < len(words) else words[-1]
    return after.tag in ("IN", "RP", "TO", "RB", "CC") or not after.text[0].isalnum()


def halves_wanted(parsed: Mapping[str, Sentence]) -> tuple[str, ...]:
    """The halves that ``find_splices`` may want parsed of some sentences.

    Args:
        parsed: By the sentence: its words and marks.
    """
    clauses = [Clause(text, 0, close(words)) for text, words in parsed.items() if words]
    return tuple(half for each in clauses for at in commas_to_cut(each, ADVERBS) for half in cut_at(each, at))


def _is_two(clause: Clause, at: int, parse: Parse) -> bool:
    """Whether each half stands as a sentence by itself."""
    again = put_together(clause, at, parse)
    return again is not None and _stand(again, at)


def _stand(clause: Clause, at: int) -> bool:
    """The same of a sentence whose halves were parsed each by itself."""
    words = clause.words
    if words[at + 1].key in ADVERBS and not adverb_joins(clause, at):
        return False
    left, right = (_half_chief(clause, within) for within in (range(at), range(at + 1, len(words))))
    if left is None or right is None or any(each.text in _NO_PROSE - {":"} for each in words):
        return False
    if any(each.text in (":", ";") for each in words[:right]) or words[at + 1].tag in ("VBN", "VB"):
        return False
    if _is_bound(clause, left, 0) or _is_bound(clause, right, at + 1) or _lacks_what_is_said(clause, left):
        return False
    if any(one.key == "of" and other.tag in WH for one, other in pairwise(words[at + 1 : right + 1])):
        return False  # two genes, one of which failed
    subject = subject_of(clause, right)
    if subject is not None and words[at + 1].key in ("a", "an") and clause.of_role(subject, "conj"):
        return False  # a kind of barley and two of oats
    if (at < _SERIES and and_another(clause, at)) or has_dash(clause, right):
        return False
    hidden = clause.hides((at + 1, at + 2)) or (clause.hides((at - 1,)) and words[right].key in SAYS)
    return (
        not hidden
        and not says_so(clause, at, left, right)
        and (words[at + 1].key in ADVERBS | {"what"} or may_open(clause, at, right))
        and _may_end(clause, at)
        and not _is_series(clause, right)
        and (words[at + 1].key in ADVERBS or not is_contrast(clause, at, right))
    )


def _half_chief(clause: Clause, within: range) -> int | None:
    """The chief word of a half that was parsed by itself; a plural's verb may look bare: *such studies, …, show*."""
    found = chief(clause, within)
    if found is not None:
        return found
    top = next(n for n in within if clause.words[n].head == n or clause.words[n].head not in within)
    subject = subject_of(clause, top)
    if subject is None or subject > top or clause.of_role(top, "aux"):
        return None
    return top if clause.words[top].tag == "VB" and clause.words[subject].tag in ("NNS", "PRP") else None


def _is_bound(clause: Clause, head: int, first: int) -> bool:
    """Whether a half has a word at its head that makes it part of another, with no comma before its subject."""
    words = clause.words
    subject = subject_of(clause, head)
    if subject is None or any(words[n].role == "mark" for n in clause.children[head]):
        return True
    if words[first].key == "what" and words[subject].role == "csubj":
        return False
    if words[first].key in OPENS - ADVERBS | INVERTS and not any(each.text == "," for each in words[first:subject]):
        return words[first].key != "as" or words[first + 1].key != "a"
    return words[subject].tag in WH or any(words[n].tag in WH for n in clause.of_role(head, "advmod", "dobj", "attr"))


def _lacks_what_is_said(clause: Clause, head: int) -> bool:
    """Whether a verb such as *note* or *appear* has nothing said before the comma."""
    return clause.words[head].key in SAYS and not clause.of_role(
        head, "ccomp", "dobj", "xcomp", "acomp", "oprd", "auxpass"
    )


def _may_end(clause: Clause, at: int) -> bool:
    """Whether a sentence could end before the comma, whatever opens it."""
    words = clause.words
    if sum(each.text == "(" for each in words[:at]) > sum(each.text == ")" for each in words[:at]):
        return False
    if is_absolute(clause, at):
        return False
    if words[at - 1].key in NO_ENDS | {"was", "were", "be"} or (
        words[0].key == "the" and words[1].tag in ("JJR", "RBR")
    ):
        return False
    return not any(one.key == "that" and other.text == "," for one, other in pairwise(words[:at]))


def _is_series(clause: Clause, right: int) -> bool:
    """Whether a third clause is joined by *and*: three in a row may have commas."""
    links = {clause.words[each].key for each in clause.of_role(right, "cc")}
    return links != {"but"} and any(subject_of(clause, each) is not None for each in clause.of_role(right, "conj"))


def _splices(clause: Clause, at: int) -> bool:
    words = clause.words
    if any(each.text in _NO_PROSE for each in words) or has_dash(clause, at):
        return False
    if opens_late(clause, at, whole=False) or (words[at + 2].key == "'s" and words[at + 3].tag == "CC"):
        return False  # Nan's and the clerk's
    if words[at + 1].key in ADVERBS and not adverb_joins(clause, at):
        return False
    left, right = chief(clause, range(at)), chief(clause, range(at + 1, len(words)))
    if left is None or right is None or not _are_joined(clause, left, right, at):
        return False
    return (
        not is_part(clause, left)
        and not is_part(clause, right)
        and not says_so(clause, at, left, right)
        and may_open(clause, at, right)
        and may_close(clause, at)
        and not and_another(clause, at)
        and not is_contrast(clause, at, right)
        and not any(each.text in ";()" for each in words[min(left, right) : max(left, right)])
        and not clause.hides((at - 1, at + 1))
    )


def _are_joined(clause: Clause, left: int, right: int, at: int) -> bool:
    """Whether one clause hangs on the other with nothing but the comma between, no word of either on the wrong side."""
    words = clause.words
    a, b = words[left], words[right]
    if not (
        (a.head == right and a.role in ("ccomp", "parataxis", "advcl"))
        or (b.head == left and b.role in ("ccomp", "parataxis", "conj", "advcl"))
    ):
        return False
    pair = (left, right)
    for n, word in enumerate(words):
        above = words[word.head]
        if word.role != "cc" or not (word.head in pair or (above.role == "conj" and above.head in pair)):
            continue
        joined = [each for each in clause.of_role(word.head, "conj") if each > n]
        if not joined or any(subject_of(clause, each) is not None for each in joined):
            return False  # three clauses in a row
    lefts, rights = set(clause.below(left)), set(clause.below(right))
    own, rest = (rights - lefts, lefts) if a.head == right else (rights, lefts - rights)
    opening = min((n for n in rest if words[n].role not in ("punct", "cc")), default=-1)
    if opening > 0 and words[opening - 1].text != "," and words[opening - 1].tag not in ("CC", "RB"):
        return False
    return (
        (at + 1 in own or _is_fronted(clause, at, left, min(own)))
        and all(n > at or words[n].role == "punct" for n in own)
        and (a.role != "advcl" or (0 in rest and words[0].tag not in ("IN", "WRB", "RB")))
    )


def _is_fronted(clause: Clause, at: int, left: int, own: int) -> bool:
    """Whether what stands between the comma and the second clause is its opening, hung on the first: *in the towns*."""
    words = clause.words
    tops = [n for n in clause.of_role(left, "prep", "advmod", "npadvmod") if n > at and words[n].key != "at"]
    fronted = {n for top in tops for n in clause.below(top)}
    return own > at and all(n in fronted or words[n].role == "punct" for n in range(at + 1, own))
