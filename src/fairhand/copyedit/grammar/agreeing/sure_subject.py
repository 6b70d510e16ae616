"""Whether nothing speaks against what the parser takes for a verb's subject.

The parser errs in about one role of ten: each of these signs was met where it had.

**Source**: from memory, on the rules of R. Quirk and others 1985 (10.34–10.50).
"""

from __future__ import annotations

from fairhand.copyedit.grammar.agreeing.plain_subject import VERBS
from fairhand.copyedit.grammar.clauses import NOUNS, SUBJECTS, WH, Clause
from fairhand.copyedit.grammar.number import number_of

_LETS = frozenset(
    "let make help see watch hear have feel suggest recommend demand insist require propose ask urge request"
    " essential important necessary vital crucial imperative ensure order lest wish".split()
)
"""Words after which a verb stands without its ending: *let him go*, *essential that he go*."""
_WISHED = tuple(
    "rather sooner better prefer demand require insist ask request order provide stipulate decree recommend propose"
    " suggest urge essential important necessary vital crucial imperative desirable".split()
)
"""Beginnings of words after which each clause with *that* may have its verb bare."""
_NEVER_BARE = frozenset("is are was has does".split())
_COMPLEMENTS = frozenset(
    "that because if while although as since whether when though whereas than so before after until once unless".split()
)
"""Words of the tag IN that a clause may follow."""
_COMPARING = frozenset({"like", "unlike"})
_EARLIER = frozenset("after before since until than as".split())
"""Those that may stand before a noun instead: *three seconds after each of them*."""
_CHIEF = frozenset({"ROOT", "ccomp", "advcl", "relcl", "conj", "parataxis", "acl"})
"""Roles of the chief word of a clause."""


def is_sure(clause: Clause, real: int, subject: int, verb: int) -> bool:
    """Whether nothing speaks against the parse."""
    words = clause.words
    head = clause_head(clause, verb)
    if (
        not words[0].text[0].isalnum()
        or len(clause.of_role(head, *SUBJECTS)) > 1
        or not _has_plain_phrase(clause, real)
    ):
        return False
    if words[0].tag == "WRB" and verb == head and words[verb - 1].role == "conj":
        return False  # where the road and the river meet stands a mill
    if verb == head and words[verb].key not in VERBS and _may_be_noun(clause, real, verb):
        return False
    if clause.of_role(head, "det", "amod", "poss", "compound", "nummod") or (
        verb == head and clause.of_role(head, "aux")
    ):
        return False
    if words[head].role not in _CHIEF or (
        words[head].role in ("relcl", "acl") and real == subject and not _is_plain(clause, real)
    ):
        return False
    if words[verb].tag in ("NN", "NNS", "VB"):  # the tagger is not sure that it is the verb
        if words[verb].role != "ROOT" or any(clause.is_finite(n) for n in range(len(words))):
            return False
        if any(each.text == "," for each in words[:verb]):
            return False
        if verb + 1 < len(words) and (words[verb + 1].tag in NOUNS or words[verb + 1].key == "of"):
            return False
    within = set(clause.below(real)) | _set_apart(clause, subject, verb)
    between = range(real + 1, verb)
    if any(words[n].text[0] in ":;([—–/" for n in between) or sum(words[n].text == "," for n in between) % 2:
        return False
    if any((clause.is_finite(n) or words[n].tag in NOUNS) and n not in within for n in between):
        return False
    if real + 1 < verb and (words[real + 1].tag in NOUNS or words[real + 1].tag == "HYPH"):
        return False
    if (
        verb - 1 > real
        and words[verb - 1].tag in NOUNS
        and words[verb - 1].role not in ("pobj", "conj", "dobj", "npadvmod")
    ):
        return False
    if any(words[n].tag in ("WDT", "WP$") for n in clause.of_role(real, "det", "poss")):
        return False  # which effect dominates depends on
    first = clause.below(real)[0]
    if 0 < first < real and words[first - 1].tag in WH and words[real].tag == "NNS" and words[real - 1].tag in NOUNS:
        return False  # what the forecaster lacks is
    if real != subject and any(words[n].tag in NOUNS | {"PRP", "DT"} for n in range(subject + 1, verb)):
        return False
    return (
        _opens_clause(clause, real)
        and not _is_joined(clause, real, verb)
        and not may_be_bare(clause, subject, verb)
        and not clause.hides(range(max(0, verb - 1), verb))
    )


def _set_apart(clause: Clause, subject: int, verb: int) -> set[int]:
    """The words between commas that compare the subject: *the mantle, like other inventions, was patented*."""
    words = clause.words
    inside = range(subject + 2, verb - 1)
    if len(inside) < 2 or words[subject + 1].text != "," or words[verb - 1].text != ",":
        return set()
    compared = words[inside[0]].key in _COMPARING and not any(clause.is_finite(n) for n in inside)
    return set(inside) if compared else set()


