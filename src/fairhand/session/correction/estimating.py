"""What two passes over one state of the draft leave unseen, it may be."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from fairhand.errors import FairhandError
from fairhand.evidence.share_found import Estimate, estimate_by_two_routes
from fairhand.language.counts import count_of
from fairhand.model.proof_mark import ProofMark, ProofPass, ProofSign
from fairhand.model.span import Span
from fairhand.proof.two_readings import TwoReadings, match_marks, range_of_errors, unseen_by_polya
from fairhand.reading.found_again import find_surely
from fairhand.session.correction.passes import Marking, draft_read

ASSUMES = (
    "This takes the two readings to be independent and every error as easy to see as the next; errors that both see "
    "easily make it too low."
)
"""What the estimate rests on, said beside it."""


@dataclass(frozen=True, slots=True)
class Unseen:
    """What two passes found, and what neither may have seen."""

    passes: tuple[ProofPass, ProofPass]
    readings: TwoReadings
    chapman: Estimate
    polya: float | None
    """Errors that neither saw, by Pólya; None where both saw none in common."""
    low: int
    high: int
    """From how many to how many errors there are in all, nineteen times in twenty."""


def pair_passes(marking: Marking) -> tuple[ProofPass, ProofPass] | None:
    """The last two ended passes that read the same state of the draft for the same; None where there are none."""
    ended = [one for one in marking.passes if one.closed]
    return next(
        (
            (ended[i], later)
            for later in reversed(ended)
            for i in reversed(range(ended.index(later)))
            if later.draft and ended[i].draft == later.draft and ended[i].lapse == later.lapse
        ),
        None,
    )


def estimate_unseen(folder: Path, marking: Marking) -> Unseen:
    """The estimate from the last two passes that can be held against each other.

    Raises:
        FairhandError: There are no two such passes, or the draft that they read is not in the record.
    """
    pair = pair_passes(marking)
    if pair is None:
        message = (
            "two passes that read the same draft, for the same, are needed; "
            "have both readings done, each on its own, before anything is mended"
        )
        raise FairhandError(message)
    draft = draft_read(folder, pair[0])
    limit = min((one.read_to for one in pair if one.read_to[0]), default=None)
    errors = [_errors(marking.of(one), limit) for one in pair]
    printed = sorted({mark.exact for marks in errors for mark in marks})
    first, second = (_place(marks, draft, printed) for marks in errors)
    readings, _ = match_marks(first, second)
    low, high = range_of_errors(readings)
    chapman = estimate_by_two_routes(readings.first, readings.second, readings.both)
    return Unseen(pair, readings, chapman, unseen_by_polya(readings), low, high)


def tell_unseen(unseen: Unseen) -> str:
    """The estimate in words, with its range and its assumption, or that there is too little to tell."""
    readings = unseen.readings
    head = (
        f"The two passes marked {readings.first} and {count_of(readings.second, 'error')}, {readings.both} of them "
        f"alike: {readings.found} in all."
    )
    if not readings.enough:
        return f"{head} Too few were marked by both to tell how many are left."
    low, high = (max(0, end - readings.found) for end in (unseen.low, unseen.high))
    polya = f"{unseen.polya:.1f} by Pólya, " if unseen.polya is not None else ""
    chapman = max(0.0, unseen.chapman.total - readings.found)
    return (
        f"{head} About {chapman:.0f} more may have been seen by neither ({polya}{chapman:.1f} by Chapman, standard "
        f"error {unseen.chapman.error:.1f}); nineteen times in twenty it is between {low} and {high}. {ASSUMES}"
    )


def _errors(marks: Sequence[ProofMark], limit: tuple[int, int] | None) -> list[ProofMark]:
    """The marks on what both read, without those that the writer lets stand: they were no errors."""
    return [mark for mark in marks if mark.fate != "stet" and (not limit or (mark.page, mark.line) <= limit)]


def _place(marks: Sequence[ProofMark], draft: str, printed: Sequence[str]) -> list[tuple[ProofSign, Span]]:
    """Each mark with its place in the draft that was read; what stands in print alone lies beyond it, by its words."""
    places = []
    for mark in marks:
        in_draft = mark.where == "draft.md"
        found = find_surely(draft, mark.exact, mark.before, mark.after) if in_draft else None
        beyond = len(draft) + 10 * (1 + printed.index(mark.exact))
        places.append((mark.sign, found.span if found else Span(beyond, beyond + 1)))
    return places
