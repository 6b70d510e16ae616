"""Whether two sources report one study or one body of data: it is named in both as what they rest on.

A number under which a trial or a body of data is registered tells by itself. A name tells only where the sentence says
that it is the work's own matter; that both know of a well-known survey is no tie.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from fairhand.evidence.passage import Passage, show_whole
from fairhand.evidence.sentence import sentence_around
from fairhand.model.source import SourceText
from fairhand.model.span import Span

_REGISTERED = re.compile(
    r"\b(?:NCT\d{8}|ISRCTN\d{6,8}|ACTRN\d{14}|EUCTR\d{4}-\d{6}-\d{2}|CRD\d{11}|PRJ(?:NA|EB|DB)\d{3,9}|GSE\d{3,7}|"
    r"phs\d{6}|E-[A-Z]{4}-\d{1,6}|ICPSR \d{4,6}|UKDA \d{4,6})\b"
)
_STUDY = (
    "Survey|Study|Trial|Cohort|Census|Panel|Archive|Data ?set|Register|Registry|Experiment|Poll|Ledgers?|Diar(?:y|ies)"
)
_NAMED = re.compile(
    rf"(?<![\w.])(?:[A-Z][\w’'-]+\s+(?:(?:and|of|for|the|on|in|de)\s+){{0,2}}){{2,7}}(?:[a-z-]+\s+){{0,2}}"
    rf"(?i:{_STUDY})(?!\w)"
    rf"|(?<![\w.])(?i:{_STUDY})s?\s+of\s+(?:the\s+)?[A-Z][\w’'-]+(?:\s+(?:and\s+|of\s+|the\s+)?[A-Z][\w’'-]+){{1,5}}"
)
_OWN = re.compile(
    r"\b(?:we|our|I|my|this (?:study|report|article|paper|thesis|chapter|book|dissertation|survey|analysis|trial)|"
    r"here reported|reported here|the present)\b",
    re.IGNORECASE,
)
_MATTER = re.compile(
    r"\b(?:data|sampl\w+|participants|respondents|results?|figures|measur\w+|record\w*|interview\w*|survey\w*|collected|"
    r"monitor\w*|analy[sz]\w+|transcri\w+|estimat\w+|tables?|entries|used?|using|drawn?|based|rel(?:y|ies|ied)|report\w*|"
    r"trial|observ\w+|counted)\b",
    re.IGNORECASE,
)
_GENERIC = re.compile(
    r"the|a|an|in|this|that|our|of|and|for|on|data|set|"
    r"(?:study|trial|survey|cohort|census|panel|archive|register|experiment|poll|ledger)s?|"
    r"present|current|previous|pilot|cases?|cross|sectional|cross-sectional|control\w*|randomi[sz]ed|clinical|national|"
    r"supplementary|qualitative|quantitative|descriptive|longitudinal|prospective|retrospective|comparative|multicent\w+|"
    r"phase|double|blind|open|label|observational|experimental|field|[ivx]+|\d+",
    re.IGNORECASE,
)
"""Words that any study may be called by."""


def find_same_study(one: SourceText, other: SourceText) -> tuple[str, Passage, Passage] | None:
    """What study or body of data both rest on, and where each says so; None where none is named in both."""
    here, there = _studies(one), _studies(other)
    for name in here:
        if name in there:
            said, page, span = here[name]
            _, page_there, span_there = there[name]
            return said, show_whole(one, page, span), show_whole(other, page_there, span_there)
    return None


@lru_cache(maxsize=256)
def _studies(text: SourceText) -> dict[str, tuple[str, int, Span]]:
    """Each study that a text rests on: how it is named, and where that is said."""
    found: dict[str, tuple[str, int, Span]] = {}
    for name, said, page, span in _named(text):
        found.setdefault(name, (said, page, span))
    return found


def _named(text: SourceText) -> Iterator[tuple[str, str, int, Span]]:
    for number, page in enumerate(text.pages):
        for registered in _REGISTERED.finditer(page.text):
            sentence = sentence_around(page.text, registered.start())
            yield registered.group(), registered.group(), number, sentence
        for named in _NAMED.finditer(page.text):
            words = " ".join(named.group().split())
            telling = [w for w in re.findall(r"[\w’'-]+", words) if not _GENERIC.fullmatch(w)]
            if len(telling) < 2:
                continue
            sentence = sentence_around(page.text, named.start())
            said = sentence.of(page.text)
            if _OWN.search(said) and _MATTER.search(said):
                yield " ".join(telling).casefold(), words.removeprefix("The "), number, sentence
