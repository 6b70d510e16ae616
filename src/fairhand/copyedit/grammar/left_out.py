"""Where English leaves *that*, *which* or *whom* out: *he said it rained*, *the letters he wrote*, *the day it rained*.

**Source**: common practice, from memory: verbs, adjectives and nouns that take a clause without a word to open it; a
relative clause without its word lacks what the noun before it stands for.
"""

from __future__ import annotations

from fairhand.copyedit.grammar.clauses import NOUNS, Clause
from fairhand.language.stems import stem

_TAKES_CLAUSE = frozenset(
    map(
        stem,
        (
            "say think believe argue claim write suggest seem appear know suppose guess hope feel add explain note ask"
            " reply tell observe conclude admit insist maintain understand determine remember recall imagine mean point"
            " remark agree contend assert hold warn predict complain show find see hear read learn prove ensure assume"
            " expect wish fear realise realize notice discover report state indicate reveal demonstrate decide doubt"
            " deny hint infer convince persuade inform assure promise teach remind notify bet swear pretend concede"
            " estimate propose recommend demand dream worry confirm declare announce forget figure trust gather judge"
            " reckon stress emphasize emphasise mention speculate hypothesize posit postulate verify check confess"
            " acknowledge recognise recognize accept presume suspect calculate imply care"
            " said thought knew known felt told understood meant held shown found saw seen heard learnt taught swore"
            " written wrote forgot"
        ).split(),
    )
)
"""Verbs after which a clause may follow with *that* left out; as stems, irregular forms beside them."""
_TELLS = frozenset(
    map(
        stem,
        "tell told show shown teach taught inform promise assure warn convince persuade remind notify ask bet write"
        " wrote written".split(),
    )
)
"""Verbs that take a person and a clause: *she told the men they were free*."""
_IS = frozenset("is was are were be been".split())
_ADJECTIVES = frozenset(
    "sure certain glad happy sorry afraid aware confident clear true likely unlikely possible important lucky sad proud"
    " surprised obvious good bad better best right so such unfortunate hopeful worried convinced positive pleased"
    " thankful grateful satisfied upset angry shocked amazed doubtful evident probable crazy funny".split()
)
_TIMES = frozenset(
    "day time moment minute year week hour night morning month summer winter spring autumn evening afternoon season"
    " second place".split()
)
_ONE_OF = frozenset("the every each any first last next this that same".split())
_NOUNS = frozenset(
    "way reason instant point extent degree fact idea hope chance evidence proof belief doubt sense sign feeling view"
    " impression conclusion claim assumption concern fear case thing things condition grounds manner speed everything"
    " anything nothing something all one ones same rate amount number kind sort type part half world shame".split()
)
"""Nouns with which a clause goes without a word of its own."""
_ALONE = frozenset(
    map(
        stem,
        (
            "come came go went gone die dies died fall fell fallen rise rose risen remain happen occur disappear appear"
            " vanish exist arrive begin began begun end fail stay wait sleep slept work live lie lay sit sat stand"
        ).split(),
    )
)
"""Verbs without an object, so that nothing is lacking."""


def names_time_or_way(word: str) -> bool:
    """Whether a noun takes a clause as its own: *the day it rained*.

    >>> names_time_or_way("ways"), names_time_or_way("roof")
    (True, False)
    """
    return bool({word, word.removesuffix("s")} & (_TIMES | _NOUNS))


def needs_no_object(verb: str) -> bool:
    """Whether a verb is whole without an object.

    >>> needs_no_object("failed"), needs_no_object("built")
    (True, False)
    """
    return stem(verb) in _ALONE


def may_take_clause(clause: Clause, governor: int, at: int) -> bool:
    """Whether the words before ``at`` may go on with a clause that has no word to open it.

    Args:
        clause: The sentence.
        governor: The verb that the clause would hang on.
        at: Index of the clause's first word.
    """
    words = clause.words
    before, verb = words[at - 1], words[governor].key
    if before.key.removesuffix("s") in _TIMES:
        determiners = {words[n].key for n in clause.children[at - 1] if words[n].tag in ("DT", "CD", "PRP$", "JJ")}
        if determiners & _ONE_OF or (before.tag != "NN" and not determiners):
            return True
    elif before.key in _ADJECTIVES or names_time_or_way(before.key):
        return True
    if any(n < at for n in clause.of_role(governor, "dobj")):
        return stem(verb) in _TELLS
    if verb in _IS:
        ends = clause.of_role(governor, "acomp", "attr", "prep")
        return not any(n < at and words[n].key not in _ADJECTIVES | _NOUNS | _TIMES for n in ends)
    subject = clause.subject_of(governor)
    passive = words[governor].tag == "VBN" and bool(clause.of_role(governor, "auxpass"))
    if passive and governor < at - 1 and subject is not None and words[subject].key != "it":
        return False  # the bones were found in a cave
    return stem(verb) in _TAKES_CLAUSE


def is_whole(clause: Clause, chief: int, at: int) -> bool:
    """Whether a clause lacks nothing that *which* could stand for: it has its object, and no end in *of*.

    Args:
        clause: The sentence.
        chief: The clause's chief word.
        at: Index of its first word.
    """
    words = clause.words
    own = [n for n in clause.below(chief) if words[n].role != "punct" and n >= at]
    if any(words[n].tag == "IN" and words[n].role == "prep" and not clause.children[n] for n in own):
        return False
    if words[own[-1]].tag in ("IN", "TO") and not clause.children[own[-1]]:
        return False
    if words[at - 1].tag in NOUNS and any(_lacks_object(clause, n) for n in clause.of_role(chief, "xcomp", "ccomp")):
        return False  # the sentence you want the reader to remember
    if words[chief].role != "relcl":
        if words[chief].key in _IS and own[-1] != chief:
            return True
        if words[at - 1].tag not in NOUNS or needs_no_object(words[chief].key):
            return True
        pointing = clause.subject_of(chief) == at and words[at].key == "this"
        if pointing and any(clause.of_role(n, "pobj") for n in clause.of_role(chief, "prep")):
            return True  # this leads to mistakes
    elif needs_no_object(words[chief].key) and not names_time_or_way(words[at - 1].key):
        return True
    if any(clause.of_role(n, "xcomp") for n in clause.of_role(chief, "acomp")):
        return False  # an advance we have been able to make
    if clause.of_role(chief, "dobj", "attr", "acomp", "oprd", "nsubjpass", "expl"):
        return True
    return any(clause.subject_of(n) is not None for n in clause.of_role(chief, "ccomp"))


def _lacks_object(clause: Clause, deed: int) -> bool:
    """Whether an infinitive has neither object nor complement."""
    infinitive = clause.words[deed].tag == "VB" and clause.finite_of(deed) is None
    return infinitive and not clause.of_role(deed, "dobj", "attr", "acomp", "xcomp", "ccomp", "auxpass")
