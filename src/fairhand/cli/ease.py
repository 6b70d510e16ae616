"""How the sentences run and how easily they read, as the terminal shows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fairhand.cli.screen import say

if TYPE_CHECKING:
    from fairhand.session.opened import OpenPaper


def show_ease(opened: OpenPaper) -> None:
    """The lengths of the sentences as a row of strokes, the places to look at, the figures with their formulas."""
    from fairhand.copyedit.rhythm import measure_ease
    from fairhand.model.span import line_at

    known = opened.look()
    ease = measure_ease(known.own_prose)
    if not ease.lengths:
        say("There is no prose of your own in the draft yet.")
        return
    say(f"{len(ease.lengths)} sentences of {sum(ease.lengths) / len(ease.lengths):.0f} words on average.")
    for length in ease.lengths:
        say(f"{'|' * min(length, 60)} {length}", 2)
    say()
    for look in ease.looks:
        around = " ".join(look.span.of(known.manuscript.text).split())
        say(f"line {line_at(known.manuscript.text, look.span.start)}, {look.kind}: {look.asks}", 0, 2)
        say(f"“{around[:100]}{'…' if len(around) > 100 else ''}”", 2, 4)
    say()
    for figure in ease.figures:
        say(f"{figure.name} {figure.value:.1f} ({figure.tells}): {figure.formula}", 0, 2)
    say("A figure counts words and syllables; it does not know what they say.")
