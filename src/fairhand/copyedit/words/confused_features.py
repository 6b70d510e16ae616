"""What stands around a word, as the scorer of confused words sees it: the neighbours, and what they can be.

The word itself is not looked at, so that what its place asks for can be told whatever was written there.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from fairhand.copyedit.around import END, START, Token, is_comparative, is_small
from fairhand.language.lexicon import find_word

REACH = 3
"""Neighbours on either side that are seen one by one."""
_FAR = 6
"""Words before the place in which a comparative is looked for."""


@dataclass(frozen=True, slots=True)
class Seen:
    """A sentence as the scorer sees it."""

    words: tuple[str, ...]
    """Its words and marks in small letters."""
    classes: tuple[str, ...]
    """What each of them can be."""

    def word(self, at: int) -> str:
        """The word at an index; before the first and after the last there is a mark of its own."""
        if at < 0:
            return START
        return self.words[at] if at < len(self.words) else END

    def class_at(self, at: int) -> str:
        """What the word at an index can be, in the same manner."""
        if at < 0:
            return START
        return self.classes[at] if at < len(self.classes) else END


def see(tokens: Sequence[Token], known: Mapping[str, str]) -> Seen:
    """A sentence as it is seen.

    Args:
        tokens: Its words and marks.
        known: Words that were met when the scorer was trained, with their parts of speech.

    >>> from fairhand.copyedit.around import read_tokens
    >>> see(read_tokens("The harvest failed."), {"harvest": "NN"}).classes
    ('the', 'NN', 'd?ed', '.')
    """
    words = tuple(token.text for token in tokens)
    return Seen(words, tuple(class_of(word, known) for word in words))


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


def features_at(seen: Seen, at: int) -> list[str]:
    """What is seen around the word at an index.

    >>> from fairhand.copyedit.around import read_tokens
    >>> features_at(see(read_tokens("a fare one"), {}), 1)[:3]
    ['-1:a', '-2:^', '-3:^']
    """
    around = {step: seen.word(at + step) for step in (-2, -1, 1, 2)}
    classes = {step: seen.class_at(at + step) for step in (-3, -2, -1, 1, 2, 3)}
    out = [f"{step}:{classes[step]}" for step in (-1, -2, -3, 1, 2, 3)]
    out += [f"{step}={around[step]}" for step in (-1, -2, 1, 2) if around[step] != classes[step]]
    out += [f"{one},{two}:{classes[one]} {classes[two]}" for one, two in ((-2, -1), (-1, 1), (1, 2))]
    out += [f"-2,-1,1:{classes[-2]} {classes[-1]} {classes[1]}", f"-1,1,2:{classes[-1]} {classes[1]} {classes[2]}"]
    if _is_compared(seen, at):
        out.append("compared")
    return out


def _is_compared(seen: Seen, at: int) -> bool:
    """Whether a comparative stands before the place, and nothing that it is held against."""
    for step in range(1, _FAR + 1):
        word = seen.word(at - step)
        if word == START or (step > 1 and word in ("than", "then", ";", ":")):
            return False
        if is_comparative(word):
            return True
    return False
