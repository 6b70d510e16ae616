"""What two clauses beside a comma are to each other: whether one is part of the other, or names who says so.

**Source**: handbooks of usage on the comma splice; each sign was met in good writers' prose.
"""

from __future__ import annotations

from itertools import pairwise

from fairhand.copyedit.grammar.clauses import FINITE, SUBJECTS, WH, Clause
from fairhand.copyedit.grammar.verbs.principal_parts import participle_of_past
from fairhand.language.lexicon import find_word

SAYS = frozenset(
    "say says said think thinks thought believe believes believed argue argues argued claim claims claimed write"
    " writes wrote suggest suggests suggested seem seems seemed appear appears appeared know knows knew suppose"
    " guess hope feel feels felt add adds added explain explains explained note notes noted ask asks asked reply"
    " replied tell told observe observes observed conclude concludes concluded admit admits insist insists insisted"
    " maintain maintains understand understands understood determine determined remember recall imagine mean means"
    " meant point remark remarks remarked agree agrees agreed contend contends contended see assert asserts asserted"
    " hold holds held warn warns warned predict predicts predicted complain".split()
)
OPENS = frozenset(
    "because although though since while whereas if unless until when whenever after before as once that whether"
    " lest whilst whist like such neither not where wherever whatever whoever whichever however how why what which"
    " who whom whose than so provided given".split()
)
"""Words that make the clause that they open a part of another."""
LINKS = frozenset("and but or nor yet so for plus".split())
ADVERBS = frozenset(
    "however therefore moreover nevertheless nonetheless consequently thus furthermore then instead meanwhile"
    " otherwise hence accordingly similarly likewise still also".split()
)
"""Adverbs that join two sentences, and that no comma may precede alone."""
INVERTS = frozenset("had were should now based given".split())
"""Words that open no main clause."""
AUXILIARIES = frozenset("is are was were do does did has have had can could will would should may might must".split())
NO_ENDS = frozenset("which wherein whereby whom that and but or include includes including are is say".split())
"""Words that no sentence ends with, or hardly any."""
NO_OPENINGS = frozenset("i.e. e.g. from namely".split())
DASHES = frozenset({"—", "–", "--"})
_ASIDE = 4
"""Words before the verb of a clause between commas that only names who says so, at most."""
HELD_BY = frozenset("although though if when whenever while because since unless until after before once".split())


def adverb_joins(clause: Clause, at: int) -> bool:
    """Whether an adverb after the comma begins what follows; not: *it accuses, however, and …*, *however sound*."""
    words = clause.words
    adverb, after = words[at + 1], words[at + 2]
    if after.text == ",":
        return words[at + 3].tag != "CC"
    set_off = words[at + 3].text == "," and after.tag not in ("PRP", "EX", "DT")
    return adverb.key != "however" or not (after.tag in ("JJ", "RB", "VBN", "CC") or set_off)


def says_so(clause: Clause, at: int, left: int, right: int) -> bool:
    """Whether one of the two only names who says or thinks so: *critics argue*, *the reasoning goes*."""
    a, b = clause.words[left], clause.words[right]
    if _is_aside(clause, at + 1, next((n for n in range(at + 1, len(clause.words)) if clause.words[n].text == ","), 0)):
        return True
    if _is_aside(clause, next((n + 1 for n in range(at - 1, 0, -1) if clause.words[n].text == ","), at), at):
        return True
    if a.key in SAYS and (left == at - 1 or (b.head == left and b.role == "ccomp")):
        return True
    after = clause.words[right + 1].text if right + 1 < len(clause.words) else "."
    return b.key in SAYS and (after in (",", ".") or b.role == "parataxis")


