"""A part of a sentence set as a sentence of its own.

**Source**: "Sentence fragment" in A. A. Lunsford and K. J. Lunsford 2008 and in handbooks of usage. Questions,
commands, exclamations, and what a quotation completes are let be.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from fairhand.copyedit.grammar.clauses import NOUNS, WH, Clause, is_inverted
from fairhand.copyedit.grammar.joining.unbound import BINDING, heads_phrase, parts_go_on, unbound_verbs
from fairhand.copyedit.grammar.number import singulars_of
from fairhand.language.lexicon import find_word
from fairhand.model.span import Span

Kind = Literal["subordinate", "relative", "no verb", "no subject"]
SUBORDINATORS = frozenset(
    "because although though since while whereas if unless until when whenever after before once whereby as whether"
    " where".split()
)
_RELATIVE = frozenset("which who whose whom".split())
_BEFORE = frozenset("even just only especially particularly so perhaps and but or not simply mainly partly".split())
"""Words that may stand before the subordinating one."""
_IDIOMS = frozenset(
    "hence thus so no yes perhaps what why how now enter better worse more less note see consider let please"
    " thanks welcome good never".split()
)
"""Openings of sentences that do without a verb, or are commands."""
_PARTS = frozenset(
    "especially particularly such including unlike except namely notably for along because due despite rather"
    " instead".split()
)
"""Openings of a part that belongs to the sentence before."""
_PARTS_WITH = frozenset("such due because for along rather instead".split())
"""Those that need their second word: *such as*, *for example*."""
_SHOWING = frozenset("showing meaning suggesting proving indicating implying arguing revealing demonstrating".split())
_NAMES_AGAIN = frozenset(
    "fact idea decision claim result policy move step choice change reason problem process practice view argument"
    " question thing one kind place time way pattern point habit sign proof evidence silence fear hope belief"
    " promise warning figure number rate trend situation condition development event theory method approach system"
    " law rule right moment period year world society movement group man woman person author writer lesson mistake"
    " failure success risk danger cost price loss gain demand need effort attempt debate conflict shift tendency"
    " difference gap story image symbol".split()
)
"""Nouns that name again what the sentence before said."""
_JOINING = frozenset(
    "in on at for of by with from to after before under over without as but and or nor not than like into through"
    " against between within during despite about around".split()
)
"""Words that carry a phrase on after a comma; another one before an article may be a command."""
_NO_OPENINGS = frozenset({("as", "a"), ("which", "of")})
"""*As a consequence*; *which of these is right is unknown*."""
_NOMINATIVES = frozenset("i we they he she it its this there these you so".split())
_PHRASES = frozenset({("least", "of"), ("for", "want"), ("for", "lack"), ("for", "fear")})
"""First two words of what belongs to the sentence before."""
_BREAKS = frozenset({",", "—", "–", "--", "---"})
_FEWEST = 3
"""Words of the shortest that is told."""


@dataclass(frozen=True, slots=True)
class Fragment:
    """What is no sentence."""

    span: Span
    kind: Kind
    opens: str
    """The word that makes it a part of another sentence; else its first word."""


def find_fragment(clause: Clause, before: Clause | None = None) -> Fragment | None:
    """Whether a sentence is only a part of one.

    Args:
        clause: The sentence.
        before: The one before it in its paragraph, which it may answer, or whose words it may name again.
    """
    if before is not None and before.words[-1].text in ("?", ":"):
        return None
    words = clause.words
    body = [each for each in words if each.text[0].isalnum()]
    if len(body) < _FEWEST or words[-1].text != "." or not words[0].text[0].isupper():
        return None
    if any(each.text in ":?!;" for each in words) or clause.hides((0, len(words) - 2)):
        return None
    if words[0].text[0].isdigit() or any(each.tag in ("LS", "ADD", "FW", "SYM") for each in words):
        return None
    if is_inverted(clause) or _hides_verb(clause):
        return None
    kind = _kind(clause, before)
    return Fragment(clause.place(0, len(words) - 1), kind, words[0].text) if kind else None


def _hides_verb(clause: Clause) -> bool:
    """Whether a clause with *that* or *to* is the subject: *that the drug works is clear*, *to read it as … is to err*.

    The verb of the first may pass for a plural, that of the second for one of a clause within it, that of *logging
    altered streams* for a participle; *the older the child, the weaker the effect* needs none.
    """
    words = clause.words
    if words[0].key.endswith("ing") and (words[1].tag in ("VBD", "VBN") or words[1].key.endswith("ed")):
        return True
    if words[0].key == "the" and words[1].tag in ("JJR", "RBR"):
        return any(one.text == "," and other.key == "the" for one, other in pairwise(words))
    if words[0].key == "to":
        finite = sum(clause.is_finite(n) for n in range(len(words)))
        return finite > sum(
            each.tag in WH or each.key in BINDING for each in words
        )  # to read it as a hymn is to miss it
    if words[0].key != "that":
        return False
    first = next((n for n in range(len(words)) if clause.is_finite(n)), 0)
    stems = (stem for each in words[2:first] if each.tag == "NNS" for stem in singulars_of(each.key))
    return any((known := find_word(stem)) is not None and "v" in known.kinds for stem in stems)


def _kind(clause: Clause, before: Clause | None) -> Kind | None:
    words = clause.words
    roots = [n for n, each in enumerate(words) if each.head == n]
    idiom = words[0].key in _IDIOMS and words[1].key != "that" and words[1].key not in SUBORDINATORS
    if (
        len(roots) != 1
        or idiom
        or (words[0].key == "not" and words[1].key != "because" and words[1].tag not in ("IN", "TO"))
    ):
        return None
    root = roots[0]
    finite = [n for n in range(len(words)) if clause.is_finite(n)]
    verb = clause.finite_of(root)
    if [each.key for each in words[:3]] in (["as", "soon", "as"], ["as", "long", "as"], ["as", "far", "as"]):
        return "subordinate" if words[root].key in ("soon", "long", "far") and len(finite) == 1 else None
    if first_is_showing(clause) and len(finite) == 1:
        return "no verb"
    if before is not None and _is_bound_whole(clause):
        return "subordinate"
    if before is not None and (words[0].key, words[1].tag) == ("to", "VB") and finite and _has_no_main(clause):
        return "no verb"
    if finite and words[1].key == "of" and words[2].key in ("which", "whom") and words[0].tag not in WH:
        return None if _main_elsewhere(clause, root) else "relative"
    if finite and verb is not None:
        return _kind_of_clause(clause, root)
    if clause.hides(range(len(words))):
        return None
    if before is None or not any(each.tag.startswith("VB") or each.tag == "MD" for each in before.words):
        return None  # a title, an entry, a caption
    if _may_be_verb(clause) or len(words) < 5 or not all(_is_bound(clause, n) for n in finite):
        return None
    commas = [n for n, each in enumerate(words[:-2]) if each.text == ","]
    if any(
        words[n + 1].text.isalpha() and words[n + 2].tag in ("DT", "PRP$") and words[n + 1].key not in _JOINING
        for n in commas
    ):
        return None
    if finite and not _all_below(clause, root, finite):
        return None
    return "no verb" if _opens_as_part(clause, root, before) else None


def _is_bound_whole(clause: Clause) -> bool:
    """Whether its first word binds all of it: *because it rose, and the mill closed*; *while adding to the cost*."""
    words = clause.words
    at = 1 if words[0].key in _BEFORE and len(words) > 1 else 0
    if words[at].key not in BINDING - {"that", "than"} or words[at].role not in ("mark", "advmod"):
        return False
    if not heads_phrase(clause, at):
        return not _may_be_verb(clause) and any(each.text == "," for each in words) and parts_go_on(clause, at)
    plain = not any(each.text == "," for each in words) or words[at + 1].tag == "VBG"
    return plain and words[at + 1].text != "," and _has_no_main(clause)


def _has_no_main(clause: Clause) -> bool:
    """Whether no verb could be the main one, nor anything that the tagger may have missed."""
    words = clause.words
    if unbound_verbs(clause) or _may_be_verb(clause) or any(each.tag == "EX" for each in words[3:]):
        return False
    for n, each in enumerate(words[:-2]):
        if each.text == "," and words[n + 1].tag in ("VB", "VBP", "PRP", "EX", "DT", "PRP$", "VBD"):
            return False
    return True


def first_is_showing(clause: Clause) -> bool:
    """Whether it opens with *showing that* or the like, which hangs on the sentence before."""
    first, second = clause.words[0], clause.words[1]
    return first.tag == "VBG" and first.key in _SHOWING and second.key in ("that", "how", "why", "whether")


def _opens_as_part(clause: Clause, root: int, before: Clause | None) -> bool:
    """Whether a sentence without a verb opens as one does that belongs to the one before it."""
    words = clause.words
    first, second = words[0], words[1]
    if first.tag == "CC":
        return not any(clause.is_finite(n) for n in range(len(words)))
    if first.key == "the" and words[root].tag == "JJS":
        return True
    if first.tag == "VBG" and root == 0:
        return second.tag not in NOUNS | {"CC", ",", "HYPH"} or bool(
            clause.of_role(0, "dobj", "xcomp", "prep", "acomp")
        )
    if first.key == "to" and second.tag == "VB" and words[root].tag == "VB":
        return True
    if first.key in _PARTS:
        return first.key not in _PARTS_WITH or second.key in ("as", "to", "of", "example", "instance", "with", "than")
    if (first.key, second.key) in _PHRASES:
        return True
    if first.tag == "RB" and second.tag == "VBG" and root == 1:
        return bool(clause.of_role(1, "dobj", "prep", "xcomp"))
    if first.key == "not" or (
        first.key in ("only", "even", "merely", "just") and words[root].tag in NOUNS | {"DT", "PRP"}
    ):
        return True
    if first.key in ("one", "some", "many", "most", "both", "each", "all") and second.key == "of":
        return words[2].key in ("them", "which", "whom") and any(
            words[n].tag in ("VBN", "VBG") for n in clause.of_role(root, "acl")
        )
    if first.tag == "IN" and words[root].tag == "IN" and root == 0:
        return first.key not in ("in", "on", "at", "for", "as", "of") and not any(each.text == "(" for each in words)
    noun = words[root]
    if words[root].key == "being" and clause.subject_of(root) is not None and not clause.of_role(root, "aux"):
        return True  # the reason being that
    if first.key == "the" and root == 1 and any(words[n].key == "being" for n in clause.of_role(root, "acl")):
        return noun.key in _NAMES_AGAIN  # the reason being that
    if first.tag in ("NNP", "NNPS") and root > 0:
        return False
    if (
        first.tag in ("DT", "PRP$")
        and noun.tag in NOUNS
        and len(words) < 11
        and not any(clause.is_finite(n) for n in range(len(words)))
    ):
        return not any(each.tag in ("CD", "NNP", "VBN", "VBG", "TO") for each in words)
    if noun.key == "one" and root == 0 and clause.of_role(root, "prep"):
        return any(words[n].key == "one" for n in clause.of_role(root, "conj"))
    if first.key in ("a", "an", "another") and noun.tag == "NN" and _has_relative(clause, root):
        return True  # a scene that most critics pass over
    if noun.tag not in ("NN", "CD") and not (root == 0 and noun.key in _NAMES_AGAIN):
        return False
    if clause.of_role(root, "appos") or not (
        noun.key == "one" or any(clause.finite_of(n) is not None for n in clause.of_role(root, "relcl", "acl"))
    ):
        return False
    again = noun.key in _NAMES_AGAIN or (
        before is not None and any(noun.key == each.key and each.tag in NOUNS for each in before.words)
    )
    return again and (first.key in ("a", "an", "the", "one", "another") or root == 0)


def _has_relative(clause: Clause, noun: int) -> bool:
    """Whether a noun has its relative clause right after it, with the word that opens it."""
    words = clause.words
    opens = words[noun + 1]
    return opens.tag in WH and any(words[n].role == "relcl" and n > noun for n in clause.children[noun])


def _kind_of_clause(clause: Clause, root: int) -> Kind | None:
    """What is amiss where the chief word is a finite verb: a word before it makes it part of another sentence."""
    words = clause.words
    first = words[0]
    opens, at = (words[1].key, 1) if first.key in _BEFORE and len(words) > 1 else (first.key, 0)
    subject = clause.subject_of(root)
    if opens == "whether" and any(clause.is_finite(n) for n in range(root + 1, len(words))):
        return None  # whether it would have changed that is hard to say
    if _main_elsewhere(clause, root) or _main_after_comma(clause) or (first.key, words[1].key) in _NO_OPENINGS:
        return None
    if subject is not None and any(each.text == "," for each in words[:subject]):
        return None
    if subject is not None and any(clause.is_finite(n) for n in range(clause.below(subject)[0])):
        return None  # the verb that the opening word belongs to is another
    if opens == "where" and words[root - 1].role == "conj" and (known := find_word(words[root - 1].key)):
        return None if "v" in known.kinds else "subordinate"  # where the road and the river meet stands a mill
    comma = next((n for n, each in enumerate(words) if each.text == ","), 0)
    if opens in SUBORDINATORS and comma and not any(clause.is_finite(n) for n in range(comma)):
        return None  # although small, the sample …
    if opens in SUBORDINATORS and any(
        each <= at for each in clause.of_role(root, "mark", "advmod") if words[each].key == opens
    ):
        return "subordinate"
    mark = 1 if (first.key, words[1].key) == ("so", "that") else 0
    if words[mark].key == "that" and mark in clause.of_role(root, "mark"):
        return None if unbound_verbs(clause, mark) else "subordinate"
    if subject is None and first.tag == "CC" and first.head == root and words[root].tag in ("VBD", "VBZ"):
        return "no subject" if not clause.of_role(root, "csubj", "csubjpass", "attr") else None
    if (
        subject is not None
        and any(
            words[n].tag in ("WDT", "WP") and words[words[n].head].key == "of" for n in clause.below(subject) if n <= 4
        )
        and words[0].tag not in WH
    ):
        return "relative"
    verb = clause.finite_of(root)
    if (
        first.tag in ("WDT", "WP", "WP$")
        and first.key in _RELATIVE
        and verb is not None
        and words[verb].key not in ("do", "does", "did")
    ):
        near = first.head == root or words[first.head].head == root
        return "relative" if near and not clause.of_role(root, "csubj", "csubjpass") else None
    return None


def _main_after_comma(clause: Clause) -> bool:
    """Whether a main clause that the parser missed may follow a comma: a pronoun, a command, a doubtful verb."""
    words = clause.words
    commas = [n for n, each in enumerate(words) if each.text in _BREAKS and n + 2 < len(words)]
    if any(each.key == "so" and each.tag in ("IN", "CC") for each in words[2:]):
        return True
    if not commas:
        return False
    for n in commas:
        near = words[n + 1 : n + 4]
        if any(each.key in _NOMINATIVES for each in near) or words[n + 1].tag in ("VB", "VBP"):
            return True
        if words[n + 1].tag in ("VBD", "VBN") and words[n + 2].tag in ("DT", "PRP$"):
            return True  # proofread your draft
    return _may_be_verb(clause)


def _is_bound(clause: Clause, number: int) -> bool:
    """Whether a finite verb is in a clause that a word makes part of another."""
    words = clause.words
    head = words[number].head if words[number].role in ("aux", "auxpass") else number
    if words[head].role == "conj":
        return True
    early = clause.below(head)[:3]
    return any(
        (words[n].role == "mark" and (words[n].key, words[n + 1].key) != ("as", "well"))
        or words[n].tag in WH
        or (words[n].key == "that" and words[n].tag == "IN")
        for n in (*clause.children[head], *early)
    )


def _is_command(clause: Clause, verb: int) -> bool:
    """Whether a bare verb has nothing before it that takes one: *to*, a modal, another such verb."""
    words = clause.words
    if words[verb].role in ("aux", "auxpass") or clause.of_role(verb, "aux"):
        return False
    before = next((words[n] for n in range(verb - 1, -1, -1) if words[n].tag != "RB"), None)
    above = words[verb].head
    if words[verb].role == "conj" and words[above].tag == "VB" and above != verb:
        return _is_command(clause, above)
    return before is None or before.tag not in ("TO", "MD")


def _may_be_verb(clause: Clause) -> bool:
    """Whether a word that the tagger takes for a noun may be the sentence's verb: a noun right after a noun."""
    words = clause.words
    if any(each.tag == "VB" and _is_command(clause, n) for n, each in enumerate(words)):
        return True
    with_it = words[0].key in ("with", "without")
    for n, (one, other) in enumerate(pairwise(words)):
        after = words[n + 2].key if n + 2 < len(words) else "."
        object_of = n and words[n - 1].tag.startswith(("VB", "IN"))
        if object_of and one.role == "compound" and words[one.head] is other:
            continue  # would reduce car accidents
        if one.role == "compound" and words[one.head] is other and after in (".", ",", "of", "and", "for"):
            continue
        if with_it and other.tag == "VBN":
            continue
        noun = one.tag in ("NN", "NNS", "NNP", "NNPS", "PRP", "RB") or one.text[-1] == ")"
        if noun and other.tag in ("NN", "NNS", "VBN", "JJ") and (other.tag != "NN" or words[one.head] is not other):
            known = find_word(other.key)
            if known is None or set(known.kinds) & set("vsd") or other.tag == "VBN":
                return True
    return False


