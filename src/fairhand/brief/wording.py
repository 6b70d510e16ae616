"""How a sheet's wording asks: must, should or may; and what it merely tells."""

from __future__ import annotations

import re
from collections.abc import Mapping

from fairhand.brief.layout import Sheet
from fairhand.model.requirement import Force, Kind, Requirement, Value
from fairhand.model.span import Span

_MAY = re.compile(
    r"\b(?:may|can|could|might|optional(?:ly)?|if you (?:like|wish|want)|are free to|welcome to|feel free"
    r"|is (?:allowed|permitted))\b",
    re.IGNORECASE,
)
_MUST = re.compile(
    r"\b(?:must|required?|requirements?|have to|has to|need(?:s|ed)? to|shall|may not|cannot|can't"
    r"|not (?:be )?(?:accepted|permitted|allowed)"
    r"|do not|don't|never|mandatory|compulsory|at least|no (?:fewer|less|more))\b",
    re.IGNORECASE,
)
_SHOULD = re.compile(
    r"\b(?:should|ought to|expected|please|aim (?:for|to)|try to|ideally|prefer(?:red|ably|able)?|recommend(?:ed)?"
    r"|encouraged?|advisable|suggest(?:ed)?)\b",
    re.IGNORECASE,
)

TOLD = re.compile(
    r"\b(?:last (?:year|spring|summer|autumn|fall|winter|term|semester|time|week)(?:'s)?"
    r"|next (?:year|term|semester)|in (?:past|previous|recent"
    r"|earlier) years?"
    r"|past papers?|previous (?:years?|cohorts?|students?|papers?|essays?)|years? ago|old (?:copies|limit|sheet)"
    r"|older (?:limit|rules?)"
    r"|samples?|specimens?|exemplars?|model (?:essay|paper|answer|report)s?|averaged|an example of"
    r"|examples? (?:abstract|essay|paper|on the)s?"
    r"|(?:essays|papers|articles|books|pieces) (?:that )?we (?:read|have read|will read)|as if|for instance|imagine"
    r"|(?:wrote|spent|used) (?:\w+ ){0,3}\d)\b",
    re.IGNORECASE,
)
"""Marks of a sentence that tells of other years, other papers or models, and asks nothing."""

READING = re.compile(
    r"\b(?:(?:to|for \w+ )read\b|^read\b|readings? (?:for|runs|is|are)|of reading|reading group|handbook|textbook has"
    r"|chapters?|survey article|extract|per class|a week\b"
    r"|the anthology|lecture|seminar|tutorial|laboratory report|lab report|examination|exam\b|quiz|permission"
    r"|letter|leaflet)",
    re.IGNORECASE,
)
"""Marks of a sentence about the course's reading, teaching or other work."""

ADVICE = re.compile(
    r"\b(?:advice|tips?|hints?|picking|choosing a|(?:on|about) writing|on (?:note cards|footnotes|drafts)"
    r"|supervision|office hours|my room|questions\?*$"
    r"|getting started|goals|outcomes|background|audience|purpose|how to (?:read|start|choose)|further reading"
    r"|note on|faq|why (?:we|this)|help|skills|how to (?!hand|submit|set|present|format)\w+"
    r"|before you (?:start|begin)|words on)\b",
    re.IGNORECASE,
)
"""Headings of sections that advise."""


def force_of(words: str) -> Force:
    """How strongly ``words`` ask: what has neither modal nor softener is an order.

    >>> force_of("You should use headings."), force_of("A title page."), force_of("Appendices are optional.")
    ('should', 'must', 'may')
    """
    if _MUST.search(words):
        return "must"
    if _SHOULD.search(words):
        return "should"
    if _MAY.search(words):
        return "may"
    return "must"


_BRACKETED = 40
"""Letters within which a bracket that was opened is looked for closed."""


def ask(sheet: Sheet, kind: Kind, values: Mapping[str, Value], span: Span, force: Force = "must") -> Requirement:
    """The requirement that the words at ``span`` make; a bracket that opens in them is closed in them."""
    words = span.of(sheet.text)
    closing = sheet.text.find(")", span.end, span.end + _BRACKETED)
    between = sheet.text[span.end : max(closing, span.end)]
    if words.count("(") == words.count(")") + 1 and closing >= 0 and not set(between) & set("(.;:!?"):
        span = Span(span.start, closing + 1)
    return Requirement(
        kind=kind, values=dict(values), evidence=span.of(sheet.text), span=span, force=force, sheet=sheet.name
    )


def join(first: Span, second: Span) -> Span:
    """The least span that holds both."""
    return Span(min(first.start, second.start), max(first.end, second.end))
