"""Steps left out of a paper, and what then comes after what."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from fairhand.model.plan import Step


def leave_out(steps: Sequence[Step], these: Collection[str]) -> tuple[Step, ...]:
    """The steps without some of them; what came after one of those comes after what that came after.

    >>> steps = [Step("a/draft", "a", "write", 60), Step("a/reader", "a", "have it read", 20, after=("a/draft",)),
    ...          Step("a/proof", "a", "read the proof", 40, after=("a/reader",))]
    >>> [(step.id, step.after) for step in leave_out(steps, {"a/reader"})]
    [('a/draft', ()), ('a/proof', ('a/draft',))]
    """
    out = {step.id: step for step in steps if step.id in these}
    return tuple(
        replace(step, after=_before(step.after, out)) if out.keys() & set(step.after) else step
        for step in steps
        if step.id not in out
    )


def with_what_hangs_on(steps: Sequence[Step], step: str) -> frozenset[str]:
    """The step with the optional ones that come after nothing else, and so have no ground without it.

    >>> steps = [Step("a/draft", "a", "write", 60), Step("a/aside", "a", "write the excursus", 60, optional=True),
    ...          Step("a/trim", "a", "trim the excursus", 20, after=("a/aside",), optional=True),
    ...          Step("a/proof", "a", "read the proof", 40, after=("a/draft", "a/trim"))]
    >>> sorted(with_what_hangs_on(steps, "a/aside"))
    ['a/aside', 'a/trim']
    """
    gone = {step}
    size = 0
    while size < len(gone):
        size = len(gone)
        gone |= {one.id for one in steps if one.optional and one.after and gone.issuperset(one.after)}
    return frozenset(gone)


def _before(names: Sequence[str], out: dict[str, Step]) -> tuple[str, ...]:
    """What comes before, with each step that is left out replaced by what comes before that."""
    found: dict[str, None] = {}
    seen: set[str] = set()
    open_ = list(reversed(names))
    while open_:
        name = open_.pop()
        if name not in out:
            found[name] = None
        elif name not in seen:
            seen.add(name)
            open_ += reversed(out[name].after)
    return tuple(found)