def _has_plain_phrase(clause: Clause, real: int) -> bool:
    """Whether the subject's own phrase is one that the parser cannot well have misread."""
    words = clause.words
    for each in clause.children[real]:
        child = words[each]
        if each > real and words[real].tag != "VBG" and child.role in ("dobj", "attr", "nsubj"):
            return False
        if each < real and (child.tag in ("VBZ", "VBP") or clause.hides((each,))):
            return False
        if 0 < each < real and child.text.endswith("ing") and words[each - 1].tag not in ("HYPH", "DT", "PRP$"):
            return False  # that archiving raw sequences is
        if each == real + 1 and child.tag == "VBG" and words[each + 1].tag in NOUNS:
            return False  # lineage tracing techniques
    return True


def _may_be_noun(clause: Clause, real: int, verb: int) -> bool:
    """Whether the verb may be the last noun of the phrase before it: *patients with normal counts*."""
    words = clause.words
    before = words[verb - 1]
    if before.key == "other" and words[verb - 2].key == "each":
        return False
    if verb - 1 == real or before.tag not in ("NN", "NNP", "CD", "JJ"):
        return False
    if words[verb].tag in ("VBZ", "NNS"):
        return before.tag != "NN" or not clause.of_role(verb - 1, "det", "poss")
    return before.tag != "NN" or (words[verb + 1].tag == "NN" and words[verb].tag != "VBP")


def _is_plain(clause: Clause, noun: int) -> bool:
    """Whether a subject is a pronoun, or has its article."""
    return clause.words[noun].tag == "PRP" or bool(clause.of_role(noun, "det", "poss"))


def _opens_clause(clause: Clause, real: int) -> bool:
    """Whether nothing before the subject could govern it instead."""
    words = clause.words
    first = clause.below(real)[0]
    if first > real or words[real].tag in ("WDT", "WP"):
        return True
    before = words[first - 1] if first else None
    if before is None or words[real].role not in SUBJECTS:
        return True
    if before.text.endswith("ing") or (before.key == "as" and not clause.of_role(real, "det", "poss")):
        return False
    if before.tag in ("VBG", "VB", "VBD", "VBN", "TO", "CD", "JJ", "POS") or before.text[0] in "([/":
        return False
    if any(each.text[0] in "([" for each in words[:real]) and not any(
        ")" in each.text or "]" in each.text for each in words[:real]
    ):
        return False
    head = words[words[real].head]
    if before.tag in ("VBZ", "VBP") and head.role != "ccomp":
        return False
    if before.tag == "VBP" and any(words[n].key in ("that", "which", "who") for n in (first - 2,)):
        return False  # neither of the reports that mention the children was published
    if before.key in _EARLIER and first > 1 and words[first - 2].tag in NOUNS | {"CD"}:
        return False
    return before.tag != "IN" or before.key in _COMPLEMENTS


def _is_joined(clause: Clause, real: int, verb: int) -> bool:
    """Whether an *and* about the subject could make it many, or take it into another's phrase."""
    words = clause.words
    start = next((n for n in range(real - 1, -1, -1) if clause.is_finite(n) or words[n].role == "mark"), -1)
    apart = {n for at in clause.of_role(real, "prep") if words[at].key == "between" for n in clause.below(at)}
    for n in range(start + 1, verb):
        if n in apart or words[n].key not in ("and", "or", "nor", "&", "plus", "together", "well"):
            continue
        if n < real:
            joins = clause.is_finite(words[n].head) or clause.finite_of(words[n].head) is not None
            if words[n].role == "cc" and joins and n + 1 == clause.below(real)[0]:
                continue  # a new clause: …, and the results shows
            return True
        head = words[words[n].head]
        bare = (
            words[n - 1].tag in NOUNS
            and n + 2 < len(words)
            and words[n + 1].tag in NOUNS
            and words[n + 2].tag not in NOUNS | {"IN"}
        )
        both = words[n].key == "and" and clause.words[real].tag != "VBG"
        if (
            both
            and head.role == "pobj"
            and bare
            and words[n].head == n - 1
            and words[n - 2].tag in ("IN", "DT", "PRP$")
        ):
            continue  # the price of bread and candles
        if (
            words[real].head == clause_head(clause, verb)
            and words[n].head == real
            and number_of(clause, real) == "many"
        ):
            continue
        return True
    return False


def may_be_bare(clause: Clause, subject: int, verb: int) -> bool:
    """Whether the verb may rightly stand without its ending: *let him go*, *essential that he go*, *if it were*."""
    words = clause.words
    before = [each.key for each in words[max(0, subject - 12) : subject]]
    if words[verb].key in _NEVER_BARE or words[verb].tag == "VBZ":
        return False
    if words[verb].key == "were":
        return bool(
            {"if", "though", "as", "wish", "whether", "lest", "unless", "suppose", "than"} & set(before)
        ) or any(each.startswith(("wish", "rather", "would", "time", "imagin")) for each in before)
    if "that" in before[-5:] and any(each.key.startswith(_WISHED) for each in words[:subject]):
        return words[verb].tag not in ("VBZ", "VBD")  # that the tenant pay, that the court hear appeals
    near = before[-8:]
    if not any(each.startswith(stem[: max(3, len(stem) - 1)]) for each in near for stem in _LETS):
        return False
    return words[verb].tag != "VBP" or "that" in before[-5:]


def clause_head(clause: Clause, verb: int) -> int:
    """The chief word of the clause that a finite verb belongs to."""
    return clause.words[verb].head if clause.words[verb].role in ("aux", "auxpass") else verb
