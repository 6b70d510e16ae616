"""What must still be done before the hour, in order, with the time that it takes.

The steps and their minutes are the plan's; what each holds is read off the verdict, so that both say the same.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from fairhand.language.counts import count_of
from fairhand.model.plan import Step
from fairhand.readiness.left import Left, ToDo
from fairhand.readiness.next_step import ORDER

LEAVES: Mapping[str, str] = {
    "sheet": "brief",
    "jottings": "jottings",
    "focus": "focus",
    "sources": "sources",
    "draft": "draft",
    "revision": "revision",
    "copy-edit": "copy-edit",
    "proof": "proof",
    "final-reading": "final",
    "hand-in": "hand-in",
}
"""The page of the paper where each step is done."""
_TOLD_BY: Mapping[str, str] = {"section": "section-missing", "length": "length"}
"""The check that says the same as an unmet demand of a kind."""
_OF_DRAFT = frozenset({"length", "section", "element", "sources", "sources_banned"})


def list_left(
    steps: Iterable[Step], told: Mapping[str, Any], due: dt.datetime | None = None, now: dt.datetime | None = None
) -> Left:
    """The steps that are left of a paper, each with what is open in it.

    Args:
        steps: The plan's, of this paper, in their order.
        told: The verdict as plain values.
        due: The paper's hour.
        now: The present one.

    >>> told = {"findings": [{"check": "aside-left", "pass": "copy-edit", "weight": "must"}], "requirements": []}
    >>> left = list_left([Step("a/copy-edit", "a", "copy-edit it", 30)], told)
    >>> left.todos[0].holds
    ('settle the remarks to yourself (1 must)',)
    """
    todos = []
    for step in steps:
        name = step.id.partition("/")[2]
        todos.append(
            ToDo(
                says=step.name,
                minutes=step.minutes,
                leaf=_leaf_of(name),
                holds=_holds(name, told),
                wait=_say_wait(step.rest_minutes),
                may_go=step.optional,
            )
        )
    return Left(tuple(todos), due, now)


def _leaf_of(step: str) -> str:
    if step.startswith("read-"):
        return "sources"
    return LEAVES.get(step, "readers" if step.startswith("reader-") else "plan")


def _holds(step: str, told: Mapping[str, Any]) -> tuple[str, ...]:
    """What is open in a step: kinds of findings with their numbers, demands that are unmet, questions."""
    open_ = {state: [one for one in told["requirements"] if one["state"] == state] for state in ("unmet", "ask")}
    unmet = [one for one in open_["unmet"] if one["force"] != "may"]
    out: list[str] = []
    if step in {"revision", "copy-edit"}:
        out += _by_kind([one for one in told["findings"] if one["pass"] == step and one["weight"] != "query"])
    if step == "revision":
        of_draft = [one for one in unmet if one["kind"] in _OF_DRAFT and told.get("has_draft")]
        found = {one["check"] for one in told["findings"]}
        out += [one["why"].rstrip(".") for one in of_draft if _TOLD_BY.get(one["kind"]) not in found]
    if step == "copy-edit":
        out += [one["why"].rstrip(".") for one in unmet if one["kind"] not in _OF_DRAFT]
    if step == "hand-in":
        asked = [one for one in open_["ask"] if one["force"] == "must"]
        out += [f"answer {count_of(len(asked), 'question')} of the sheet that only you can"] if asked else []
    return tuple(dict.fromkeys(out))


def _by_kind(findings: Sequence[Mapping[str, Any]]) -> list[str]:
    says = dict(ORDER)
    counts: dict[str, dict[str, int]] = {}
    for one in findings:
        what = says.get(one["check"], "Go through what the checks found")
        weights = counts.setdefault(what, {})
        weights[one["weight"]] = weights.get(one["weight"], 0) + 1
    order = list(dict.fromkeys((*(what for _, what in ORDER), *counts)))
    return [
        f"{what[0].lower()}{what[1:]} ({', '.join(f'{number} {weight}' for weight, number in counts[what].items())})"
        for what in order
        if what in counts
    ]


def _say_wait(minutes: int) -> str:
    if not minutes:
        return ""
    days = round(minutes / (24 * 60))
    return "then a night passes" if minutes < 24 * 60 else f"then {count_of(days, 'day')} for the answer"
