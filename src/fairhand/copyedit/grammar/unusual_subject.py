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
    if words[0].key == "what" and words[verb].key in _MANY and words[verb + 1].key == "that":
        inner = [each for each in words[1:verb] if each.tag in ("VBZ", "VBP", "VBD")]
        if len(inner) == 1 and words[verb + 1].role == "mark" and not any(each.text == "," for each in words[:verb]):
            return 0, "one"
    return None


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
