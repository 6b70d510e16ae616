"""Faults of grammar set into found prose, as seldom as one in so many words, and what the checks say at their places.

A joining word's clause is cut off as a sentence, two sentences are joined by a comma, a verb is given the other number
or a past form, a noun after a number loses its plural. The paragraph alone is read then; what the checks say of the
prose as it stands is counted as it was read (``found_prose``).
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from dataclasses import dataclass

from fairhand.copyedit.grammar.number import singulars_of
from fairhand.language.lexicon import find_word
from fairhand.model.paper import Paper
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS
from measuring.comma_faults import spoil_commas
from measuring.corpora import Found, prose
from measuring.found_prose import alarms_read, listen
from measuring.sentence_faults import set_in_sentences
from measuring.signs_faults import spoil_signs
from measuring.tally import PARSING, Tally

WORDS_TO_A_FAULT = 10_000
"""Words of prose to one fault of each kind."""
_OTHER = {"is": "are", "are": "is", "was": "were", "were": "was", "has": "have", "have": "has"}
_CUT = re.compile(
    r"(?<=[a-z]{2}),?(?<! in)(?<! at)(?<! on)(?<! of)(?<! by)(?<! or)(?<! for)(?<! and)(?<! but)(?<! from)(?<! with)"
    r" (because|although|whereas|while|since|unless|until|especially|such as|which)"
    r" ((?:[a-z’'-]+,? ){4,24}[a-z’'-]+\.)(?=\s|\Z)"
)
_TWO = re.compile(r"(?<=[a-z]{2})\. (The|This|These|It|They|He|She|We|There|However,|Some|Many|Their|Its)(?= [a-z])")
_VERB = re.compile(
    r"(?<=[a-z] )(?:The|the|These|these|This|this|Their|their) (?:[a-z]+ ){1,6}(is|are|was|were|has|have)(?= [a-z])"
)
_BARE_AFTER = frozenset("can could will would should may might must to not".split())
_PAST = {
    "have": "has",
    "go": "went",
    "take": "took",
    "give": "gave",
    "see": "saw",
    "know": "knew",
    "become": "became",
    "make": "made",
    "show": "shows",
    "lead": "led",
    "gone": "went",
    "taken": "took",
    "given": "gave",
    "seen": "saw",
    "known": "knew",
    "written": "wrote",
    "chosen": "chose",
    "grown": "grew",
    "done": "did",
    "begun": "began",
}
_FORM = re.compile(
    r"(?<= )(?:(?:can|could|will|would|should|may|might|must|did not|does not)"
    r" (have|go|take|give|see|know|become|make|show)"
    r"|(?:has|have|had) (gone|taken|given|seen|known|written|chosen|grown|done|begun))(?= )"
)
_PLURAL = re.compile(
    r"\b(?:two|three|four|five|six|several|many|these|those|various|both)"
    r" (?:[a-z]+ )?([a-z]{3,}(?:[^s]s|sses|shes|ches|xes))(?=[ ,.])"
)


@dataclass(frozen=True, slots=True)
class Fault:
    """A paragraph with a fault set into it."""

    check: str
    draft: str
    place: Span


def set_in(paragraph: str) -> Iterator[Fault]:
    """Each fault that can be set into a paragraph."""
    for cut in _CUT.finditer(paragraph):
        sentence = re.split(r"[.?!] ", paragraph[: cut.start()])[-1]
        goes_on = cut[1] in ("which", "such as") and "," in cut[2]
        if len(sentence.split()) < 5 or goes_on:
            continue  # the rest of its sentence would be cut off with it
        opens = cut[1][0].upper() + cut[1][1:]
        draft = f"{paragraph[: cut.start()]}. {opens} {cut[2]}{paragraph[cut.end() :]}"
        yield Fault("fragment", draft, Span(cut.start() + 2, cut.start() + 3 + len(opens) + len(cut[2])))
    for two in _TWO.finditer(paragraph):
        draft = f"{paragraph[: two.start()]}, {two[1][0].lower()}{paragraph[two.start(1) + 1 :]}"
        yield Fault("comma-splice", draft, Span(two.start(), two.end()))
    for verb in _VERB.finditer(paragraph):
        if paragraph[: verb.start(1)].rsplit(maxsplit=1)[-1] in _BARE_AFTER:
            continue  # that is another fault
        draft = f"{paragraph[: verb.start(1)]}{_OTHER[verb[1]]}{paragraph[verb.end(1) :]}"
        yield Fault("agreement", draft, Span(verb.start(1), verb.start(1) + len(_OTHER[verb[1]])))
    for form in _FORM.finditer(paragraph):
        at = form.start(1) if form[1] else form.start(2)
        past = _PAST[form[1] or form[2]]
        draft = f"{paragraph[:at]}{past}{paragraph[form.end() :]}"
        yield Fault("verb-form", draft, Span(at, at + len(past)))
    for noun in _PLURAL.finditer(paragraph):
        known = filter(None, map(find_word, singulars_of(noun[1])))
        one = max(known, key=lambda each: each.weight, default=None)
        if one is None:
            continue
        draft = paragraph[: noun.start(1)] + one.text + paragraph[noun.end() :]
        yield Fault("plural-missing", draft, Span(noun.start(1), noun.start(1) + len(one.text)))
    for check, draft, start, end in spoil_signs(paragraph):
        yield Fault(check, draft, Span(start, end))
    for check, draft, start, end in set_in_sentences(paragraph):
        yield Fault(check, draft, Span(start, end))
    for check, draft, start, end in spoil_commas(paragraph):
        yield Fault(check, draft, Span(start, end))


def measure_grammar(tally: Tally, share: float = 1.0, seed: int = 5) -> None:
    """What the checks say of the prose as it stands, by what was read, and at the faults set into it.

    Args:
        tally: Where it is counted.
        share: The share of the faults that are set in.
        seed: Of the sample.
    """
    rng = random.Random(seed)  # noqa: S311 - a sample
    read = alarms_read()
    for heard in listen():
        if heard.finding.check in PARSING:
            tally.count(heard.finding.check, right=read.get(heard.key, False))
    for check, faults in _sampled(rng, share):
        for fault, found in faults:
            _hear(tally, fault, found, check)


def _sampled(rng: random.Random, share: float) -> Iterator[tuple[str, list[tuple[Fault, Found]]]]:
    """By check, the faults of a sample: one in so many words."""
    every: dict[str, list[tuple[Fault, Found]]] = {check: [] for check in PARSING}
    words = 0
    for found in prose():
        if found.corpus == "learners' sentences":
            continue
        for paragraph in found.paragraphs:
            words += len(paragraph.split())
            for fault in set_in(paragraph):
                every[fault.check].append((fault, found))
    for check, faults in every.items():
        yield check, rng.sample(faults, min(len(faults), round(share * words / WORDS_TO_A_FAULT)))


def _hear(tally: Tally, fault: Fault, found: Found, check: str) -> None:
    """What the check says of one paragraph with its fault."""
    analysis = Analysis(Paper(found.name, fault.draft, ()), lambda _: None)
    told = [
        finding
        for finding in run_checks(analysis, [one for one in CHECKS if one.name == check], allowed=lambda _: "must")
        if finding.span is not None and finding.span.overlaps(fault.place)
    ]
    tally.spoiled[check] += 1
    tally.seen[check] += bool(told)
    for _ in told:
        tally.count(check, right=True)
    if not told:
        tally.missed.append((check, found.name, fault.draft[max(0, fault.place.start - 60) : fault.place.end + 60]))
