"""The writer's own list of words, kept on the desk."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from fairhand.copyedit.words.own_words import WHERE, add_word, drop_word, read_words
from fairhand.desk.places import desk_of
from fairhand.errors import FairhandError
from fairhand.session.editing import read_text, save_text


def list_words(folder: Path) -> tuple[str, ...]:
    """The words that are right in every paper of the desk, in the order in which they were put down."""
    return read_words(read_text(desk_of(folder), WHERE).text)


def learn_word(folder: Path, word: str) -> None:
    """The word is known from now on, in every paper of the desk.

    Raises:
        FairhandError: It is no word.
        DraftChangedOnDisk: Another program wrote to the list at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    if not any(letter.isalpha() for letter in word) or "#" in word:
        message = f"“{word[:40]}” is no word; write one with letters"
        raise FairhandError(message)
    _change(folder, add_word, word)


def unlearn_word(folder: Path, word: str) -> None:
    """The word is taken off the list again.

    Raises:
        DraftChangedOnDisk: Another program wrote to the list at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    _change(folder, drop_word, word)


def _change(folder: Path, change: Callable[[str, str], str], word: str) -> None:
    desk = desk_of(folder)
    present = read_text(desk, WHERE)
    text = change(present.text, word)
    if text != present.text:
        save_text(desk, WHERE, text, present.seen)
