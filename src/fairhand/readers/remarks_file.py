"""What readers wrote, kept in ``marks.jsonl`` among whatever else is annotated: one W3C Web Annotation a line.

A line that is no remark, or that cannot be read, is kept as it stands.

**Source**: W3C Web Annotation Data Model (2017), sections 3.2.4, 3.3.1, 3.3.5 and 4.2.4.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from fairhand.language.line_files import load_record
from fairhand.readers.gathering import RULINGS, Kind, ReaderRemark, Ruling
from fairhand.reading.annotation_line import first_said, maker_of, quote_of, write_annotation

REMARK = "remark"
"""The tag that tells a reader's remark from whatever else may be annotated."""
KINDS: tuple[Kind, ...] = ("comment", "insertion", "deletion", "substitution")


def read_remarks(text: str) -> tuple[ReaderRemark, ...]:
    """The remarks in the order of the file; what else stands in it is passed over.

    >>> read_remarks(put_remarks("", [ReaderRemark("comment", "Why?", "tide", reader="Ines Mora")]))[0].said
    'Why?'
    """
    found = (_read_line(line) for line in text.split("\n") if f'"{REMARK}"' in line)
    return tuple(one for one in found if one is not None)


def put_remarks(text: str, remarks: Iterable[ReaderRemark]) -> str:
    """The file's text with the remarks; one that is there already keeps its place and the writer's word on it."""
    there = {one.id for one in read_remarks(text)}
    out = text if not text or text.endswith("\n") else text + "\n"
    for one in remarks:
        if one.id not in there:
            there.add(one.id)
            out += _tell(one) + "\n"
    return out


def rule_remark(text: str, name: str, ruling: Ruling, why: str = "") -> str:
    """The file's text with the writer's word on the remark of that ``id``; every other line stands as it was."""
    lines = []
    for line in text.split("\n"):
        one = _read_line(line) if f'"{REMARK}"' in line else None
        lines.append(_tell(replace(one, ruling=ruling, why=why)) if one is not None and one.id == name else line)
    return "\n".join(lines)


def _tell(remark: ReaderRemark) -> str:
    """A remark as an annotation."""
    said = [("tagging", REMARK), ("classifying", remark.kind), ("commenting", remark.said)]
    said += [("identifying", remark.reader), ("replying", remark.answers)]
    said += [("moderating", remark.ruling), ("describing", remark.why)]
    quote: dict[str, object] = {"exact": remark.exact, "prefix": remark.before, "suffix": remark.after}
    if remark.at >= 0:
        quote["refinedBy"] = {"type": "TextPositionSelector", "start": remark.at, "end": remark.at}
    motivation = "commenting" if remark.kind == "comment" else "editing"
    return write_annotation(motivation, said, quote, by=remark.by, created=remark.when, via=remark.file)


def _read_line(line: str) -> ReaderRemark | None:
    """The remark that a line holds; None where it holds none."""
    found = load_record(line)
    said, quote = first_said(found), quote_of(found)
    if said.get("tagging") != REMARK:
        return None
    refined = quote.get("refinedBy")
    at = refined.get("start") if isinstance(refined, Mapping) else None
    kind = next((one for one in KINDS if one == said.get("classifying")), KINDS[0])
    ruling: Ruling = next((one for one in RULINGS if one == said.get("moderating")), "")
    return ReaderRemark(
        kind=kind,
        said=said.get("commenting", ""),
        exact=str(quote.get("exact", "")),
        before=str(quote.get("prefix", "")),
        after=str(quote.get("suffix", "")),
        at=at if isinstance(at, int) else -1,
        reader=said.get("identifying", ""),
        by=maker_of(found),
        when=str(found.get("created", "")),
        file=str(found.get("via", "")),
        answers=said.get("replying", ""),
        ruling=ruling,
        why=said.get("describing", ""),
    )
