"""``fairhand copy-edit``: what there is to correct in the language and the form, marked first and mended later."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from fairhand.cli.copy_edit_marks import mark, mend_offers
from fairhand.cli.copy_edit_through import go_through
from fairhand.cli.ease import show_ease
from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say, say_rows

if TYPE_CHECKING:
    from fairhand.session.correction.going_through import Numbered
    from fairhand.session.correction.lapses import LapseSeen
    from fairhand.session.opened import OpenPaper

NUMBER = click.IntRange(1)


@click.command("copy-edit")
@paper_argument
@click.option("--kind", default="", metavar="CHECK", help="One kind of finding alone, as spelling.")
@click.option("--through", is_flag=True, help="Go through what was found, a letter for each.")
@click.option("--left", type=click.Choice(("open", "later", "come-back", "stet")), help="What was marked so alone.")
@click.option("--later", type=NUMBER, multiple=True, metavar="N", help="Mark a finding, to be mended later.")
@click.option("--come-back", type=NUMBER, multiple=True, metavar="N", help="Mark a finding, to come back to.")
@click.option("--stet", type=NUMBER, multiple=True, metavar="N", help="Let what was found stand.")
@click.option("--why", default="", help="With --stet: your reason, kept with it.")
@click.option("--take-back", type=NUMBER, multiple=True, metavar="N", help="Take a mark or a stet back.")
@click.option("--lapse", "lapses", type=NUMBER, multiple=True, metavar="N", help="Add a finding to your lapses.")
@click.option("--mend", type=NUMBER, multiple=True, metavar="N", help="Put the word or the mark that is offered.")
@click.option("--mend-marked", is_flag=True, help="Do so in one go, wherever you marked to mend later.")
@click.option("--learn", multiple=True, metavar="WORD", help="A word that is right: it goes on your list, words.txt.")
@click.option("--unlearn", multiple=True, metavar="WORD", help="A word that is to be told again.")
@click.option("--words", "own", is_flag=True, help="List your words, and nothing else.")
@click.option("--ease", is_flag=True, help="Show how the sentences run and how easily they read, instead.")
@click.option("--used", is_flag=True, help="List what was used, for a statement.")
def command(
    paper: Path,
    kind: str,
    left: str | None,
    later: Sequence[int],
    come_back: Sequence[int],
    stet: Sequence[int],
    why: str,
    take_back: Sequence[int],
    lapses: Sequence[int],
    mend: Sequence[int],
    learn: Sequence[str],
    unlearn: Sequence[str],
    *,
    through: bool,
    mend_marked: bool,
    own: bool,
    ease: bool,
    used: bool,
) -> None:
    """Show what there is to correct in PAPER's draft, in the order of the text, after your most frequent lapses.

    Mark first and mend later, if you like: --later 2 --stet 3 --come-back 5 change nothing in the draft, and are found
    again when it was edited. Where the sheet has a rule on tools that check the language, it is not looked at until you
    answer it.
    """
    from fairhand.session.correction.words import learn_word, list_words, unlearn_word
    from fairhand.session.opened import OpenPaper

    for word in learn:
        learn_word(paper, word)
    for word in unlearn:
        unlearn_word(paper, word)
    if own:
        say("\n".join(list_words(paper)) or "No words of yours are on the list yet (--learn WORD).")
        return
    if later or come_back or stet or take_back or lapses:
        mark(paper, {"mend": later, "later": come_back, "stet": stet}, why, take_back, lapses)
    if mend or mend_marked:
        mend_offers(paper, mend, marked=mend_marked)
    opened = OpenPaper(paper)
    if used:
        show_used(opened)
        return
    shut = show_rules(paper, opened)
    if ease and shut:
        return
    if through:
        go_through(paper, kind)
        return
    if ease:
        show_ease(opened)
    else:
        show_findings(opened, kind, left)


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
    say("If your instructor lets you (--by NAME keeps who said so):")
    say(f'fairhand answer{typed(paper)} {rule.id} --say "{LEAVE}"', 2, 4)
    say("If not:")
    say(f'fairhand answer{typed(paper)} {rule.id} --say "{REFUSAL}"', 2, 4)
    say()
    return True


def show_findings(opened: OpenPaper, kind: str = "", left: str | None = None) -> None:
    """The lapses, then the findings of the pass."""
    from fairhand.errors import FairhandError
    from fairhand.model.span import line_at
    from fairhand.readiness.language_tools import shut_by
    from fairhand.readiness.told import mark_differences
    from fairhand.session.correction.going_through import list_numbered
    from fairhand.session.correction.lapses import survey_lapses

    draft = opened.verdict().draft
    found = list_numbered(opened)
    kinds = sorted({one.finding.check for one in found})
    if kind and kind not in kinds:
        message = f"{kind}: nothing of that kind was found; found were {', '.join(kinds) or 'none'}"
        raise FairhandError(message)
    seen = survey_lapses(opened.folder, opened.look(), opened.verdict().findings)[0]
    if not kind and not left:
        show_lapses(seen)
    wanted = {None: None, "open": "", "later": "mend", "come-back": "later"}.get(left, left)
    shown = [
        one
        for one in found
        if (not kind or one.finding.check == kind) and wanted in (None, one.mark.word if one.mark else "")
    ]
    for one in shown:
        span = one.finding.span
        where = f"line {line_at(draft, span.start)}, " if span else ""
        under = len(str(one.number)) + 2
        say(f"{one.number}. {where}{one.told}: {one.finding.check}", 0, under)
        if one.mark and one.mark.word == "stet":
            say(f"“{one.mark.exact}”{f': {one.mark.reason}' if one.mark.reason else ''}", under, under + 2)
            continue
        if span:
            say(f"“{' '.join(span.of(draft).split())[:120]}”", under, under + 2)
        say(one.finding.says, under, under + 2)
        both = one.finding.wordings
        if both:
            mine, theirs = mark_differences(both.draft, both.draft_differs), both.source_differs
            say_rows([("draft", mine), ("source", mark_differences(both.source, theirs))], under)
    if not draft.strip():
        say("There is no draft yet.")
    elif not shown and left:
        say("Nothing was marked so." if left != "open" else "Everything was gone through.")
    elif not shown:
        rest = "Of the rest nothing" if shut_by(opened.look()) else "Nothing"
        say(f"{rest} that a check could find. Read it once from start to end.")
    else:
        show_ways(opened.folder, [one for one in shown if one.mark is None], [one for one in shown if one.mark])


def show_ways(paper: Path, open_: Sequence[Numbered], marked: Sequence[Numbered]) -> None:
    """How the findings are marked, and how those that were are mended."""
    here = f"fairhand copy-edit{typed(paper)}"
    say()
    if open_:
        number = open_[0].number
        say(f"To mark first and mend later: {here} --later {number}, or --stet or --come-back with its number", 0, 2)
    if any(one.mark and one.mark.word == "mend" for one in marked):
        say(f"To put, in one go, what is offered where you marked: {here} --mend-marked", 0, 2)


def show_lapses(seen: Sequence[LapseSeen]) -> None:
    """The most frequent lapses, and those that have died out."""
    from fairhand.session.correction.lapses import most_frequent

    died = [(one.lapse.name, "in none of your last three drafts; it has died out") for one in seen if one.died_out]
    rows = [(one.lapse.name, one.stands) for one in most_frequent(seen)]
    if rows or died:
        say("Your lapses")
        say_rows([*rows, *died], 2)
        say()
