"""A verb that does not agree with its subject: *the results of the survey shows*.

**Source**: "Lack of subject-verb agreement" in handbooks of usage; R. Quirk and others 1985, 10.34–10.50.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fairhand.copyedit.grammar.clauses import NOUNS, SUBJECTS, WH, Clause
from fairhand.copyedit.grammar.number import Number, number_of, singulars_of
from fairhand.language.lexicon import find_word
from fairhand.model.span import Span

_FORMS = {
    "is": "are", "are": "is", "was": "were", "were": "was", "has": "have", "have": "has", "does": "do", "do": "does",
    "isn't": "aren't", "aren't": "isn't", "wasn't": "weren't", "weren't": "wasn't",
}  # fmt: skip
_ONE = frozenset("is was has does".split())
_MANY = frozenset("are were have do".split())
_LETS = frozenset(
    "let make help see watch hear have feel suggest recommend demand insist require propose ask urge request"
    " essential important necessary vital crucial imperative ensure order lest wish".split()
)
"""Words after which a verb stands without its ending: *let him go*, *essential that he go*."""
_SAME_PAST = frozenset(
    "cost put set cut let hit hurt read cast spread shut quit bet burst split thrust shed rid beat need dare be".split()
)
"""Verbs whose past is as their present: the form tells nothing."""
_COMPLEMENTS = frozenset(
    "that because if while although as since whether when though whereas than so before after until once unless".split()
)
"""Words of the tag IN that a clause may follow."""
_COMPARING = frozenset({"like", "unlike"})
_EARLIER = frozenset("after before since until than as".split())
"""Those that may stand before a noun instead: *three seconds after each of them*."""
_CHIEF = frozenset({"ROOT", "ccomp", "advcl", "relcl", "conj", "parataxis", "acl"})
"""Roles of the chief word of a clause."""
_BETWEEN_MOST = 14
"""Words between subject and verb beyond which the parse is not trusted."""


@dataclass(frozen=True, slots=True)
class Disagreement:
    """A verb, its subject, and the verb's form that agrees."""

    span: Span
    """The verb's place in the draft."""
    verb: str
    subject: str
    """The chief word of the subject."""
    number: Number
    """What the subject is."""
    instead: str


def find_disagreements(clause: Clause) -> Iterator[Disagreement]:
    """The verbs of a sentence that do not agree with their subjects."""
    for number, word in enumerate(clause.words):
        if word.role not in SUBJECTS and not (word.role == "csubj" and word.tag == "VBG" and number == 0):
            continue
        head = word.head
        verb = clause.finite_of(head)
        if verb is None and clause.words[head].tag in ("VB", "NN", "NNS") and head > number:
            verb = head
        if verb is None or clause.words[verb].tag == "MD":
            continue
        found = _judge(clause, number, verb)
        if found is not None:
            yield found


def _judge(clause: Clause, subject: int, verb: int) -> Disagreement | None:
    words = clause.words
    if words[subject].role == "expl":
        if words[subject].key != "there":
            return None
        return _judge_there(clause, verb)
    form = _form_of(clause, verb)
    if words[subject].key == "that" and subject > 0:
        return None
    if form is None or not subject < verb or verb - subject > _BETWEEN_MOST:
        return None
    real = _antecedent(clause, subject) if words[subject].tag in ("WDT", "WP") else subject
    if real is None:
        return None
    told = "one" if words[real].tag == "VBG" and not clause.of_role(real, "cc", "conj") else number_of(clause, real)
    if told is None or told == form or not _is_sure(clause, real, subject, verb):
        return None
    instead = _other_form(words[verb].key, told)
    if instead is None:
        return None
    return Disagreement(clause.place(verb), words[verb].text, words[real].text, told, instead)


def _judge_there(clause: Clause, verb: int) -> Disagreement | None:
    """*There is many*: the noun that follows rules."""
    words = clause.words
    form = _form_of(clause, verb)
    real = next(
        (each for each in clause.of_role(clause_head(clause, verb), "attr", "nsubj", "dobj") if each > verb), None
    )
    if form is None or real is None or real - verb > 5 or clause.of_role(real, "cc", "conj"):
        return None
    told = number_of(clause, real)
    between = {each.key for each in words[verb + 1 : real]}
    if told == "one" or told is None or form == told or between & {"a", "an", "more", "less", ","}:
        return None
    instead = _other_form(words[verb].key, told)
    return Disagreement(clause.place(verb), words[verb].text, words[real].text, told, instead) if instead else None


