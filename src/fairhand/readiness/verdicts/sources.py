"""Whether enough sources of the right kind and age are cited.

A source counts when the draft cites it. Its kind is read off its record (CSL type); what a record cannot tell (whether
an article was peer-reviewed, whether a letter is a primary source for this paper) is said, and asked where it decides.
A source may be marked by the writer in its record: ``"custom": {"kind": "primary"}`` (a word, or a list of words).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from fairhand.language.counts import count_of
from fairhand.model.entry import Entry
from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import Judgement, State

ARTICLES = frozenset({"article-journal", "article", "paper-conference", "review"})
SCHOLARLY = ARTICLES | {"book", "chapter", "thesis", "report", "monograph", "collection", "entry-encyclopedia"}
NEWS = frozenset({"article-newspaper", "article-magazine", "broadcast"})
DOCUMENTS = frozenset(
    {
        "manuscript",
        "legal_case",
        "legislation",
        "treaty",
        "interview",
        "personal_communication",
        "hearing",
        "bill",
        "map",
    }
)
ONLINE_ONLY = frozenset({"webpage", "post", "post-weblog", "software", "dataset"})

KINDS: Mapping[str, Callable[[Entry], bool]] = {
    "any": lambda _: True,
    "outside": lambda entry: "course-readings" not in marks(entry),
    "scholarly": lambda entry: entry.type in SCHOLARLY - {"entry-encyclopedia"},
    "peer-reviewed": lambda entry: entry.type in ARTICLES,
    "article": lambda entry: entry.type in ARTICLES | {"chapter"},
    "book": lambda entry: entry.type in {"book", "chapter", "monograph", "collection"},
    "primary": lambda entry: entry.type in DOCUMENTS,
    "news": lambda entry: entry.type in NEWS,
    "print": lambda entry: entry.type not in ONLINE_ONLY,
    "data": lambda entry: entry.type == "dataset",
    "website": lambda entry: entry.type in {"webpage", "post", "post-weblog"},
}
"""Which records are of each kind that a sheet names."""

UNSURE = frozenset({"primary", "outside", "data", "peer-reviewed"})
"""Kinds that a record cannot settle by itself."""


def marks(entry: Entry) -> frozenset[str]:
    """The kinds that the writer has marked the source with."""
    custom = entry.csl.get("custom")
    kind = custom.get("kind") if isinstance(custom, Mapping) else None
    if isinstance(kind, str):
        return frozenset({kind})
    return frozenset(map(str, kind)) if isinstance(kind, list | tuple) else frozenset()


def judge(requirement: Requirement, analysis: Analysis) -> Judgement:
    """How many cited sources are of the kind and age that the sheet asks."""
    values = requirement.values
    kind = str(values.get("type") or "any")
    cited = [entry for entry in analysis.paper.entries if entry.id in analysis.cited]
    fit = [entry for entry in cited if is_asked(entry, requirement)]
    low, high = values.get("min"), values.get("max")
    named = ", ".join(analysis.names[entry.id] for entry in fit)
    what = "source" if kind == "any" else f"{kind} source"
    since = f" since {values['since']}" if values.get("since") else ""
    told = f"{count_of(len(fit), what)}{since} cited" + (f": {named}" if named and kind != "any" else "")
    state: State = "met"
    if isinstance(low, int | float) and len(fit) < low:
        state = "ask" if kind in UNSURE - {"peer-reviewed"} and len(cited) >= low else "unmet"
        told += f"; the sheet wants {'at least ' if high != low else ''}{low:g}"
        if state == "ask":
            told += (
                '. A record cannot tell: mark each one of yours in sources.json ("custom": {"kind": "' + kind + '"})'
            )
    elif isinstance(high, int | float) and len(fit) > high:
        state = "unmet"
        told += f"; the sheet allows at most {high:g}"
    elif kind == "peer-reviewed":
        told += "; whether each was peer-reviewed, its journal tells"
    if values.get("cited") == "all" and state == "met":
        uncited = [entry for entry in analysis.paper.entries if entry.id not in analysis.cited]
        if uncited:
            state, told = "unmet", f"{told}; never cited: {', '.join(analysis.names[e.id] for e in uncited)}"
    return Judgement(state, len(fit), told + ".")


def is_asked(entry: Entry, requirement: Requirement) -> bool:
    """Whether a source is of the kind and age that the sheet asks, as far as its record tells."""
    kind = str(requirement.values.get("type") or "any")
    is_kind = KINDS.get(kind, KINDS["any"])
    return (kind in marks(entry) or is_kind(entry)) and _young_enough(entry, requirement.values.get("since"))


def _young_enough(entry: Entry, since: object) -> bool:
    """Whether the work appeared in the year named or later; a work without a year cannot show it."""
    if not isinstance(since, int | float):
        return True
    return entry.issued is not None and entry.issued.year is not None and entry.issued.year >= since
