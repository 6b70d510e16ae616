"""One draft from two that began alike: what was changed here stands, and what was changed in the file that came.

Passages are told apart by the one matcher; each that only one side changed stands as that side has it. Where both did,
the file's stands and both are named: which is better is the writer's to say. The order is the file's.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import count

from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.matching import ParagraphMatch, match_texts
from fairhand.manuscript.revising import is_same
from fairhand.model.span import Span
from fairhand.proof.comparison import match_parts
from fairhand.proof.passages import list_passages

_NOTE = re.compile(r"\[\^([^\s\]]{1,100})\]")


@dataclass(frozen=True)
class Joined:
    """The draft, and how it came about."""

    text: str
    here: int = 0
    """How many passages stand as they were changed here."""
    both: tuple[tuple[str, str], ...] = ()
    """Each passage that both changed, as it was here and as it is in the file; empty where one side took it out."""


@dataclass(frozen=True)
class _Side:
    """One of the two drafts against the one that both began from."""

    text: str
    spans: tuple[Span, ...]
    by_base: dict[int, ParagraphMatch]

    def of(self, index: int) -> str:
        """The passage of that number."""
        return self.spans[index].of(self.text)


def join_drafts(base: str, here: str, there: str) -> Joined:
    r"""The draft of the file, with what was changed here since both were one.

    Args:
        base: The draft as it was last brought in.
        here: The draft as it stands here.
        there: The draft as the file has it now.

    >>> join_drafts("One.\n\nTwo.\n", "One and more.\n\nTwo.\n", "One.\n\nTwo, at last.\n").text
    'One and more.\n\nTwo, at last.\n'
    """
    base, here = _relabelled(base, there), _relabelled(here, there)
    spans = list_passages(read_manuscript(base))
    texts = [span.of(base) for span in spans]
    ours, theirs = (_side(texts, text) for text in (here, there))
    changes: dict[Span, str] = {}
    both: list[tuple[str, str]] = []
    kept = 0
    for index, was in enumerate(texts):
        mine, other = ours.by_base[index], theirs.by_base[index]
        now = "\n\n".join(ours.of(n) for n in mine.new)
        if mine.old[0] != index:
            continue
        then = "\n\n".join(theirs.of(n) for n in other.new)
        if len(mine.old) == 1 and len(other.new) == 1 and other.old == (index,) and is_same(then, was):
            if now != then:
                changes[theirs.spans[other.new[0]]] = now
            kept += not is_same(now, was)
        elif not is_same(now, was) and not is_same(now, then):
            both.append((now, then))
    added = list(_added(ours, theirs))
    return Joined(_apply(there, changes, added), kept + len(added), tuple(both))


def _relabelled(text: str, there: str) -> str:
    """The text with the labels that its footnotes have in the other; a word processor numbers them anew each time.

    A note that the other does not have gets a label that stands for nothing there.
    """
    own, others = _notes(text), _notes(there)
    new: dict[str, str] = {}
    for match in match_texts(list(own.values()), list(others.values())):
        if match.old and match.new:
            new[[*own][match.old[0]]] = [*others][match.new[0]]
    free = (str(number) for number in count(1) if str(number) not in others and str(number) not in own)
    for label in own:
        if label not in new:
            new[label] = label if label not in others else next(free)
    return _NOTE.sub(lambda found: f"[^{new.get(found[1], found[1])}]", text)


def _notes(text: str) -> dict[str, str]:
    """What each footnote says, by its label."""
    return {label: note.content.of(text) for label, note in read_manuscript(text).notes.items()}


def _side(base: Sequence[str], text: str) -> _Side:
    spans = list_passages(read_manuscript(text))
    matches = match_parts(base, [span.of(text) for span in spans])
    return _Side(text, spans, {index: match for match in matches for index in match.old})


def _added(ours: _Side, theirs: _Side) -> Iterator[tuple[int, str]]:
    """What is new here, each with the place in the other draft after which it belongs."""
    origin = {n: index for index, match in ours.by_base.items() for n in match.new}
    there = {" ".join(theirs.of(n).split()) for n in range(len(theirs.spans))}
    after = 0
    for n in range(len(ours.spans)):
        if n in origin:
            follows = theirs.by_base[origin[n]].new
            after = theirs.spans[follows[-1]].end if follows else after
        elif " ".join(ours.of(n).split()) not in there:
            yield after, ours.of(n)


def _apply(text: str, changes: dict[Span, str], added: Sequence[tuple[int, str]]) -> str:
    """The text with passages changed and put in; one that is taken out leaves no gap."""
    edits = [(span.start, span.end, now) for span, now in changes.items()]
    for at in sorted({place for place, _ in added}):
        matter = "\n\n".join(passage for place, passage in added if place == at)
        edits.append((at, at, f"\n\n{matter}" if at else f"{matter}\n\n"))
    out, at = [], 0
    for start, end, now in sorted(edits, key=lambda edit: (edit[0], edit[1])):
        out += [text[at:start], now]
        at = end
        if not now:
            at += len(text[at:]) - len(text[at:].lstrip("\n"))
    return "".join([*out, text[at:]]).rstrip("\n") + "\n"
