"""A verb that does not agree with its subject: *the results of the survey shows*.

**Source**: "Lack of subject-verb agreement" in handbooks of usage; R. Quirk and others 1985, 10.34–10.50.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fairhand.copyedit.grammar.agreeing.plain_subject import plain_subject
from fairhand.copyedit.grammar.agreeing.sure_subject import clause_head, is_sure, may_be_bare
from fairhand.copyedit.grammar.agreeing.unusual_subject import UNUSUAL
from fairhand.copyedit.grammar.clauses import NOUNS, SUBJECTS, Clause, is_inverted
from fairhand.copyedit.grammar.number import Number, number_of, singulars_of
from fairhand.language.lexicon import find_word
from fairhand.model.span import Span

_FORMS = {
    "is": "are", "are": "is", "was": "were", "were": "was", "has": "have", "have": "has", "does": "do", "do": "does",
    "isn't": "aren't", "aren't": "isn't", "wasn't": "weren't", "weren't": "wasn't",
}  # fmt: skip
_ONE = frozenset("is was has does".split())
_MANY = frozenset("are were have do".split())
_SAME_PAST = frozenset(
    "cost put set cut let hit hurt read cast spread shut quit bet burst split thrust shed rid beat need dare be"
    " lay".split()
)
"""Verbs whose past is as their present: the form tells nothing."""
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
    told: set[Span] = set()
    if is_inverted(clause):
        return
    for plain in (*_find_plain(clause), *_find_unusual(clause)):
        if plain.span not in told:
            told.add(plain.span)
            yield plain
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
        if found is not None and found.span not in told:
            yield found


def _find_plain(clause: Clause) -> Iterator[Disagreement]:
    """The verbs whose subject is plain from the words alone, whatever the parser makes of them."""
    words = clause.words
    for verb in range(1, len(words)):
        subject = plain_subject(clause, verb)
        if subject is None or _ends_relative(clause, subject):
            continue
        form, told = _form_of(clause, verb), number_of(clause, subject, alone=True)
        if told is None or form is None or told == form or may_be_bare(clause, subject, verb):
            continue
        instead = _other_form(words[verb].key, told)
        if instead is not None and not (told == "many" and _is_sum(clause, subject, verb)):
            yield Disagreement(clause.place(verb), words[verb].text, words[subject].text, told, instead)


def _find_unusual(clause: Clause) -> Iterator[Disagreement]:
    """The verbs after a pronoun, before their subject, after *one of those who*, or between *what* and *that*."""
    words = clause.words
    for verb in range(1, len(words) - 1):
        word = words[verb]
        told = next(filter(None, (rule(words, verb) for rule in UNUSUAL)), None)
        if told is None or clause.hides((verb - 1, verb)):
            continue
        subject, number = told
        instead = _other_form(word.key, number)
        if instead is not None:
            yield Disagreement(clause.place(verb), word.text, words[subject].text, number, instead)


def _judge(clause: Clause, subject: int, verb: int) -> Disagreement | None:
    words = clause.words
    if words[subject].role == "expl":
        if words[subject].key != "there":
            return None
        return _judge_there(clause, verb)
    form = _form_of(clause, verb)
    if words[subject].key == "that" and subject > 0 and words[subject].tag != "WDT":
        return None
    if (
        words[subject].key == "that"
        and form == "many"
        and words[verb].key not in _FORMS
        and not _is_verb_only(clause, verb)
    ):
        return None
    if form is None or not subject < verb or verb - subject > _BETWEEN_MOST:
        return None
    real = _antecedent(clause, subject) if words[subject].tag in ("WDT", "WP") else subject
    if real is None:
        return None
    if _ends_relative(clause, real):
        return None
    told = "one" if words[real].tag == "VBG" and not clause.of_role(real, "cc", "conj") else number_of(clause, real)
    if told is None or told == form or not is_sure(clause, real, subject, verb):
        return None
    instead = _other_form(words[verb].key, told)
    if instead is None or (told == "many" and _is_sum(clause, real, verb)):
        return None
    return Disagreement(clause.place(verb), words[verb].text, words[real].text, told, instead)


def _is_sum(clause: Clause, noun: int, verb: int) -> bool:
    """Whether so many are one sum: *a dozen years is not enough*, *four hundred pages is a lot*."""
    words = clause.words
    counted = {each.key for each in words[max(0, noun - 3) : noun]}
    numbered = any(each.tag == "CD" for each in words[max(0, noun - 3) : noun])
    after = {each.key for each in words[verb + 1 : verb + 3]}
    return bool(
        words[verb].key in ("is", "was")
        and (numbered or counted & {"dozen", "hundred", "thousand", "million"})
        and after & {"a", "an", "not", "enough", "too", "more", "less", "plenty", "sufficient", "nothing", "much"}
    )


def _ends_relative(clause: Clause, noun: int) -> bool:
    """Whether a plural may be the verb of a clause that *that* or *which* opens: *the lesson that Vale draws is*."""
    words = clause.words
    if noun < 2 or words[noun].tag != "NNS" or words[noun - 1].tag not in ("NN", "NNP", "PRP"):
        return False
    opens = next((n for n in range(noun - 1, max(-1, noun - 6), -1) if words[n].key in ("that", "which", "whom")), None)
    known = [each for each in map(find_word, singulars_of(words[noun].key)) if each is not None]
    return opens is not None and any("v" in each.kinds for each in known)


def _is_verb_only(clause: Clause, verb: int) -> bool:
    """Whether a word is nothing but a verb."""
    known = find_word(clause.words[verb].key)
    return known is not None and known.kinds == "v"


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
    if told is None or form == told or between & {"more", "less", ",", "lot"} or words[real].key == "lot":
        return None
    if told == "one" and words[verb].key == "were":
        return None  # if there were a way
    if told == "one" and (not between & {"a", "an", "one", "another"} or any(w.key == "and" for w in words[real:])):
        return None
    if told == "many" and between & {"a", "an"}:
        return None
    instead = _other_form(words[verb].key, told)
    return Disagreement(clause.place(verb), words[verb].text, words[real].text, told, instead) if instead else None


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
    governed = words[noun].role == "pobj" and words[noun].tag == "NNS" and words[pronoun].key in ("who", "that")
    above = words[noun].head
    if governed and words[above].key != "of" and words[words[above].head].tag not in NOUNS:
        return noun  # it is hard for pupils who has no books
    if words[noun].role not in ("nsubj", "nsubjpass", "attr", "ROOT", "dobj") or words[pronoun - 1].text == ",":
        return None  # one of the women who has; the north wind, which means
    if words[noun].key in ("reason", "fact", "way", "time", "day"):
        return None
    if words[noun].role == "conj" or (words[pronoun].key == "that" and _has_two_before(clause, noun)):
        return None
    return noun


def _has_two_before(clause: Clause, noun: int) -> bool:
    """Whether *that* could stand for another noun too: *approaches to measuring heterogeneity that require*."""
    words = clause.words
    first = min(clause.below(noun)[0], noun)
    if first and words[first - 1].tag == "VBG":
        return True
    return first > 1 and words[first - 1].tag in ("IN", "TO") and words[first - 2].tag in NOUNS