def _is_aside(clause: Clause, first: int, end: int) -> bool:
    """Whether what stands between two commas is a subject with its verb alone: *the book implies*, *she tells us*."""
    words = clause.words
    if not 1 < end - first <= _ASIDE + 2 or words[first].key in OPENS - {"as"}:
        return False
    verb = end - 2 if words[end - 1].tag == "PRP" and end - first > 2 else end - 1
    if words[end - 1].key in ("readers", "reader", "audience") and end - first > 3:
        verb = end - 3
    return verb > first and verb - first <= _ASIDE and words[verb].tag in FINITE and words[verb].key not in AUXILIARIES


def may_open(clause: Clause, at: int, right: int) -> bool:
    """Whether a sentence could begin after the comma."""
    words = clause.words
    opens, beyond, subject = words[at + 1], words[at + 2], subject_of(clause, right)
    if opens.tag == "VBG" and (opens.role != "csubj" or subject != at + 1 or beyond.key == "that"):
        return False
    if opens.key in LINKS | NO_OPENINGS or opens.tag in ("VBN", "VB", "MD", "TO", "CC", "RP"):
        return False
    if opens.key in OPENS - ADVERBS - {"that"} and beyond.key != "a":
        return False
    if opens.key == "that" and (opens.tag != "DT" or words[at + 3].text == ","):
        return False
    if (opens.key == "the" and beyond.tag in ("JJR", "RBR")) or subject is None:
        return False
    if not opens.text[0].isalnum() or "." in opens.text or (words[right].key == "am" and words[subject].key != "i"):
        return False
    if opens.text.islower() and opens.text.isalpha() and find_word(opens.key) is None:
        return False  # a slip of spelling may stand for any word
    if sum(each.text == "," for each in words[subject:right]) % 2 or any(
        words[n].key == "but" for n in clause.below(subject)
    ):
        return False
    before = range(at + 1, subject)
    if any(words[n].key in OPENS - ADVERBS - {"as", "that", "than", "once"} or words[n].key == "but" for n in before):
        return False
    if words[subject].text.isdigit():
        return False  # 34 were stored on ice, 45 in a box
    if words[right].tag != "VBD" or not words[right].key.endswith("ed"):
        return True
    # no sentence, but a participle: the pills often used to …; both centered on …
    if words[subject].key in ("both", "each", "all", "some", "most"):
        return right != subject + 1
    passive = words[right + 1].key in ("by", "as") or (
        words[right + 1].tag in ("IN", "TO") and words[right - 1].tag == "RB"
    )
    return not (passive and words[subject].tag in ("NN", "NNS"))


_LONGEST_ABSOLUTE = 12
"""Words before the comma beyond which participles alone are hardly met."""


def may_close(clause: Clause, at: int) -> bool:
    """Whether a sentence could end before the comma."""
    words = clause.words
    first = words[0].key
    if sum(each.text == "(" for each in words[:at]) > sum(each.text == ")" for each in words[:at]):
        return False
    if words[at - 1].key in NO_ENDS or (first == "the" and words[1].tag in ("JJR", "RBR")):
        return False
    if any(one.key == "that" and other.text == "," for one, other in pairwise(words[:at])):
        return False
    if first in OPENS | INVERTS or words[0].tag in ("VBN", "VBG", "TO") or is_absolute(clause, at):
        return False
    for n in range(1, at):
        before = words[n - 2].key if words[n - 1].key == "even" and n > 1 else words[n - 1].key
        if words[n].key in HELD_BY and before in ("that", "is", "was", "are", "were"):
            return False  # it seems that although they fell, they rose again
    open_mark = max((n for n in range(at) if words[n].role == "mark"), default=None)
    return open_mark is None or any(clause.is_finite(n) for n in range(open_mark, at))


def is_absolute(clause: Clause, at: int) -> bool:
    """Whether what stands before a comma may have participles alone: *the votes counted and the hall emptied*."""
    words = clause.words
    if at > _LONGEST_ABSOLUTE or any(clause.is_finite(n) and words[n].tag != "VBD" for n in range(at)):
        return False
    if words[0].tag not in ("DT", "PRP$", "NN", "NNS", "NNP"):
        return False
    verbs = [n for n in range(at) if words[n].tag in ("VBD", "VBN", "VBG")]
    if not verbs or verbs[-1] < at - 2:
        return False
    return all(words[n].tag != "VBD" or may_be_participle(words[n].key) for n in verbs) and all(
        words[n + 1].key in (",", "and", "away", "off", "out", "up", "over", "down") for n in verbs
    )


