"""The writer's own list of words: ``words.txt`` on the desk, one word on a line."""

from __future__ import annotations

from fairhand.language.line_files import add_line

WHERE = "words.txt"
"""The file's name."""


def read_words(text: str) -> tuple[str, ...]:
    r"""The words of the list in their order; what follows a ``#`` is a remark.

    >>> read_words("kinbote\n\nbioswale  # the ditch\n")
    ('kinbote', 'bioswale')
    """
    lines = (line.partition("#")[0].strip() for line in text.splitlines())
    return tuple(dict.fromkeys(line for line in lines if line))


def add_word(text: str, word: str) -> str:
    r"""The list with one word more at its end, everything else as it was; unchanged where it has the word.

    >>> add_word("ebb", "flow"), add_word("ebb\n", "EBB")
    ('ebb\nflow\n', 'ebb\n')
    """
    word = " ".join(word.split())
    if not word or word.casefold() in {each.casefold() for each in read_words(text)}:
        return text
    return add_line(text, word)


def drop_word(text: str, word: str) -> str:
    r"""The list without a word, everything else as it was.

    >>> drop_word("ebb\nflow\n", "Ebb")
    'flow\n'
    """
    wanted = " ".join(word.split()).casefold()
    kept = [line for line in text.splitlines(keepends=True) if line.partition("#")[0].strip().casefold() != wanted]
    return "".join(kept)
