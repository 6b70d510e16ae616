"""Whether a source is cited of a kind that the sheet does not allow."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from fairhand.language.folding import fold
from fairhand.model.entry import Entry
from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import CONFIRM, Judgement
from fairhand.readiness.verdicts.sources import marks


def _titled(*words: str) -> Callable[[Entry], bool]:
    """Whether a record's own titles hold one of ``words``."""
    return lambda entry: any(word in fold(f"{entry.title} {entry.container_title}") for word in words)


BANNED: Mapping[str, Callable[[Entry], bool]] = {
    "encyclopedia": lambda e: e.type == "entry-encyclopedia" or _titled("encyclopedia", "encyclopaedia")(e),
    "dictionary": lambda e: e.type == "entry-dictionary" or _titled("dictionary")(e),
    "blog": lambda e: e.type in {"post-weblog", "post"} or _titled("blog")(e),
    "website": lambda e: e.type in {"webpage", "post", "post-weblog"},
    "textbook": _titled("textbook"),
}
"""Which records are of each banned kind, as far as a record can tell."""


def judge(requirement: Requirement, analysis: Analysis) -> Judgement:
    """Whether none of the cited sources is of a banned kind."""
    what = requirement.values.get("what")
    banned = what if isinstance(what, tuple) else (str(what),)
    cited = [entry for entry in analysis.paper.entries if entry.id in analysis.cited]
    caught = [
        f"{analysis.names[entry.id]} ({kind})"
        for kind in banned
        for entry in cited
        if kind in marks(entry) or (kind in BANNED and BANNED[kind](entry))
    ]
    if caught:
        return Judgement("unmet", len(caught), f"Not allowed by the sheet: {', '.join(caught)}.")
    unseen = [kind.replace("-", " ") for kind in banned if kind not in BANNED]
    if unseen:
        return Judgement("ask", None, f"No record tells whether a source is {' or '.join(unseen)}. {CONFIRM}")
    return Judgement("met", 0, "No source cited is of a kind that the sheet bars, as far as the records tell.")
