"""Banned sources: kinds of source that may not be cited."""

from __future__ import annotations

import re

from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.terms import make_terms
from fairhand.brief.wording import TOLD, ask, join
from fairhand.model.requirement import Requirement
from fairhand.model.span import Span

_KINDS: tuple[tuple[str, str], ...] = (
    ("encyclopedia", r"encyclop(?:a)?edias?|encyclopædias?|wikis?|Wikipedia(?: pages| articles)?"),
    ("blog", r"blogs?|blog posts?|weblogs?"),
    (
        "ai-generated",
        (
            r"AI[- ](?:generated|written|produced)(?: \w+)?|AI (?:summar(?:y|ies)|answers|output|text)"
            r"|(?:generated|written|produced) by (?:an? )?(?:AI|chatbot"
            r"|artificial|machines?)|chatbot (?:output|answers?|text)s?|(?:output|answers) (?:of"
            r"|from) (?:an? )?(?:AI|chatbot)"
        ),
    ),
    (
        "course-readings",
        (
            r"(?:course|class|module|seminar|lab(?:oratory)?) (?:reader|readings?|pack|manual|handouts?)"
            r"|readings (?:from|set in) (?:the )?(?:course"
            r"|class)|assigned readings?|lecture (?:notes|slides)"
        ),
    ),
    ("dictionary", r"dictionar(?:y(?! definitions? (?:as|to|in))|ies)"),
    ("textbook", r"text ?books?"),
    (
        "website",
        (
            r"(?:(?:(?:essay|study|internet|online|notes?|content|general|random|crib) )?(?:web ?)?sites(?! (?:visit"
            r"|of))|web ?sites?|web ?pages?|internet sources?|online sources|study[- ]guides?(?! website)"
            r"|general internet|the (?:open )?(?:web|internet)|social media(?: posts)?|online study notes)"
        ),
    ),
)
_KIND = make_terms(_KINDS)
_BAN = re.compile(
    r"\b(?:(?:is|are|will) (?:also )?not (?:be )?(?:acceptable|accepted|allowed|permitted|suitable|appropriate"
    r"|to be (?:used|cited|quoted)|valid|legitimate|considered|count(?:ed)?)|(?:is|are|will be) rejected"
    r"|unacceptable|inadmissible"
    r"|(?:may|must|should|can|will|do|shall|are|is) not (?:be )?(?:cit(?:e|ed)|us(?:e|ed)|rely(?: up)?on|rel(?:y"
    r"|ied) (?:up)?on|count(?:ed)?|quot(?:e|ed)|includ(?:e|ed)|draw on|refer to|reference[d]?|consult(?:ed)?"
    r"|appear)"
    r"|(?:don't|can't|cannot|mustn't|won't|shouldn't|doesn't|aren't|never) (?:be )?(?:cit(?:e|ed)|us(?:e|ed)"
    r"|rel(?:y|ied) on|count(?:ed)?|quot(?:e|ed)|includ(?:e|ed)|acceptable|accepted|allowed|permitted|draw on)"
    r"|not to (?:use|cite|rely on|be (?:used|cited))|off limits|off-limits|banned|forbidden|prohibited|excluded"
    r"|barred|out of bounds|ruled out|avoid(?:ed)?|stay away from|steer clear of|refrain from"
    r"|(?:don't|do not|never) put (?:it|them|these) in (?:your|the) (?:bibliography|references|list|works cited)"
    r"|not (?:an? )?(?:acceptable|academic|scholarly|reliable|legitimate|valid) sources?"
    r"|(?:please )?no(?= (?:\w+ ){0,2}(?:blogs?|encyclop|wikipedia|web ?sites?|dictionar|text ?books?|internet"
    r"|AI-))|neither|(?:are|is) not (?:sources|references)|(?:is|are) out\b(?! of)"
    r"|none of (?:which|them|these|those) (?:should|may|must|can|shall) be|(?:are|is) not(?=[.!]|$))(?:\b|(?=[.!])|$)",
    re.IGNORECASE,
)
_OF_OBJECT = re.compile(
    r"^(?:avoid|no|none|stay|steer|refrain)\b|(?:not|n't|never|cannot) (?:to )?(?:cit|us|rel|draw|quot|includ|refer"
    r"|consult)",
    re.IGNORECASE,
)
"""A ban whose object follows it ("do not cite blogs"); the other bans follow their subject."""
_PRONOUN = re.compile(r" (?:it|them|these|those|this|that)\b(?! \w+ ?(?:s\b|that|which))", re.IGNORECASE)
_ALLOWED = re.compile(r" (?:can|may) be (?:cited|used|quoted)\b", re.IGNORECASE)
_BOUND = re.compile(
    r"\b(?:(?:(?:no|not) )?(?:more|fewer|less) than|at (?:most|least)|up to|only|a (?:maximum|minimum) of) "
    r"(?:one|two|three|four|five|six|an?|\d{1,2}) (?:\w+ ){0,2}$",
    re.IGNORECASE,
)
"""Before a kind of which so many may be cited: a bound is no ban."""
_ALSO = re.compile(
    r"^(?:so (?:are|is)|nor (?:are|is|may|should)|neither (?:are|is|may)|the same (?:goes|holds|applies)|likewise"
    r"|this (?:includes|also))\b",
    re.IGNORECASE,
)
_BAN_LEAD = re.compile(
    r"(?:^|\| )(?:please )?(?:do not|don't|avoid|never|not allowed|not acceptable|not ok(?:ay)?|banned"
    r"|off limits)(?:\b[^|]{0,30})?(?: \||$)",
    re.IGNORECASE,
)
_ABOUT_SOURCES = re.compile(
    r"\b(?:cit\w+|sources?|references?|quot\w+|use\b|using|evidence|rely|acceptable|count)\b", re.IGNORECASE
)
_REFUSED = re.compile(r"^\W*no\b|\b(?:as (?:an? )?sources?|to cite(?: from)?),? no\b", re.IGNORECASE)
"""The answer to a question such as "May I cite the textbook?"."""
_SPARED = re.compile(r"\b(?:rubric|exam(?:ination)?|in class|posting|upload)\b", re.IGNORECASE)


