"""``fairhand copy-edit``: what there is to correct in the language and the form, in the order of the text."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say, say_rows
from fairhand.model.finding import Pass

if TYPE_CHECKING:
    from fairhand.session.opened import OpenPaper

LOOKED_AT: Pass = "copy-edit"
"""The pass whose findings are shown."""


@click.command("copy-edit")
@paper_argument
@click.option("--kind", default="", metavar="CHECK", help="One kind of finding alone, as spelling.")
@click.option("--learn", multiple=True, metavar="WORD", help="A word that is right: it goes on your list, words.txt.")
@click.option("--unlearn", multiple=True, metavar="WORD", help="A word that is to be told again.")
@click.option("--ease", is_flag=True, help="Show how the sentences run and how easily they read, instead.")
@click.option("--used", is_flag=True, help="Tell what was used, for a statement.")
def command(paper: Path, kind: str, learn: Sequence[str], unlearn: Sequence[str], ease: bool, used: bool) -> None:
    """Show what there is to correct in PAPER's draft, in the order of the text, after your most frequent lapses.

    Where the sheet has a rule on tools that check the language, the language is not looked at until you answer it.
    """
    from fairhand.session.correction.words import learn_word, unlearn_word
    from fairhand.session.opened import OpenPaper

    for word in learn:
        learn_word(paper, word)
    for word in unlearn:
        unlearn_word(paper, word)
    opened = OpenPaper(paper)
    if used:
        show_used(opened)
        return
    shut = show_rules(paper, opened)
    if ease and shut:
        return
    if ease:
        show_ease(opened)
    else:
        show_findings(opened, kind)


def show_used(opened: OpenPaper) -> None:
    """What was used, a line each, to be put into the writer's own words."""
    from fairhand.readiness.used import list_used

    say("What was used on this paper, for a statement in your own words:")
    for line in list_used(opened.look()):
        say(line, 2, 4)


def show_rules(paper: Path, opened: OpenPaper) -> bool:
    """The rules of the sheet that keep the language from being looked at, and how to answer; whether there is one."""
    from fairhand.readiness.language_tools import LEAVE, REFUSAL, shut_by, tell_answer

    known = opened.look()
    rule = shut_by(known)
    if rule is None:
        return False
    say(f"The sheet has a rule on this: “{' '.join(rule.evidence.split())}”.")
    say(tell_answer(rule, known.paper.answers.get(rule.id)))
    say(f'If your instructor lets you: fairhand answer{typed(paper)} {rule.id} --say "{LEAVE}" --by NAME', 2, 4)
    say(f'If not: fairhand answer{typed(paper)} {rule.id} --say "{REFUSAL}"', 2, 4)
    say()
    return True


def show_findings(opened: OpenPaper, kind: str) -> None:
    """The lapses, then the findings of the pass."""
    from fairhand.errors import FairhandError
    from fairhand.model.span import line_at
    from fairhand.session.correction.lapses import most_frequent, survey_lapses

    verdict = opened.verdict()
    found = [f for f in verdict.findings if f.in_pass == LOOKED_AT]
    kinds = sorted({f.check for f in found})
    if kind and kind not in kinds:
        message = f"{kind}: nothing of that kind was found; found were {', '.join(kinds) or 'none'}"
        raise FairhandError(message)
    seen = most_frequent(survey_lapses(opened.folder, opened.look(), verdict.findings)[0])
    if seen and not kind:
        say("Your lapses")
        say_rows(((one.lapse.name, f"{len(one.places)} in this draft") for one in seen), 2)
        say()
    shown = [f for f in found if not kind or f.check == kind]
    for one in shown:
        where = f"line {line_at(verdict.draft, one.span.start)}, " if one.span else ""
        say(f"{where}{one.weight}: {one.check}")
        if one.span:
            say(f"“{' '.join(one.span.of(verdict.draft).split())[:120]}”", 2, 4)
        say(one.says, 2, 4)
    if not verdict.draft.strip():
        say("There is no draft yet.")
    elif not shown:
        say("Nothing that a check could find. Read it once from start to end.")


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