def clause_head(clause: Clause, verb: int) -> int:
    """The chief word of the clause that a finite verb belongs to."""
    return clause.words[verb].head if clause.words[verb].role in ("aux", "auxpass") else verb


def _form_of(clause: Clause, verb: int) -> Number | None:
    """Which number the verb's form is for."""
    word = clause.words[verb]
    if word.key in _ONE:
        return "one"
    if word.key in _MANY:
        return "many"
    if word.tag == "VBD":
        return None
    if word.tag in ("VBZ", "NNS") and _other_form(word.key, "many"):
        return "one"
    if word.tag in ("VBP", "VB", "NN") and word.key not in _SAME_PAST and find_word(_third(word.key)):
        return "many"
    return None


def _third(verb: str) -> str:
    """The third person of a verb."""
    if verb.endswith(("s", "x", "z", "ch", "sh")) or verb in ("go", "do"):
        return verb + "es"
    if verb.endswith("y") and verb[-2:-1] not in "aeiou":
        return verb[:-1] + "ies"
    return verb + "s"


def _other_form(verb: str, number: Number) -> str | None:
    if verb in _FORMS:
        return _FORMS[verb]
    if number == "many":
        bases = singulars_of(verb)
        return next((base for base in bases if len(base) > 1 and _third(base) == verb and find_word(base)), None)
    return _third(verb) if find_word(_third(verb)) else None


def _antecedent(clause: Clause, pronoun: int) -> int | None:
    """The noun that *who*, *which* or *that* stands for, where only one can be meant."""
    words = clause.words
    head = words[pronoun].head
    while words[head].role in ("aux", "auxpass"):
        head = words[head].head
    if words[head].role != "relcl":
        return None
    noun = words[head].head
    before = pronoun - 1
    if words[before].text == ",":
        before -= 1
    if noun != before or clause.of_role(noun, "conj", "cc"):
        return None
    if noun and words[noun].tag == "NNS" and words[noun - 1].tag == "RB":
        return None  # it also changes who speaks
    if words[noun].role not in ("nsubj", "nsubjpass", "attr", "ROOT", "dobj") or words[pronoun - 1].text == ",":
        return None  # one of the women who has; the north wind, which means
    return None if words[noun].role == "conj" else noun


def _is_sure(clause: Clause, real: int, subject: int, verb: int) -> bool:
    """Whether nothing speaks against the parse."""
    words = clause.words
    head = clause_head(clause, verb)
    if (
        not words[0].text[0].isalnum()
        or len(clause.of_role(head, *SUBJECTS)) > 1
        or not _has_plain_phrase(clause, real)
    ):
        return False
    if verb == head and words[verb].key not in _FORMS and _may_be_noun(clause, real, verb):
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
        and not _may_be_bare(clause, subject, verb)
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
    if before.key in _EARLIER and first > 1 and words[first - 2].tag in NOUNS | {"CD"}:
        return False
    return before.tag != "IN" or before.key in _COMPLEMENTS


def _is_joined(clause: Clause, real: int, verb: int) -> bool:
    """Whether an *and* about the subject could make it many, or take it into another's phrase."""
    words = clause.words
    start = next((n for n in range(real - 1, -1, -1) if clause.is_finite(n) or words[n].role == "mark"), -1)
    for n in range(start + 1, verb):
        if words[n].key not in ("and", "or", "nor", "&", "plus", "together", "well"):
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


def _may_be_bare(clause: Clause, subject: int, verb: int) -> bool:
    """Whether the verb may rightly stand without its ending: *let him go*, *essential that he go*, *if it were*."""
    words = clause.words
    before = [each.key for each in words[max(0, subject - 12) : subject]]
    if words[verb].key == "were":
        return bool({"if", "though", "as", "wish", "whether", "lest", "unless", "suppose", "than"} & set(before))
    near = before[-8:]
    if not any(each.startswith(stem[: max(3, len(stem) - 1)]) for each in near for stem in _LETS):
        return False
    return words[verb].tag != "VBP" or "that" in before[-5:]
