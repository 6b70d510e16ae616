"""Whole papers with sources: the sample papers and the demo, clean and with faults, and two papers by students."""

from __future__ import annotations

import importlib.util
import json
import shutil
import tempfile
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from types import ModuleType

from fairhand.model.paper import Paper
from fairhand.model.span import Span
from fairhand.session.demo import lay_out_demo
from fairhand.session.opened import OpenPaper
from measuring.corpora import DATA, ROOT
from measuring.tally import Spoiled, Tally, judge_paper

SEEDED = {
    "misquote": "quotation-differs",
    "quote-altered-without-bracket": "quotation-differs",
    "quote-silent-omission": "quotation-gap",
    "quote-wrong-page": "quotation-elsewhere",
    "cite-unresolved": "citation-unknown",
    "cite-ambiguous": "citation-ambiguous",
    "cite-wrong-year": "citation-year",
    "cite-missing-page": "citation-page-missing",
    "doubled-word": "doubled-word",
    "overlap-verbatim": "copied-unmarked",
    "overlap-patchwork": "close-wording",
}
"""Kinds of fault in the sample papers, and the check that should tell each."""
DEMO = (
    ("our faith in", "our trust in", "quotation-differs"),
    ('to read" (3)', 'to read" (2)', "quotation-elsewhere"),
    ("and and", "and", "doubled-word"),
    ('who stood" (Brandvold)', 'who stood" (Brandvold 1)', "citation-page-missing"),
    (" (Sundby 44)", "", "citation-unknown"),
)
"""The demo's faults that a measured check tells, and what mends each."""
DEMO_TIED = "p2"
"""The demo's point whose sources are one witness."""
STUDENTS = (("m00118.cnxml", "MLA", "mla-9"), ("m00062.cnxml", "APA", "apa-7"))


def measure_whole_papers(tally: Tally) -> None:
    """What the checks say of them all."""
    for name, paper, spoiled in (*sample_papers(), *demo_papers(), *student_papers()):
        judge_paper(tally, name, paper, spoiled)


def sample_papers() -> Iterator[tuple[str, Paper, list[Spoiled]]]:
    """The project's sample papers."""
    for folder in sorted((DATA / "papers").iterdir()):
        paper = _open(folder)
        gold = json.loads((folder / "gold.json").read_text("utf-8"))
        tied = [
            Spoiled("point-dependent", None, s["point"]) for s in gold["support"] if s["issue"] == "not-independent"
        ]
        yield f"{folder.name} clean", replace(paper, draft=(folder / "clean.md").read_text("utf-8")), tied
        faults = [
            Spoiled(SEEDED[fault["type"]], _place(paper.draft, fault["quote"]))
            for fault in gold["faults"]
            if fault["type"] in SEEDED
        ]
        yield f"{folder.name} faulty", paper, tied + faults


def demo_papers() -> Iterator[tuple[str, Paper, list[Spoiled]]]:
    """The demo's paper."""
    with tempfile.TemporaryDirectory() as scratch:
        paper = _open(lay_out_demo(Path(scratch) / "desk"))
    tied = [Spoiled("point-dependent", None, DEMO_TIED)]
    mended = paper.draft
    for faulty, right, _ in DEMO:
        mended = mended.replace(faulty, right)
    yield "demo clean", replace(paper, draft=mended), tied
    yield "demo faulty", paper, tied + [Spoiled(check, _place(paper.draft, faulty)) for faulty, _, check in DEMO]


def student_papers() -> Iterator[tuple[str, Paper, list[Spoiled]]]:
    """Two papers by students, with their lists of works; their citations were read and are right."""
    read = _load(ROOT / "tests/outside/test_student_citations.py")
    for file, works, style in STUDENTS:
        manuscript = read.read_paper(DATA / "data/student-papers" / file)
        yield file, Paper(file, manuscript.text, getattr(read, works), style=style), []


def _open(folder: Path) -> Paper:
    """The paper as a session reads it, from a copy, since reading leaves a cache behind."""
    with tempfile.TemporaryDirectory() as scratch:
        copy = Path(shutil.copytree(folder, Path(scratch) / folder.name))
        paper = OpenPaper(copy).look().paper
        return replace(paper, texts={i: paper.texts[i] for i in paper.texts})


def _place(draft: str, words: str) -> Span:
    at = draft.index(words)
    return Span(at, at + len(words))


def _load(path: Path) -> ModuleType:
    """A script, loaded from its file."""
    spec = importlib.util.spec_from_file_location(f"measuring_{path.stem}", path)
    if spec is None or spec.loader is None:
        message = f"{path} cannot be loaded"
        raise ImportError(message)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module
