"""``fairhand ready``: whether the paper is ready to be handed in."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from fairhand.cli.exit_codes import NOT_READY, READY
from fairhand.cli.places import NOON, paper_argument
from fairhand.cli.screen import say, say_rows, title

if TYPE_CHECKING:
    from fairhand.readiness.left import Left

ANSWERS = {"ready": "Ready.", "not ready": "Not ready.", "ask": "Something is still yours to answer."}


@click.command("ready")
@paper_argument
@click.option("--draft", type=click.Path(path_type=Path), help="Judge this draft instead, with the same sources.")
@click.option("--all", "show_all", is_flag=True, help="Show what is met, too.")
@click.option("--json", "as_json", is_flag=True, help="Print the verdict for other programs.")
@click.option("--on", type=NOON, help="Judge deadlines as of this day's noon, not of this hour.")
def command(paper: Path, draft: Path | None, show_all: bool, as_json: bool, on: Any) -> int:
    """Judge whether PAPER (a folder; here, if none is named) is ready to be handed in.

    Ends with 0 where it is ready, 1 where it is not or something is to be answered.
    """
    from fairhand.session.kept import told_verdict

    told = told_verdict(paper, draft=draft, at=on)
    if as_json:
        from fairhand.readiness.contract import as_contract

        click.echo(json.dumps(as_contract(told), ensure_ascii=False, indent=1))
    else:
        from fairhand.session.schedule.left_to_do import read_left

        show(told, show_all=show_all, left=read_left(paper, told, on) if draft is None and told["has_draft"] else None)
    return READY if told["verdict"] == "ready" else NOT_READY


def show(told: Mapping[str, Any], *, show_all: bool = False, left: Left | None = None) -> None:
    """The verdict on the terminal: what is unmet first, then each finding, at the end what to do before the hour."""
    from fairhand.readiness.in_words import CAUTION, say_extent

    title(told["title"], ANSWERS[told["verdict"]])
    say()
    if told["has_draft"]:
        say(say_extent(told), 2)
    say(f"Style: {told['style']}.", 2)
    if told["has_draft"] or show_all:
        _show_requirements(told["requirements"], show_all=show_all)
        _show_findings(told["findings"])
        _show_stets(told["stets"], show_all=show_all)
    elif told["requirements"]:
        say(f"The sheet asks {len(told['requirements'])} things (fairhand brief shows them).", 2)
    for problem in told["problems"]:
        say()
        say(f"Note. {problem}.", 2)
    say()
    if left is not None and left.todos:
        say(str(left))
        say_todos(left)
        say()
    say(f"Next. {told['next']}")
    say()
    say(CAUTION)


def say_todos(left: Left) -> None:
    """Each thing that is left with the minutes that it takes, and what is open in it."""
    for one in left.todos:
        holds = f": {'; '.join(one.holds)}" if one.holds else ""
        after = "".join(f" ({said})" for said in (one.wait, "it can be left out" if one.may_go else "") if said)
        say_rows([(f"{one.minutes:4} min", f"{one.says}{holds}{after}")])


def _show_requirements(requirements: list[Mapping[str, Any]], *, show_all: bool) -> None:
    groups = [("unmet", "The sheet asks, and it is not met"), ("ask", "Yours to answer (fairhand answer)")]
    if show_all:
        groups += [("met", "Met"), ("waived", "Waived")]
    for state, heading in groups:
        these = [r for r in requirements if r["state"] == state]
        if these:
            say()
            say(heading)
            say_rows((_name(r), r["why"]) for r in these)
    if not show_all:
        quiet = [f"{sum(r['state'] == state for r in requirements)} {state}" for state in ("met", "waived")]
        say()
        say(f"Of {len(requirements)} things that the sheet asks: {', '.join(quiet)} (--all shows them).", 2)


def _name(requirement: Mapping[str, Any]) -> str:
    """A requirement's id, with its force where the sheet does not insist."""
    return requirement["id"] if requirement["force"] == "must" else f"{requirement['id']} ({requirement['force']})"


def _show_findings(findings: Sequence[Mapping[str, Any]]) -> None:
    """Each finding with its line, what it is about, and both wordings where two were compared."""
    from fairhand.readiness.in_words import findings_to_show, quote_shortly, say_grounds

    findings = findings_to_show(findings)
    if not findings:
        return
    say()
    say("In the draft")
    for finding in findings:
        say()
        if finding["quote"]:
            say(quote_shortly(finding["quote"]), 2, 6)
        told = f"{_tell_place(finding)}, a {finding['weight']}. {finding['says']}"
        say(told, 6 if finding["quote"] else 2, 6)
        if finding["wordings"]:
            say_rows((("draft", finding["wordings"]["draft"]), ("source", finding["wordings"]["source"])), 6)
    say()
    say(say_grounds(findings))


def _tell_place(finding: Mapping[str, Any]) -> str:
    return f"Line {finding['line']}" if finding["line"] else "The whole paper"


def _show_stets(stets: list[Mapping[str, Any]], *, show_all: bool) -> None:
    """How many findings the writer lets stand; on request each of them, with the reason."""
    if not stets:
        return
    say()
    say(f"Let stand (stet): {len(stets)}{'' if show_all else ' (--all shows them)'}.")
    if show_all:
        say_rows((_tell_place(one), f"{one['says']} {one['reason']}".strip()) for one in stets)
