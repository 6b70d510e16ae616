"""What stands around a word, as the scorer of confused words sees it: the neighbours, and what they can be.

The word itself is not looked at, so that what its place asks for can be told whatever was written there.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

from fairhand.copyedit.around import END, START, Token, is_comparative, is_small
from fairhand.language.lexicon import find_word

REACH = 3
"""Neighbours on either side that are seen one by one."""
_FAR = 6
"""Words before the place in which a comparative is looked for."""


def class_of(word: str, known: Mapping[str, str]) -> str:
    """What a neighbour can be: a small word or a mark as it is, another as it was met, else by the list of words.

    Args:
        word: The neighbour in small letters.
        known: Words that were met when the scorer was trained, with their parts of speech.

    >>> class_of("the", {}), class_of("harvest", {"harvest": "N"}), class_of("slowly", {}), class_of("1870", {})
    ('the', 'N', 'y?ly', '9')
    """
    if is_small(word) or not word[0].isalnum():
        return word
    if word[0].isdigit():
        return "9"
    return known.get(word) or _class_by_list(word)


@lru_cache(maxsize=16384)
def _class_by_list(word: str) -> str:
    found = find_word(word)
    return f"{''.join(sorted(found.kinds)) if found else ''}?{word[-2:]}"


def features_at(tokens: Sequence[Token], at: int, known: Mapping[str, str]) -> list[str]:
    """What is seen around the token at an index.

    >>> from fairhand.copyedit.around import read_tokens
    >>> features_at(read_tokens("a fare one"), 1, {})[:3]
    ['-1:a', '-2:^', '-3:^']
    """
    around = {step: _text(tokens, at + step) for step in (*range(-REACH, 0), *range(1, REACH + 1))}
    classes = {step: class_of(word, known) for step, word in around.items()}
    seen = [f"{step}:{classes[step]}" for step in (-1, -2, -3, 1, 2, 3)]
    seen += [f"{step}={around[step]}" for step in (-1, -2, 1, 2) if around[step] != classes[step]]
    seen += [f"{one},{two}:{classes[one]} {classes[two]}" for one, two in ((-2, -1), (-1, 1), (1, 2))]
    seen += [f"-2,-1,1:{classes[-2]} {classes[-1]} {classes[1]}", f"-1,1,2:{classes[-1]} {classes[1]} {classes[2]}"]
    if _is_compared(tokens, at):
        seen.append("compared")
    return seen


def _text(tokens: Sequence[Token], at: int) -> str:
    if at < 0:
        return START
    return tokens[at].text if at < len(tokens) else END


def _is_compared(tokens: Sequence[Token], at: int) -> bool:
    """Whether a comparative stands before the place, and nothing that it is held against."""
    for step in range(1, _FAR + 1):
        word = _text(tokens, at - step)
        if word == START or (step > 1 and word in ("than", "then", ";", ":")):
            return False
        if is_comparative(word):
            return True
    return False