def may_be_participle(verb: str) -> bool:
    """Whether a verb's form may be its participle, whatever the tagger says.

    >>> may_be_participle("sold"), may_be_participle("went")
    (True, False)
    """
    return verb.endswith("ed") or participle_of_past(verb) is None


def is_contrast(clause: Clause, at: int, right: int) -> bool:
    """*Coffee was dear, tea was not*; *it does not only cool the street, it holds the rain*."""
    words = clause.words
    keys = [each.key for each in words[:at]]
    if any(one in ("not", "n't") and other in ("only", "just", "merely", "simply") for one, other in pairwise(keys)):
        return True
    rest = [each.key for each in words[right + 1 :]]
    ends = rest[0] if rest else "."
    if ends in ("not", "n't", "n’t", "too") and len(rest) > 1:
        ends = rest[1]
    return words[right].key in AUXILIARIES and ends in (".", ",")


def and_another(clause: Clause, at: int) -> bool:
    """Whether a further clause is joined by *and* after the comma: three in a row are a series."""
    words = clause.words
    for n in range(at + 1, len(words) - 2):
        if words[n].key not in ("and", "but", "or"):
            continue
        verb = next((v for v in range(n + 1, len(words)) if clause.is_finite(v)), None)
        if verb is None or any(words[m].text in ",;" for m in range(n + 1, verb)):
            continue
        named = any(words[m].role in SUBJECTS for m in range(n + 1, verb)) or words[n + 1].tag in ("DT", "PRP$")
        if named and any(clause.is_finite(m) for m in range(at + 1, n)):
            return True
    return False


def chief(clause: Clause, within: range) -> int | None:
    """The chief word of the clause on one side of a comma: with a subject and a finite verb of its own there."""
    for number in within:
        word = clause.words[number]
        subject, verb = subject_of(clause, number), clause.finite_of(number)
        if subject is None or verb is None or subject not in within or verb not in within or verb < subject:
            continue
        if word.role == "ROOT" or word.head not in within:
            return number
    return None


def subject_of(clause: Clause, head: int) -> int | None:
    """The subject of a clause; it may be a deed: *keeping them alive is another matter*."""
    return next(iter(clause.of_role(head, *SUBJECTS, "csubj")), None)


def is_part(clause: Clause, head: int) -> bool:
    """Whether a clause has a word that makes it part of another."""
    words = clause.words
    subject = subject_of(clause, head)
    for each in clause.children[head]:
        word = words[each]
        if word.role == "mark" or word.tag in WH:
            return True
        if (
            word.role in ("advmod", "prep")
            and each < (head if subject is None else subject)
            and word.key in OPENS - ADVERBS
            and not (word.key == "as" and words[each + 1].key == "a")
        ):
            return True
    if subject is None:
        return True
    clauses = [n for n in clause.below(subject) if words[n].role in ("relcl", "acl", "pcomp")]
    apart = {n for each in clauses for n in clause.below(each)}
    if any(words[n].tag in WH for n in clause.below(subject) if n not in apart):
        return True
    first = next(n for n in clause.below(head) if words[n].role != "punct")
    if words[first].key == "as" and first + 1 < len(words) and words[first + 1].key == "a":
        return False
    return words[first].key in OPENS - ADVERBS and first <= subject


def has_dash(clause: Clause, before: int) -> bool:
    """Whether a dash stands before a word."""
    return any(
        each.text in DASHES or (each.text == "-" and clause.text[each.span.start - 1 : each.span.start] == " ")
        for each in clause.words[:before]
    )