def _banned_in(sentence: Sentence, *, carried: bool) -> tuple[set[str], int, int]:
    """The kinds that a sentence bans, with the stretch that bans them."""
    found: set[str] = set()
    start, end = len(sentence.text), 0
    lead = bool(
        _BAN_LEAD.search(f"{sentence.passage.heading} | {sentence.passage.lead.rstrip(':')} | {sentence.passage.key}")
    )
    for clause in re.finditer(r"[^;]+", sentence.text):
        words = clause.group()
        ban = _BAN.search(words)
        refused = _REFUSED.search(words) if sentence.passage.heading.endswith("?") else None
        if refused and (asked := set(_KIND.named(sentence.passage.heading))):
            found |= asked
            start, end = min(start, clause.start() + refused.start()), max(end, clause.start() + refused.end())
        if not (ban or lead or (carried and _ALSO.match(words.strip()))):
            continue
        # What may be cited, though it does not count, is not banned.
        hits = [
            h
            for h in _KIND.finditer(words)
            if not (_ALLOWED.match(words, h.end()) or _BOUND.search(words[max(0, h.start() - 60) : h.start()]))
        ]
        if ban and re.fullmatch(r"(?:are|is) not", ban.group(), re.IGNORECASE):
            # "Sites of museums are fine, but blogs are not."
            hits = [h for h in hits if not re.search(r"[,;.]|\b(?:but|is|are)\b", words[h.end() : ban.start()])]
        if ban and _OF_OBJECT.search(ban.group()):
            if not _PRONOUN.match(words, ban.end()):
                hits = [h for h in hits if h.start() > ban.start()]
            elif not hits and sentence.passage.heading.endswith("?"):
                # "Can I cite an encyclopedia? Don't cite it."
                asked = set(_KIND.named(sentence.passage.heading))
                found |= asked
                start, end = min(start, clause.start() + ban.start()), max(end, clause.start() + ban.end())
        if ban and (
            stop := re.search(
                r"\b(?:but|except|unless|although) (?:\w+ ){0,4}(?:fine|allowed|welcome|may|are|is)\b",
                words[ban.end() :],
            )
        ):
            hits = [h for h in hits if h.start() < ban.end() + stop.start()]
        kinds = {_KIND.name(h) for h in hits}
        if kinds == {"ai-generated"} and not (carried or re.search(r"\b(?:cit\w+|source)", words)):
            continue
        if not kinds:
            continue
        found |= kinds
        start = min(start, clause.start() + min(hits[0].start(), ban.start() if ban else hits[0].start()))
        end = max(end, clause.start() + max(hits[-1].end(), ban.end() if ban else 0))
    return found, start, end


def find_sources_banned(sheet: Sheet) -> list[Requirement]:
    """The kinds of source that the sheet bans; neighbouring bans are one requirement."""
    groups: list[tuple[set[str], Span]] = []
    before: Sentence | None = None
    for sentence in sheet.sentences:
        carried = before is not None and before.passage is sentence.passage
        kinds: set[str] = set()
        if not TOLD.search(sentence.text) and not _SPARED.search(sentence.text):
            kinds, start, end = _banned_in(sentence, carried=carried)
        if kinds:
            span = sentence.span(start, end)
            if carried:
                groups[-1] = (groups[-1][0] | kinds, join(groups[-1][1], span))
            else:
                groups.append((kinds, span))
            before = sentence
        else:
            before = None
    known: set[str] = set()
    found = []
    for kinds, span in groups:
        fresh = tuple(sorted(kinds - known))
        known |= kinds
        if fresh:
            found.append(ask(sheet, "sources_banned", {"what": fresh}, span))
    return found
