"""The verdict as plain values: printed as JSON, shown on the terminal, kept between one run and the next."""

from __future__ import annotations

from typing import Any

from fairhand.model.finding import Finding
from fairhand.model.requirement import Requirement
from fairhand.model.span import Span, line_at
from fairhand.readiness.judgement import Judged
from fairhand.readiness.verdict import Verdict


def tell(verdict: Verdict) -> dict[str, Any]:
    """The verdict as plain values, with all that the terminal shows.

    Offsets are code points of the draft; ``line`` counts from 1; a finding on the whole document has no place.
    """
    return {
        "verdict": verdict.answer,
        "pages": verdict.measured.sheets if verdict.measured else None,
        "words": {"counted": verdict.words.counted, "by": verdict.words_by, "excluded": dict(verdict.words.excluded)},
        "requirements": [_tell_requirement(j) for j in verdict.judged],
        "findings": [_tell_finding(f, verdict.draft) for f in verdict.findings],
        "stets": [_tell_finding(s.finding, verdict.draft) | {"reason": s.stet.reason} for s in verdict.stets],
        "title": verdict.title,
        "style": verdict.style,
        "next": verdict.next_step,
        "step": {"says": verdict.step.says, "leaf": verdict.step.leaf, "why": verdict.step.why},
        "problems": [str(p) for p in verdict.problems],
        "answered": list(verdict.answered),
        "time_zone": verdict.time_zone,
        "has_draft": bool(verdict.draft.strip()),
    }


def _tell_requirement(judged: Judged) -> dict[str, Any]:
    requirement, judgement = judged.requirement, judged.judgement
    return {
        "kind": requirement.kind,
        **_plain_values(requirement),
        "evidence": requirement.evidence,
        "id": requirement.id,
        "force": requirement.force,
        "state": judgement.state,
        "measured": judgement.measured,
        "why": judgement.why,
    }


def _plain_values(requirement: Requirement) -> dict[str, Any]:
    return {k: list(v) if isinstance(v, tuple) else v for k, v in requirement.values.items()}


def _tell_finding(finding: Finding, draft: str) -> dict[str, Any]:
    span, wordings = finding.span, finding.wordings
    return {
        "check": finding.check,
        "pass": finding.in_pass,
        "weight": finding.weight,
        "start": span.start if span else None,
        "end": span.end if span else None,
        "line": line_at(draft, span.start) if span else None,
        "quote": span.of(draft) if span else None,
        "says": finding.says,
        "source": finding.rule,
        "wordings": None
        if wordings is None
        else {
            "draft": mark_differences(wordings.draft, wordings.draft_differs),
            "source": mark_differences(wordings.source, wordings.source_differs),
        },
    }


def mark_differences(text: str, differs: tuple[Span, ...], around: int = 8) -> str:
    """A wording in which what differs stands between half brackets, with some words around it.

    >>> mark_differences("the hard edge of the storm", (Span(4, 8),))
    'the ⸢hard⸣ edge of the storm'
    """
    if not differs:
        return " ".join(text.split())
    out, at = [], 0
    for span in sorted(differs):
        out += [text[at : span.start], "⸢", span.of(text), "⸣"]
        at = span.end
    words = "".join([*out, text[at:]]).split()
    touched = [n for n, word in enumerate(words) if "⸢" in word or "⸣" in word]
    first, last = max(0, touched[0] - around), min(len(words), touched[-1] + around + 1)
    return f"{'… ' if first else ''}{' '.join(words[first:last])}{' …' if last < len(words) else ''}"
