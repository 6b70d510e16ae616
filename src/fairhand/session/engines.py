"""Runs of pandoc and typst, each remembered by what was asked, so that what did not change is not asked again."""

from __future__ import annotations

import hashlib
from collections import OrderedDict
from pathlib import Path
from typing import TypeVar

from fairhand.desk.cache import keep_cached, read_cached
from fairhand.errors import EngineFailed
from fairhand.model.request import PandocRequest, Typeset, TypesetJob
from fairhand.session.ahead import Ahead

T = TypeVar("T")
ANSWERS_KEPT = 8
"""How many answers of each engine are kept in memory."""


class Engines:
    """The engines as one open paper uses them.

    Args:
        folder: The paper's folder, in whose cache pandoc's answers outlive the process.
    """

    def __init__(self, folder: Path) -> None:
        """Nothing has been asked yet."""
        self._folder = folder
        self._answers: OrderedDict[str, Ahead[bytes]] = OrderedDict()
        self._pages: OrderedDict[str, Typeset] = OrderedDict()

    def begin_pandoc(self, request: PandocRequest, key: str) -> Ahead[bytes]:
        """Pandoc is at work on the request, unless ``key`` was asked before."""
        answer = self._answers.get(key) or Ahead(lambda: self._run_pandoc(request, key))
        answer.begin()
        return _keep(self._answers, key, answer)

    def ask_pandoc(self, request: PandocRequest, key: str) -> bytes:
        """Pandoc's answer, from memory or the paper's cache where ``key`` was asked before.

        Raises:
            EngineFailed: Pandoc refused the request.
        """
        try:
            return self.begin_pandoc(request, key).result()
        except EngineFailed:
            self._answers.pop(key, None)
            raise

    def _run_pandoc(self, request: PandocRequest, key: str) -> bytes:
        kept = read_cached(self._folder, f"pandoc-{key}")
        if kept is not None:
            return kept
        from fairhand.press.pandoc import run_pandoc

        answer = run_pandoc(request)
        keep_cached(self._folder, f"pandoc-{key}", answer)
        return answer

    def typeset(self, job: TypesetJob) -> Typeset:
        """The pages of ``job``, from memory where the very same was set before.

        Raises:
            EngineFailed: Typst refused the source.
        """
        digest = hashlib.sha256(job.source.encode())
        for name, data in sorted(job.files.items()):
            digest.update(f"\0{name}\0{len(data)}\0".encode())
            digest.update(data)
        key = f"{digest.hexdigest()} {job.dated}"
        known = self._pages.get(key)
        if known is None:
            from fairhand.press.typst_press import typeset

            known = typeset(job)
        return _keep(self._pages, key, known)


def _keep(kept: OrderedDict[str, T], key: str, value: T) -> T:
    """Puts the value last among those kept, and lets the one longest unasked go."""
    kept[key] = value
    kept.move_to_end(key)
    while len(kept) > ANSWERS_KEPT:
        kept.popitem(last=False)
    return value
