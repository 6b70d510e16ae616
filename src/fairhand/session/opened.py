"""A paper that is open: read from its folder, judged and printed, what has not changed never worked out again."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from fairhand.desk.cache import fingerprint
from fairhand.desk.clock import now
from fairhand.desk.paper_files import PaperFiles, read_paper
from fairhand.errors import EngineFailed
from fairhand.fair_copy.document import FairCopy
from fairhand.model.paper import Paper
from fairhand.model.problem import Problem
from fairhand.readiness.analysis import Analysis, Measured
from fairhand.session.ahead import Ahead
from fairhand.session.engines import Engines
from fairhand.session.fair import begin_citations, make_fair_copy
from fairhand.session.loading import load_brief, load_to_cite
from fairhand.session.parses import Parses
from fairhand.session.texts import SourceTexts

if TYPE_CHECKING:
    from fairhand.readiness.verdict import Verdict


class OpenPaper:
    """One paper, kept warm between one question and the next.

    Args:
        folder: The paper's folder.
        at: The hour to judge deadlines by; the clock's, where it is None.
        draft: The text of another draft, judged in place of the folder's own.
    """

    def __init__(self, folder: Path, *, at: dt.datetime | None = None, draft: str | None = None) -> None:
        """Nothing is read yet."""
        self.folder = folder
        self.engines = Engines(folder)
        self._parses = Parses(folder)
        self._at = at
        self._draft = draft
        self._seen = ""
        self._files: PaperFiles | None = None
        self._texts: SourceTexts | None = None
        self._analysis: Analysis | None = None
        self._pages: Ahead[Measured | None] | None = None
        self._verdict: Verdict | None = None
        self._problems: list[Problem] = []

    def look(self) -> Analysis:
        """The paper as its folder now stands; read again only where a file has changed."""
        return self._look()

    @property
    def state(self) -> str:
        """A hash of the paper's files as they were last read."""
        self.look()
        return self._seen

    @property
    def source_texts(self) -> SourceTexts:
        """The sources' texts, of files and records as they now stand."""
        self.look()
        if self._texts is None:
            message = "the paper was not read yet"
            raise RuntimeError(message)
        return self._texts

    @property
    def text_problems(self) -> tuple[Problem, ...]:
        """What went wrong with the sources' texts that were read so far."""
        return tuple(self._texts.problems) if self._texts else ()

    def with_draft(self, draft: str) -> Analysis:
        """The paper with another draft in place of the one on disk, as while it is being written."""
        if self._draft != draft:
            self._draft = draft
            if self._analysis is not None:
                self._set(replace(self._analysis.paper, draft=draft))
        return self.look()

    def verdict(self) -> Verdict:
        """Whether the paper is ready, with the working; the engines set its pages while the rest is judged."""
        analysis = self._look(to_judge=True)
        if self._verdict is None:
            _ = analysis.resolved  # what the engines and the checks both need
            if self._pages is not None:
                self._pages.begin()
            from fairhand.readiness.verdict import judge_paper  # while the engines are at work

            judged = judge_paper(analysis)
            problems = (*judged.problems, *self.text_problems, *self._problems)
            self._verdict = replace(judged, problems=tuple(dict.fromkeys(problems)))
        return self._verdict

    def fair_copy(self, *, proof: bool = False) -> FairCopy:
        """The paper as it is handed in, before it is set in any format.

        Raises:
            EngineFailed: Pandoc refused the citations.
        """
        return make_fair_copy(self.look(), self.engines, proof=proof)

    def _look(self, *, to_judge: bool = False) -> Analysis:
        """The paper as it stands; where it is to be judged, pandoc is at work before the whole of its brief is read."""
        seen = fingerprint(self.folder)
        if self._analysis is None or seen != self._seen:
            files = read_paper(self.folder)
            paper = load_to_cite(files, self._texts_of(files), self._at or now(files.desk.time_zone))
            if self._draft is not None:
                paper = replace(paper, draft=self._draft)
            first = Analysis(paper, lambda _: None)
            if to_judge and paper.draft.strip():
                begin_citations(first, self.engines)
                self._parses.begin([each.text for each in first.sentences_shown])
            self._files, self._seen = files, seen
            self._set(load_brief(paper, files)).take_over(first)
        return self._known

    @property
    def _known(self) -> Analysis:
        if self._analysis is None:
            message = "the paper was not read yet"
            raise RuntimeError(message)
        return self._analysis

    def _set(self, paper: Paper) -> Analysis:
        pages = Ahead(lambda: self._measure(analysis))
        self._analysis = analysis = Analysis(paper, lambda _: pages.result(), self._parses.parse)
        self._pages = pages
        self._verdict = None
        self._problems = []
        return analysis

    def _texts_of(self, files: PaperFiles) -> SourceTexts:
        """The sources' texts; those that were read stay, unless a source's file has changed."""
        if self._texts is None or self._texts.files.sources != files.sources:
            self._texts = SourceTexts(files)
        return self._texts

    def _measure(self, analysis: Analysis) -> Measured | None:
        """The paper's pages by typesetting; where an engine fails, that is told and nothing is measured."""
        if not analysis.paper.draft.strip():
            return None
        from fairhand.fair_copy.casting_off import body_pages
        from fairhand.fair_copy.typesetting import to_typst

        try:
            copy = make_fair_copy(analysis, self.engines)
            pages = self.engines.typeset(to_typst(copy))
        except EngineFailed as error:
            self._problems.append(Problem("the fair copy", str(error), "the pages were not measured"))
            return None
        return Measured(pages.pages, body_pages(pages, copy.layout, analysis.length_excludes))
