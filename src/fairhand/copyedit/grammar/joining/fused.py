"""Two sentences with nothing between them.

**Source**: "Fused (run-on) sentence" in A. A. Lunsford and K. J. Lunsford 2008 and in handbooks of usage. A clause that
*that*, *which* or *whom* could open is let be: English leaves them out (``left_out``).
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from fairhand.copyedit.grammar.clauses import SUBJECTS, WH, Clause
from fairhand.copyedit.grammar.left_out import is_whole, may_take_clause, names_time_or_way, needs_no_object
from fairhand.language.lexicon import find_word
from fairhand.model.span import Span

_STARTS = frozenset({"DT", "PRP", "PRP$", "EX", "NNS", "CD", "JJ", "RB", "NN"})
"""What the second sentence may begin with."""
_ALWAYS_SUBJECTS = frozenset("it he she they we i there".split())
_POINTING = frozenset("this these".split())
"""Words that open a sentence more often than a clause that *that* or *which* could open."""
_LINKS = frozenset("and but or nor yet so for than as like".split())
_ADVERBS = frozenset("however therefore moreover furthermore nevertheless nonetheless consequently".split())
_NO_ENDS = frozenset("IN TO DT CC PRP$ MD WDT WP WRB JJ".split())
"""What no sentence ends with, unless it is a complement or an object."""
_VERBS = frozenset("VB VBD VBG VBN VBP VBZ".split())
_OPENS = frozenset(
    "although though because since while whereas if unless until when whenever after before once as whether where"
    " that how what why who which whose whom had were should whilst whereby".split()
)
"""Words that make the clause that they open a part of another."""
_ALSO_PREPOSITIONS = frozenset("as since after before until once".split())
_BREAKS = frozenset({":", "—", "–", "--", "---", "?", "…", "...", "/", "=", "<", ">", "∘"})


@dataclass(frozen=True, slots=True)
class Fused:
    """The place where one sentence runs into the next."""

    span: Span
    """From the last word of the one to the first of the other, in the draft."""
    comma: Span
    """Between them; empty."""
    opens: str
    """The first word of the second."""

    @property
    def adverb(self) -> str:
        """The adverb that joins the two, such as *however*; empty where there is none."""
        return self.opens if self.opens in _ADVERBS else ""


def find_fused(clause: Clause) -> Fused | None:
    """Where a sentence is two with nothing between.

    >>> from fairhand.language.parsing import parse_sentences
    >>> text = "This was not an accident it was a policy."
    >>> find_fused(Clause(text, 0, parse_sentences([text])[0])).opens
    'it'
    """
    words = clause.words
    if len(words) < 7 or words[-1].text not in (".", "!") or words[0].key in _OPENS or words[0].tag in WH:
        return None
    roots = [n for n, each in enumerate(words) if each.head == n]
    chiefs = _chiefs(clause, range(len(words)))
    if len(roots) != 1 or len(chiefs) < 2:
        return None
    at = _before_adverb(clause)
    if at is None:
        at = next((begins for n in chiefs if (begins := _begins_second(clause, n, roots[0])) is not None), None)
    if at is None:
        return None
    end = clause.place(at - 1).end
    return Fused(clause.place(at - 1, at), Span(end, end), words[at].text)


def _chiefs(clause: Clause, within: range) -> list[int]:
    """The chief words of the clauses that have their subject in a stretch, in order."""
    words = clause.words
    return sorted({words[n].head for n in within if words[n].role in SUBJECTS or words[n].role == "csubj"})


def _before_adverb(clause: Clause) -> int | None:
    """Where *however* and the like, with a comma after it, stands between two sentences with none before it."""
    words = clause.words
    for at in range(3, len(words) - 4):
        before = words[at - 1]
        alone = words[at + 1].text == "," and words[at + 2].tag != "CC"
        if not alone or words[at].key not in _ADVERBS or not before.text[-1].isalnum():
            continue
        if before.tag in ("CC", "IN", "DT", "TO", "MD", "VBZ", "VBP") or before.key in _OPENS:
            continue
        if _has_main(clause, range(at)) and _has_main(clause, range(at + 2, len(words))):
            return at
    return None


def _has_main(clause: Clause, within: range) -> bool:
    """Whether a stretch of a sentence begins with a main clause of its own."""
    words = clause.words
    for n in _chiefs(clause, within):
        subject, verb = _subject_of(clause, n), clause.finite_of(n)
        if subject is None or verb is None or not {n, subject, verb} <= set(within):
            continue
        if any(words[m].role == "mark" or words[m].tag in WH for m in (*clause.children[n], *clause.below(subject))):
            continue
        if words[n].role in ("ROOT", "ccomp", "parataxis", "advcl", "conj"):
            return not any(words[m].key in _OPENS or words[m].text == "," for m in range(within[0], subject))
    return False


def _begins_second(clause: Clause, right: int, root: int) -> int | None:
    """Where the clause of a word begins, if it is a sentence that another runs into."""
    left = _left_of(clause, right, root)
    at = None if left is None else _begins(clause, left, right)
    if left is None or at is None:
        left, at = _before_subject(clause, right, root) or (None, None)
    if left is None or at is None or not _is_fused(clause, left, right, at):
        return None
    return at - (clause.words[at - 1].key in _ADVERBS)


def _left_of(clause: Clause, right: int, root: int) -> int | None:
    """The chief word of the sentence that one at ``right`` may follow with nothing between."""
    words = clause.words
    role, subject = words[right].role, clause.subject_of(right)
    if clause.finite_of(right) is None or subject is None:
        return None
    if right == root:
        firsts = [
            n
            for n in clause.of_role(right, "ccomp", "advcl", "parataxis")
            if n < right and clause.finite_of(n) is not None and _subject_of(clause, n) is not None
        ]
        return firsts[0] if len(firsts) == 1 else None
    if right < root or role not in ("ccomp", "advcl", "parataxis", "conj", "relcl"):
        return None
    head = words[right].head
    if head == root or words[subject].key in _ALWAYS_SUBJECTS or words[clause.below(subject)[0]].key in _POINTING:
        return root
    if role != "relcl" or head < root:
        return None
    return root if root in (words[head].head, words[words[head].head].head) else None


def _before_subject(clause: Clause, right: int, root: int) -> tuple[int, int] | None:
    """The chief word before *it*, *they*, *this* and the like with their verb, and where these stand."""
    words = clause.words
    subject = clause.subject_of(right)
    if subject is None or clause.finite_of(right) is None or subject > right:
        return None
    at = clause.below(subject)[0]
    if words[subject].key not in _ALWAYS_SUBJECTS and words[at].key not in _POINTING:
        return None
    if at < 3 or (right != root and any(n < at and words[n].role != "punct" for n in clause.below(right))):
        return None
    for n in _chiefs(clause, range(at)):
        verb = clause.finite_of(n)
        if n == right or verb is None or max(n, verb) >= at - 1:
            continue
        if words[n].role in ("ROOT", "ccomp", "parataxis", "advcl") and (n == root or words[n].head == right):
            return n, at
    return None


def _begins(clause: Clause, left: int, right: int) -> int | None:
    """Where the second sentence begins: its words up to its verb stand together."""
    words = clause.words
    own = set(clause.below(right))
    if words[left].head == right:
        own -= set(clause.below(left))
    own = {n for n in own if words[n].role != "punct"}
    first = min(own, default=right)
    apart = any(n not in own and words[n].role != "punct" for n in range(first, right))
    slowly = words[first].tag == "RB" and words[first].key.endswith("ly") and clause.is_finite(first - 1)
    return None if apart else first + slowly  # language changes slowly nobody can stop it


def _is_fused(clause: Clause, left: int, right: int, at: int) -> bool:
    subject_left, subject_right = _subject_of(clause, left), clause.subject_of(right)
    verb_left, verb_right = clause.finite_of(left), clause.finite_of(right)
    if subject_left is None or subject_right is None or verb_left is None or verb_right is None:
        return False
    if not (subject_left < at and left < at <= subject_right < verb_right):
        return False
    if verb_left >= at - 1 and not (left == at - 1 and needs_no_object(clause.words[left].key)):
        return False
    hangs = clause.words[right].role == "ccomp" and clause.words[right].head < at
    return (
        _may_end(clause, left, at)
        and _may_begin(clause, at)
        and not _is_bound(clause, left, right, at)
        and not may_take_clause(clause, clause.words[right].head if hangs else left, at)
        and is_whole(clause, right, at)
    )


def _may_begin(clause: Clause, at: int) -> bool:
    """Whether a sentence could begin at a word."""
    opens, beyond = clause.words[at], clause.words[at + 1]
    if not opens.text[0].isalnum() or opens.tag not in _STARTS or opens.key in _OPENS or clause.hides((at,)):
        return False
    if opens.tag in ("RB", "WRB") and opens.key not in _ADVERBS | {"then", "thus"}:
        return False
    if opens.key in ("each", "both", "all") and beyond.tag not in ("NN", "NNS", "DT", "JJ", "IN"):
        return False  # one animal each and their origin
    if opens.key == "then" and any(each.tag in ("JJR", "RBR") for each in clause.words[:at]):
        return False  # more of them then there were
    return not (opens.key == "the" and beyond.tag in ("JJR", "RBR"))  # the sooner it is done the easier it will be


def _may_end(clause: Clause, left: int, at: int) -> bool:
    """Whether a sentence could end before a word."""
    words = clause.words
    before, subject = words[at - 1], _subject_of(clause, left)
    if not before.text[-1].isalnum() or before.key in _LINKS or clause.hides((at - 1,)):
        return False
    if before.tag in _NO_ENDS and before.role not in ("acomp", "oprd", "pobj", "prt", "dobj", "attr"):
        return False
    whole = left == at - 1 and (bool(clause.of_role(left, "auxpass")) or needs_no_object(before.key))
    if before.tag in _VERBS | {"PRP"} and not whole and before.role not in ("pobj", "acomp", "attr"):
        return False
    if before.tag in ("JJR", "RBR") and words[at - 2].key == "the":
        return False  # the sooner they meet the easier it will be
    if words[0].tag == "IN" and subject and names_time_or_way(words[clause.below(subject)[0] - 1].key):
        return False  # on the day the war ended they left
    if before.text.islower() and find_word(before.key) is None:
        return False  # a slip of spelling may stand for any word
    opened = sum(each.text in "([" for each in words[:at]) - sum(each.text in ")]" for each in words[:at])
    return not opened and not any(each.text in _BREAKS for each in words[:at]) and _ends_whole(clause, left, at)


def _ends_whole(clause: Clause, left: int, at: int) -> bool:
    """Whether the words since the last comma are more than the opening of what follows."""
    words = clause.words
    comma = next((n for n in range(at - 1, left, -1) if words[n].text == ","), None)
    if comma is None or words[comma + 1].tag == "CC":
        return True
    opens = words[comma + 1]
    return opens.tag != "IN" and opens.key not in _OPENS and any(map(clause.is_finite, range(comma, at)))


def _is_bound(clause: Clause, left: int, right: int, at: int) -> bool:
    """Whether a word makes one of the two a part of the other."""
    words = clause.words
    if any(words[n].role == "mark" or words[n].tag in WH for one in (left, right) for n in clause.children[one]):
        return True
    chief = {left, *(n for n in clause.below(left) if words[n].role == "conj" and clause.is_finite(n))}
    joins = [n for n in range(left, at) if words[n].role == "cc" and words[n].head in chief]
    if joins and not any(map(clause.is_finite, range(joins[-1], at))):
        return True
    subjects = [n for n in (_subject_of(clause, left), clause.subject_of(right)) if n is not None]
    if any(words[n].tag in WH for each in subjects for n in clause.below(each)):
        return True
    if any(words[n].tag in WH or words[n].key in _OPENS for n in range(at, at + 3) if n < right):
        return True
    openers = [n for n in range(left + 1, at) if words[n].key in _OPENS and not _is_preposition(clause, n)]
    if openers and not any(clause.is_finite(n) for n in range(openers[-1], at)):
        return True
    for one, other in pairwise(words[:at]):
        if (one.key in ("so", "too") and other.tag in ("JJ", "RB")) or (one.key, other.key) == ("such", "a"):
            return True  # so tired that they slept, with its that left out
    return any(each.key == "as" and each.tag == "RB" for each in words[:at])


def _is_preposition(clause: Clause, number: int) -> bool:
    """Whether a word that may open a clause has a noun instead: *as a surveyor*."""
    return clause.words[number].key in _ALSO_PREPOSITIONS and bool(clause.of_role(number, "pobj"))


def _subject_of(clause: Clause, head: int) -> int | None:
    """The subject of a clause; it may be a deed: *reading aloud takes time*."""
    return next(iter(clause.of_role(head, *SUBJECTS, "csubj")), None)