def _main_elsewhere(clause: Clause, root: int) -> bool:
    """Whether another clause of the sentence could be the main one: it has no word that makes it part of another."""
    words = clause.words
    for number, word in enumerate(words):
        if number == root or clause.finite_of(number) is None:
            continue
        if word.role in ("csubj", "csubjpass"):
            return True
        if word.role == "pcomp":
            continue  # given how much they stood to lose
        subject = clause.subject_of(number)
        if subject is None or (word.role in ("relcl", "acl") and _is_bound(clause, number)):
            continue
        children = [words[each] for each in clause.children[number]]
        marked = any(each.role == "mark" or each.tag in WH for each in children) or any(
            words[n].tag in WH for n in clause.below(subject)
        )
        if word.role == "conj" and words[word.head].role != "ROOT":
            continue
        if word.role == "conj" and word.head == root and not any(each.text == "," for each in words[:number]):
            continue
        if not marked:
            return True
    return False


def _all_below(clause: Clause, root: int, finite: list[int]) -> bool:
    """Whether each finite verb is within a clause that hangs on the noun."""
    words = clause.words
    for number in finite:
        at = number
        while at != root and words[at].role not in ("relcl", "acl", "advcl", "ccomp", "pcomp"):
            at = words[at].head
        if at == root:
            return False
    return True
