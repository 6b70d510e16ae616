"""How the sentences run and how easily they read, as the terminal shows it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fairhand.cli.screen import say, say_rows

if TYPE_CHECKING:
    from fairhand.session.opened import OpenPaper

BARS = "▁▂▃▄▅▆▇█"
TALLEST = 40
"""Words from which on a bar is at its tallest."""


def show_ease(opened: OpenPaper) -> None:
    """The lengths of the sentences drawn by paragraph, the places to look at, the figures with their formulas."""
    from fairhand.copyedit.rhythm import measure_ease, quote_look
    from fairhand.language.counts import count_of
    from fairhand.model.span import line_at

    known = opened.look()
    ease, text = measure_ease(known.own_prose), known.manuscript.text
    if not ease.lengths:
        say("There is no prose of your own in the draft yet.")
        return
    average = sum(ease.lengths) / len(ease.lengths)
    say(f"{count_of(len(ease.lengths), 'sentence')} of {average:.0f} words on average.")
    say("Each bar is a sentence, the taller the longer; beside it their words.")
    for start, lengths in ease.paragraphs:
        bars = "".join(BARS[min(len(BARS) - 1, length * len(BARS) // TALLEST)] for length in lengths)
        say_rows([(f"line {line_at(text, start)}", f"{bars}  {' '.join(map(str, lengths))}")], 2)
    for kind, looks in ease.by_kind.items():
        say()
        say(
            f"{kind[:1].upper()}{kind[1:]}: {looks[0].asks}"
            if len({one.asks for one in looks}) == 1
            else kind.capitalize()
        )
        for look in looks:
            asks = "" if len({one.asks for one in looks}) == 1 else f" {look.asks}"
            say(f"line {line_at(text, look.span.start)}: {quote_look(text, look)}{asks}", 2, 4)
    say()
    for figure in ease.figures:
        say(f"{figure.name}: {figure.value:.1f}, {figure.tells}", 0, 2)
        say(figure.formula, 2, 4)
    say("A figure counts words and syllables; it does not know what they say.")
