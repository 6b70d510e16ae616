"""Leads in the order in which this paper needs them, each with its reasons in words.

What counts: how many of the sources point to it; whether its title speaks of what an open question asks; whether it is
of a kind and age that the sheet asks for and the sources lack. A lead that several of these speak for comes first.
**Source**: common practice of following references; the weights are ours and carry no claim beyond their order.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from fairhand.language.content_words import list_stems, list_words
from fairhand.language.counts import count_of
from fairhand.language.stems import stem
from fairhand.leads.lead import Lead
from fairhand.model.entry import Entry
from fairhand.model.focus import Question

FURTHER_SOURCE = 1.0
"""What each source after the first adds, the fourth and later ones nothing more."""
MEETS_RULE = 1.0
"""What it adds that the sheet still asks for such a work."""
CLOSEST = 1.5
"""What it adds at most that its title speaks of an open question."""
_ENOUGH = 2
"""Words that a title and a question must share; one, where it is rare among the titles and the question is short."""


@dataclass(frozen=True)
class Lacking:
    """Something that the sheet asks of the sources and that is not met yet."""

    says: str
    """What is asked, in words."""
    fits: Callable[[Entry], bool]
    """Whether a work is of that kind and age."""


@dataclass(frozen=True)
class RankedLead:
    """A lead with its weight and the reasons for it."""

    lead: Lead
    weight: float
    reasons: tuple[str, ...]
    """In words, the weightiest first; empty where nothing but one reference speaks for it."""


def rank_leads(
    leads: Sequence[Lead], questions: Sequence[Question] = (), lacking: Sequence[Lacking] = ()
) -> tuple[RankedLead, ...]:
    """The leads, those first that most speaks for; of equals, in the order of their names.

    Args:
        leads: The leads.
        questions: The paper's questions; answered ones do not count.
        lacking: What the sheet asks of the sources that is not met.
    """
    asked = [(one, frozenset(list_stems(one.text))) for one in questions if one.state == "open"]
    titles = [_words_of(lead.entry) for lead in leads]
    seen = Counter(word for words in titles for word in words)
    ranked = [_rank(lead, words, asked, seen, len(leads), lacking) for lead, words in zip(leads, titles, strict=True)]
    return tuple(sorted(ranked, key=lambda one: (-one.weight, one.lead.entry.id)))


def _words_of(entry: Entry) -> dict[str, str]:
    """The stems of what a work is called, each with the word it stands for."""
    text = f"{entry.title} {entry.container_title}"
    kept = frozenset(list_stems(text))
    return {stem(word): word for word in list_words(text) if stem(word) in kept}


def _rank(
    lead: Lead,
    words: dict[str, str],
    asked: Sequence[tuple[Question, frozenset[str]]],
    seen: Counter[str],
    count: int,
    lacking: Sequence[Lacking],
) -> RankedLead:
    weighed: list[tuple[float, str]] = []
    sources = len(lead.sources)
    if sources > 1:
        weighed.append((FURTHER_SOURCE * (min(sources, 4) - 1), f"{count_of(sources, 'source')} of yours point to it"))
    closest = max((_closeness(words, one, stems, seen, count) for one, stems in asked), default=None)
    if closest and closest[0] > 0:
        weighed.append((CLOSEST * closest[0], closest[1]))
    fits = [one for one in lacking if one.fits(lead.entry)]
    if fits:
        guess = ", as far as the reference tells" if "type" in lead.guessed else ""
        weighed.append((MEETS_RULE, f"it is what the sheet still asks for{guess}: {fits[0].says}"))
    weighed.sort(key=lambda one: -one[0])
    return RankedLead(lead, sum(weight for weight, _ in weighed), tuple(reason for _, reason in weighed))


def _closeness(
    words: dict[str, str], question: Question, stems: frozenset[str], seen: Counter[str], count: int
) -> tuple[float, str]:
    """How much of a question's weight a title has, from 0 to 1, rare words weighing more; and the reason in words."""
    shared = sorted(stems & words.keys())
    rarity = {one: math.log1p(count / (1 + seen[one])) for one in stems}
    weight = sum(rarity[one] for one in shared) / (sum(rarity.values()) or 1)
    if len(shared) < min(_ENOUGH, len(stems)) or not shared:
        return 0.0, ""
    named = ", ".join(words[one] for one in sorted(shared, key=lambda one: (-rarity[one], one)))
    return weight, f"its title speaks of {named}, which you ask after: “{question.text}”"
