"""The marks of the proof with their places in it, and what each would make of its passage of the draft."""

from __future__ import annotations

from dataclasses import dataclass, replace

from fairhand.manuscript.parts import Manuscript
from fairhand.model.proof_mark import ProofMark
from fairhand.model.span import Span
from fairhand.proof.mending import mend_text
from fairhand.proof.passages import count_alike, list_passages, passage_at
from fairhand.proof.placing import Proofed, find_in_proof, find_mark, read_type
from fairhand.proof.telling import tell_mark
from fairhand.reading.found_again import Place
from fairhand.session.correction.passes import Marking


@dataclass(frozen=True)
class ShownMark:
    """One mark as it is shown."""

    number: int
    mark: ProofMark
    told: str
    place: Span | None
    """Where it stands in the proof's text."""
    passage: str = ""
    """The passage of the draft that holds its words; empty where none does."""
    mended: str = ""
    """The same with the mark carried out, as far as it says how."""
    alike: tuple[int, int] = (0, 1)
    """Which of the passages that read alike it is, from 0, and how many they are."""

    @property
    def sign(self) -> str:
        """Its sign's name, as the look has it."""
        return self.mark.sign.replace(" ", "-")


def show_marks(manuscript: Manuscript, marking: Marking, proof: Proofed, chosen: int = 0) -> tuple[ShownMark, ...]:
    """The marks of the pass under way, or, where none is, those still to be gone through, in the proof's order.

    Args:
        manuscript: The draft.
        marking: Its passes and their marks.
        proof: The proof's lines.
        chosen: The number of a mark that is shown too, though it was gone through.
    """
    draft = manuscript.text
    type_, passages = read_type(manuscript), list_passages(manuscript)
    wanted = marking.shown if marking.under_way else marking.open
    out = []
    for n, one in [*wanted, *(each for each in marking.shown if each[0] == chosen and each not in wanted)]:
        found, printed = find_mark(one, draft), find_in_proof(one, type_, draft, proof)
        sure = found.sure if found else None
        shown = ShownMark(n, one, tell_mark(one, sure=sure), printed.span if printed and printed.sure else None)
        passage = passage_at(passages, found.span) if found else None
        if found and passage and not marking.under_way:
            now, alike = _mended(draft, passage, found, one), count_alike(passages, draft, passage)
            shown = replace(shown, passage=passage.of(draft), mended=now, alike=alike)
        out.append(shown)
    return tuple(sorted(out, key=lambda each: (each.place is None, each.place or Span(0, 0), each.number)))


def _mended(draft: str, passage: Span, found: Place, mark: ProofMark) -> str:
    """The passage with the mark carried out; as it stands where its place is not sure, or the wording the writer's."""
    now = mend_text(draft, found.span, mark) if found.sure and passage.contains(found.span) else None
    if now is None or not now.startswith(draft[: passage.start]) or not now.endswith(draft[passage.end :]):
        return passage.of(draft)
    return now[passage.start : len(now) - len(draft) + passage.end]
