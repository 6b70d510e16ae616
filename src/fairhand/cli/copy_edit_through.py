"""The findings of the copy-edit gone through at the terminal, one after another, a letter for each."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from fairhand.cli.screen import say

if TYPE_CHECKING:
    from fairhand.session.correction.going_through import Numbered
    from fairhand.session.opened import OpenPaper

SPELLING = "spelling"


def go_through(paper: Path, kind: str = "") -> None:
    """Each finding that nothing was said of is shown; a letter marks it, puts in what is offered, or goes on.

    Args:
        paper: The paper's folder.
        kind: The one kind that is gone through; all, where it is empty.
    """
    from fairhand.errors import FairhandError
    from fairhand.session.correction.going_through import list_numbered
    from fairhand.session.opened import OpenPaper

    say("A letter and the return key for each; the return key alone goes on. Marks change nothing in the draft.")
    passed: set[str] = set()
    while True:
        opened = OpenPaper(paper)
        waiting = [one for one in list_numbered(opened) if one.mark is None and kind in ("", one.finding.check)]
        one = next((one for one in waiting if _name(opened, one) not in passed), None)
        if one is None:
            say("Nothing more is to be gone through." if not passed else "That was the last.")
            return
        passed.add(_name(opened, one))
        letters = show(opened, one)
        while (letter := ask()) not in (*letters, "n", "q", ""):
            say(f"There is no “{letter[:10]}” here.")
        if letter == "q":
            return
        try:
            do(opened, one, letter)
        except FairhandError as fault:
            say(f"{fault}.")


def _name(opened: OpenPaper, one: Numbered) -> str:
    """By which a finding is known when the draft was mended elsewhere meanwhile."""
    from fairhand.proof.stets import make_stet, name_stet

    return name_stet(make_stet(one.finding, opened.verdict().draft))


def show(opened: OpenPaper, one: Numbered) -> tuple[str, ...]:
    """The finding in its place, and what may be done with it; the letters for that are returned."""
    from fairhand.copyedit.in_place import quote_span
    from fairhand.model.span import line_at
    from fairhand.session.correction.going_through import OF_LANGUAGE, offer_of

    draft, span = opened.verdict().draft, one.finding.span
    say()
    where = f"line {line_at(draft, span.start)}, " if span else ""
    say(f"{one.number}. {where}{one.told}: {one.finding.check}")
    if span:
        say(quote_span(draft, span), 3, 5)
    say(one.finding.says, 3, 5)
    ways = {"l": "mend later", "b": "come back", "s": "stet"} if span or one.finding.concerns else {}
    offer = offer_of(one.finding, draft)
    ways |= {"o": offer} if offer else {}
    ways |= {"w": "add to your words"} if one.finding.check == SPELLING else {}
    ways |= {"a": "add to your lapses"} if one.finding.check in OF_LANGUAGE else {}
    say(", ".join(f"{letter} {says}" for letter, says in (ways | {"n": "go on", "q": "stop"}).items()), 3, 5)
    return tuple(ways)


def ask() -> str:
    """The letter that is typed; that to stop, where nothing more is."""
    try:
        return str(click.prompt("  ", default="", show_default=False, prompt_suffix=" ")).strip().lower()
    except click.Abort:
        return "q"


def do(opened: OpenPaper, one: Numbered, letter: str) -> None:
    """What the letter says is done."""
    from fairhand.desk.clock import now
    from fairhand.model.stet import Word
    from fairhand.session.correction.going_through import leave_for_later, mend_offered
    from fairhand.session.correction.lapses import keep_lapse
    from fairhand.session.correction.learning import lapse_of
    from fairhand.session.correction.words import learn_word

    draft, at, folder = opened.verdict().draft, now(), opened.folder
    words: dict[str, Word] = {"l": "mend", "b": "later", "s": "stet"}
    if letter in words:
        why = (
            click.prompt("  Why, if you like:", default="", show_default=False, prompt_suffix=" ")
            if letter == "s"
            else ""
        )
        leave_for_later(folder, one, draft, words[letter], at, why)
    elif letter == "o":
        mend_offered(folder, [one.finding], draft, at.date())
    elif letter == "w" and one.finding.span:
        learn_word(folder, one.finding.span.of(draft))
    elif letter == "a":
        keep_lapse(folder, lapse_of(one.finding, draft, at.date()))
