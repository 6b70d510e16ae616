"""What the writer is asked in the revision, beside the outline: each question with what can be seen, never a finding.

**Source**: the questions that handbooks put to a draft before its language (common practice); what is seen is counted.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from fairhand.language.counts import count_of
from fairhand.model.span import line_at
from fairhand.planning.task_verbs import ask_of_task
from fairhand.readiness.analysis import Analysis
from fairhand.revision.dependence import find_ties
from fairhand.revision.likeness import Weights, count_stems
from fairhand.revision.outline import Outlined

MUCH = 0.4
"""Share of the citations that one source has, from which it is told (from trial)."""
LONG_SENTENCE = 45
"""Words of a sentence that may be said more plainly (from trial)."""
_OBJECTS = re.compile(
    r"\b(?:objections?|objects? that|opponents?|critics?|sceptics?|skeptics?|counter-?arguments?|counter-?claims?"
    r"|(?:some|others|many|one|it|they) (?:may|might|could|can|would|will) (?:argue|say|object|claim|answer|reply"
    r"|be (?:argued|objected|said))|(?:some|others|many) (?:argue|say|claim|object|believe)|admittedly|granted that"
    r"|to be sure|against this|on the other side|disagrees?)\b",
    re.IGNORECASE,
)
"""Words by which a writer names what speaks against them."""
FEWEST_CITES = 6
"""Citations of a paper of which it can be told that one source has many."""


@dataclass(frozen=True, slots=True)
class Asking:
    """A question, and what can be seen of it."""

    name: str
    """By which the answer is kept."""
    asks: str
    sees: tuple[str, ...]
    """Each in a sentence; empty where nothing was seen."""


def ask_of_argument(known: Analysis, outlined: Sequence[Outlined]) -> tuple[Asking, ...]:
    """The eight questions, in the order in which they are best answered; none where there is no body.

    Args:
        known: The paper.
        outlined: Its outline, with the writer's corrections.
    """
    if not outlined:
        return ()
    return tuple(Asking(name, asks, tuple(see(known, outlined))) for name, asks, see in _QUESTIONS)


def _lines(known: Analysis, places: Sequence[int]) -> str:
    """The paragraphs at these places of the body, by the lines that they begin on."""
    text = known.manuscript.text
    told = [str(line_at(text, known.argument.body[at].span.start)) for at in places]
    return f"line{'s' if len(told) > 1 else ''} {', '.join(told)}"


def _see_verb(known: Analysis, outlined: Sequence[Outlined]) -> Iterator[str]:  # noqa: ARG001 - one signature for all
    verbs = [str(r.values.get("verb")) for r in known.paper.requirements if r.kind == "task" and not known.is_waived(r)]
    if verbs:
        said = ", ".join(f"“{verb}”" for verb in dict.fromkeys(verbs))
        yield f"The sheet says {said}."
    thesis = known.paper.points.thesis or known.paper.focus.focus
    yield from (query.asks for query in ask_of_task(thesis, verbs))
    if any(r.values.get("what") == "counterargument" and not known.is_waived(r) for r in known.paper.requirements):
        met = [at for at, one in enumerate(known.argument.body) if any(_OBJECTS.search(s.own) for s in one.sentences)]
        where = f"is named on {_lines(known, met)}" if met else "was not seen, by the words that name one"
        yield f"The sheet wants the other side heard; an objection {where}."


def _see_sections(known: Analysis, outlined: Sequence[Outlined]) -> Iterator[str]:
    body = known.argument.body
    serving: dict[str, list[str]] = {}
    for one in outlined:
        section = body[one.paragraph].section
        if section and body[one.paragraph].role == "body":
            serving.setdefault(section, []).append(one.point)
    for section, points in serving.items():
        told = list(dict.fromkeys(point for point in points if point))
        if told:
            yield f"“{section}”: {', '.join(told)}."
        else:
            yield f"“{section}”: no point that could be told."


def _see_order(known: Analysis, outlined: Sequence[Outlined]) -> Iterator[str]:
    turning = [one.paragraph for one in outlined if one.tie and one.tie.turns and not one.tie.link]
    if turning:
        many = count_of(len(turning), "paragraph turns", "paragraphs turn")
        yield f"{many} to another matter with no word that takes up the one before: {_lines(known, turning)}."
    order = [one.point for one in outlined if one.point]
    back = {point for point in order if _returns(order, point)}
    if back:
        yield f"The paper comes back to {', '.join(sorted(back))} after another point."


def _returns(order: Sequence[str], point: str) -> bool:
    first, last = order.index(point), len(order) - 1 - order[::-1].index(point)
    return any(other != point for other in order[first:last])


def _see_filling(known: Analysis, outlined: Sequence[Outlined]) -> Iterator[str]:
    body = known.argument.body
    words: Counter[str] = Counter()
    for one in outlined:
        words[one.point] += body[one.paragraph].words + body[one.paragraph].blocks
    beside = {
        one.point.id: one.paragraph for one in known.argument.argued if one.is_argued and one.paragraph is not None
    }
    for point in known.paper.points.points:
        if words[point.id]:
            yield f"{point.id}: {count_of(words[point.id], 'word')}."
        elif point.id in beside:
            yield f"{point.id}: beside another point, in the paragraph on {_lines(known, [beside[point.id]])}."
        else:
            yield f"{point.id}: no paragraph yet."
    bare = [at for at, one in enumerate(body) if one.role == "body" and not one.cites]
    if bare:
        yield f"No source is cited in the {'paragraphs' if len(bare) > 1 else 'paragraph'} on {_lines(known, bare)}."


def _see_terms(known: Analysis, outlined: Sequence[Outlined]) -> Iterator[str]:  # noqa: ARG001
    argument = known.argument
    ties = find_ties(known.manuscript, argument.body, known.mentions, known.resolved, known.names)
    text = known.manuscript.text
    for tie in ties:
        if tie.kind == "term" and tie.looks_ahead:
            ground = line_at(text, argument.body[tie.ground].span.start)
            yield f"“{tie.span.of(text)}” on line {line_at(text, tie.span.start)} is explained only on line {ground}."


def _see_cutting(known: Analysis, outlined: Sequence[Outlined]) -> Iterator[str]:
    argument, text = known.argument, known.manuscript.text
    off = [one.paragraph for one in outlined if not one.on_focus]
    if off:
        yield f"Off the focus, it seems: {_lines(known, off)}."
    for repeats in argument.repeats:
        yield f"Said twice, it may be: {_lines(known, (repeats.earlier, repeats.later))}."
    long = [
        line_at(text, sentence.span.start)
        for paragraph in argument.body
        for sentence in paragraph.sentences
        if len(sentence.own.split()) > LONG_SENTENCE
    ]
    if long:
        told = ", ".join(map(str, dict.fromkeys(long)))
        yield f"{count_of(len(long), 'sentence')} of more than {LONG_SENTENCE} words: line {told}."


def _see_one_source(known: Analysis, outlined: Sequence[Outlined]) -> Iterator[str]:  # noqa: ARG001
    cites = Counter(cited.entry for one in known.argument.body for cited in one.cites if cited.entry)
    total = cites.total()
    if total >= FEWEST_CITES:
        entry, many = cites.most_common(1)[0]
        told = f"{known.names.get(entry or '', entry)} has {many} of {total} citations"
        yield f"{told}, more than any other." if many >= MUCH * total else f"{told}, the most of any."
    once = sorted(known.names.get(entry or "", "") for entry, many in cites.items() if many == 1)
    if once:
        yield f"Cited once: {'; '.join(once)}."


def _see_conclusion(known: Analysis, outlined: Sequence[Outlined]) -> Iterator[str]:  # noqa: ARG001
    argument = known.argument
    opening, closing = (
        " ".join(text for one, text in zip(argument.body, argument.texts, strict=True) if one.role == role)
        for role in ("opening", "closing")
    )
    if not opening or not closing:
        return
    weights = Weights(argument.texts)
    said, again = count_stems(opening), count_stems(closing)
    share = sum(many for stem, many in again.items() if stem in said) / max(1, sum(again.values()))
    new = [stem for stem in again if weights.among[stem] == 1]
    yield (
        f"{share:.0%} of the conclusion's words stand in the introduction; {count_of(len(new), 'word')} of it "
        f"{'stands' if len(new) == 1 else 'stand'} nowhere else in the paper."
    )


_QUESTIONS: tuple[tuple[str, str, Callable[[Analysis, Sequence[Outlined]], Iterator[str]]], ...] = (
    ("verb", "Does the paper do what the task's verb asks?", _see_verb),
    ("hangs-together", "Does it hang together, each paragraph following from the one before?", _see_order),
    ("sections", "Does each section serve the claim?", _see_sections),
    ("filled-out", "Is each point filled out from the sources?", _see_filling),
    ("terms", "Is a term used before it is explained?", _see_terms),
    ("can-go", "What can go, or be said more plainly?", _see_cutting),
    ("one-source", "Does one source carry too much?", _see_one_source),
    ("conclusion", "Does the conclusion only repeat?", _see_conclusion),
)
"""Each question's name, what it asks, and what sees for it."""

NAMES = tuple(name for name, _, _ in _QUESTIONS)
"""The names by which answers are kept."""
