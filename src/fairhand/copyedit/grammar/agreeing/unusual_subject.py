"""Subjects that stand where a rule of thumb would not look, told by the words about the verb alone.

**Source**: handbooks of usage on agreement with pronouns, in inverted order, and after *one of those who*.
"""

from __future__ import annotations

from fairhand.copyedit.grammar.number import OPEN, Number, singulars_of
from fairhand.language.lexicon import find_word
from fairhand.language.parsing import Sentence

Told = tuple[int, Number]
"""The subject's chief word by its index, and whether it is one or many."""
_ONE = frozenset("is was has does isn't wasn't".split())
_MANY = frozenset("are were aren't weren't".split())
_COUNTS = frozenset("two three four five six seven eight nine ten twelve many several numerous various both".split())
_STANDS = frozenset("lie stand sit hang run come go grow rise live are were".split())
"""Verbs that may stand before their subject after a place."""
_PLACES = frozenset("among in on at behind beneath under beside between above below near with inside".split())


def told_by_pronoun(words: Sentence, verb: int) -> Told | None:
    """*They was*, *we has*, *she are*: a pronoun that is nothing but a subject, right before its verb."""
    before, word = words[verb - 1], words[verb]
    if before.tag != "PRP":
        return None
    if before.key in ("they", "we") and word.key in _ONE and word.tag in ("VBZ", "VBD"):
        return verb - 1, "many"
    joined = verb > 1 and words[verb - 2].key in ("and", "or", "nor", "than", "as")
    if before.key in ("he", "she") and word.key == "are" and not joined:
        return verb - 1, "one"
    return None


def told_by_order(words: Sentence, verb: int) -> Told | None:
    """*Among the papers was three letters*; *what the studies show are that sleep matters*."""
    if words[verb].key in ("is", "was") and words[0].key in _PLACES and verb < 10:
        plain = all(each.tag in ("IN", "DT", "PRP$", "JJ", "NN", "NNS") for each in words[:verb])
        noun = next((n for n in range(verb + 1, min(verb + 5, len(words))) if words[n].tag == "NNS"), None)
        if plain and noun and words[verb + 1].key in _COUNTS and _is_counted(words, noun):
            return noun, "many"
    if words[verb].key in _STANDS and words[verb].tag in ("VBP", "VB", "NN") and words[0].key in _PLACES and verb < 10:
        plain = all(each.tag in ("IN", "DT", "PRP$", "JJ", "NN", "NNS") for each in words[:verb])
        after = words[verb + 1 : verb + 4]
        noun = next((n for n in range(verb + 2, min(verb + 5, len(words))) if words[n].tag in ("NN", "NNS")), None)
        more = noun is not None and any(each.key in ("and", "or", ",") for each in words[noun + 1 :])
        if (
            plain
            and noun
            and not more
            and after[0].key in ("a", "an")
            and words[noun].tag == "NN"
            and _ends_phrase(words, verb + 1, noun)
            and words[verb - 1].tag != "TO"
        ):
            return noun, "one"
    there = words[verb - 1].tag == "EX" and words[verb].key in ("is", "was") and verb + 2 < len(words)
    if there and _is_many(words[verb + 1].key) and words[verb + 2].key in ("who", "of", "that", "which"):
        return verb + 1, "many"
    if words[0].key == "what" and words[verb].key in _MANY and words[verb + 1].key == "that":
        inner = [each for each in words[1:verb] if each.tag in ("VBZ", "VBP", "VBD")]
        if len(inner) == 1 and words[verb + 1].role == "mark" and not any(each.text == "," for each in words[:verb]):
            return 0, "one"
    return None


def _ends_phrase(words: Sentence, first: int, noun: int) -> bool:
    """Whether a noun ends a phrase that is one: not *a great many calls*, *a host of men*, *a telephone call*."""
    if noun + 1 < len(words) and words[noun + 1].tag in ("NN", "NNS", "NNP", "NNPS", "VBZ"):
        return False
    return not (
        {each.key for each in words[first : noun + 1]} & ({"many", "few", "dozen", "hundred", "thousand"} | OPEN)
    )


def told_by_neither(words: Sentence, verb: int) -> Told | None:
    """*Neither the article nor the report claim it*: two that are one each take the verb of one."""
    form = words[verb]
    if form.tag not in ("VBP", "VBD", "VB", "NN") or (form.key not in _MANY | {"have", "do"} and form.tag == "VBD"):
        return None
    at = verb - 1
    while at > 0 and words[at].tag in ("NN", "JJ", "PRP$", "DT"):
        at -= 1
    if words[at].key != "nor" or words[verb - 1].tag != "NN" or words[at + 1].tag not in ("DT", "PRP$"):
        return None
    first = at - 1
    while first > 0 and words[first].tag in ("NN", "JJ", "PRP$", "DT") and words[first].key != "neither":
        first -= 1
    if words[first].key != "neither" or words[at - 1].tag != "NN" or at - first < 3:
        return None
    known = find_word(form.key)
    if form.tag in ("VB", "NN") and (known is None or "v" not in known.kinds):
        return None
    return verb - 1, "one"


def _is_many(number: str) -> bool:
    """Whether a number, in words or figures, is more than one."""
    return number in _COUNTS or (number.isdigit() and int(number) > 1)


def told_by_those_who(words: Sentence, verb: int) -> Told | None:
    """*One of those writers who refuses*: *who* stands for the writers; not so after *the only one*."""
    pronoun = verb - 1
    while pronoun > 0 and words[pronoun].tag == "RB":
        pronoun -= 1
    if words[pronoun].key not in ("who", "that", "which") or words[pronoun].tag not in ("WP", "WDT"):
        return None
    if words[verb].tag != "VBZ":
        return None
    noun = pronoun - 1
    first = next((n for n in range(noun, max(0, noun - 5), -1) if words[n].key in ("those", "these", "the")), 0)
    if first < 2 or words[noun].tag != "NNS" or words[first - 1].key != "of" or words[first - 2].key != "one":
        return None
    only = {each.key for each in words[max(0, first - 4) : first - 2]} & {"only", "the", "not", "no"}
    return None if only or not _is_counted(words, noun) else (noun, "many")


def _is_counted(words: Sentence, noun: int) -> bool:
    return words[noun].key not in OPEN and any(find_word(each) for each in singulars_of(words[noun].key))


UNUSUAL = (told_by_pronoun, told_by_order, told_by_those_who, told_by_neither)
"""Each takes a sentence and a verb of it."""
