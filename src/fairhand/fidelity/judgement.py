"""Which differences between a quotation and the passage it was found at are marked, allowed, or faults."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from fairhand.fidelity.alignment import dropped_runs
from fairhand.fidelity.allowed import QuotationRules
from fairhand.fidelity.page_matter import has_callout, is_page_matter
from fairhand.fidelity.passages import Passage
from fairhand.fidelity.prepared import PreparedSource
from fairhand.fidelity.quoted import Quoted, Segment, Token
from fairhand.fidelity.search import Placing, most_apart
from fairhand.fidelity.speech import breaks_speech
from fairhand.model.span import Span

_ELLIPSIS = re.compile(r"…|\.\s{0,3}\.\s{0,3}\.|\*\s{0,3}\*\s{0,3}\*")
_MARKS = re.compile(r"[\s\"“”„‟«»'‘’‚‛_*\[\]()/\\²³¹⁰⁴-⁹|]+")
_REMARKS = re.compile(r"\[[^\[\]]{0,400}\]|\(sic\.?\)")
_DASHES = re.compile("[-\u2010-\u2015\u2212]+")


@dataclass
class Judgement:
    """What was found wrong with a quotation, gathered segment by segment."""

    changed: list[Span] = field(default_factory=list)
    """Intervals of the quotation's text that differ: words changed or added, idle ellipses."""
    changed_words: list[int] = field(default_factory=list)
    """Words of the source that stand opposite them."""
    dropped: list[int] = field(default_factory=list)
    """Words of the source dropped without a mark."""
    tellers: list[int] = field(default_factory=list)
    """Words of the source dropped that stand between two halves of a speech."""
    allowed: bool = False
    """Whether anything was changed as the manuals allow."""
    points: bool = False
    """Whether punctuation, capitals or the spacing of words differ."""
    says: list[str] = field(default_factory=list)
    claimed: int = 0
    """Words that claim to be the source's own."""
    agreed: int = 0


def judge(quoted: Quoted, prepared: PreparedSource, placing: Placing, rules: QuotationRules) -> Judgement:
    """All differences between a quotation and the passages that it was found at."""
    judgement = Judgement(allowed=quoted.marked)
    for segment, passage in zip(quoted.segments, placing.passages, strict=True):
        if passage is None:
            judgement.changed.extend(token.span for token in segment.tokens if token.kind != "bracketed")
            judgement.claimed += len(segment.plain)
            judgement.says.append("a part of it was not found there")
            continue
        _judge_words(judgement, prepared, segment.tokens, passage, rules)
        _judge_points(judgement, quoted.text, prepared, segment.tokens, passage)
    _judge_ellipses(judgement, quoted, prepared, placing)
    _judge_closing_point(judgement, quoted, prepared, placing, rules)
    _judge_first_letter(judgement, quoted, prepared, placing, rules)
    return judgement


def _judge_words(
    judgement: Judgement, prepared: PreparedSource, tokens: Sequence[Token], passage: Passage, rules: QuotationRules
) -> None:
    """Words changed, added and dropped."""
    spaced = _spaced_otherwise(prepared, tokens, passage)
    judgement.points = judgement.points or bool(spaced)
    for at, (k, s) in enumerate(passage.pairs):
        if k is None or tokens[k].kind == "bracketed":
            continue
        judgement.claimed += 1
        token = tokens[k]
        if at in spaced or (s is not None and token.matches(prepared.words[s])):
            judgement.agreed += 1
        elif s is not None and rules.callouts_silent and has_callout(token.word, prepared.as_set(s)):
            judgement.agreed += 1
            judgement.allowed = True
        else:
            judgement.changed.append(token.span)
            if s is not None:
                judgement.changed_words.append(s)
    for begin, end in dropped_runs(tokens, passage.pairs):
        run = [s for at in range(begin, end) if at not in spaced and (s := passage.pairs[at][1]) is not None]
        if run and rules.callouts_silent and is_page_matter(prepared, run):
            judgement.allowed = True
        elif run and breaks_speech(prepared, run):
            judgement.tellers.extend(run)
        else:
            judgement.dropped.extend(run)


def _spaced_otherwise(prepared: PreparedSource, tokens: Sequence[Token], passage: Passage) -> frozenset[int]:
    """The pairs, by number, whose words differ in nothing but the spaces between them: *some one*, *someone*.

    Text taken from a PDF gains and loses spaces, and a dash may stand where the source has a hyphen.
    """
    out: list[int] = []
    region: list[int] = []
    for at, (k, s) in enumerate((*passage.pairs, (None, None))):
        differs = k is None or s is None or not tokens[k].matches(prepared.words[s])
        if at < len(passage.pairs) and differs and (k is None or tokens[k].kind != "bracketed"):
            region.append(at)
            continue
        of_draft = [tokens[k].word for n in region if (k := passage.pairs[n][0]) is not None]
        of_source = [prepared.words[s] for n in region if (s := passage.pairs[n][1]) is not None]
        if of_draft and "".join(of_draft) == "".join(of_source):
            out.extend(region)
        region = []
    return frozenset(out)


def _judge_ellipses(judgement: Judgement, quoted: Quoted, prepared: PreparedSource, placing: Placing) -> None:
    """Ellipses where nothing was left out, and parts too far apart or in another order."""
    placed = zip(quoted.segments, placing.passages, strict=True)
    for (previous, before), (segment, after) in pairwise(placed):
        if before is None or after is None or segment.ellipsis is None:
            continue
        apart = after.start - before.end
        if apart < 0:
            says = "its parts stand in another order in the source"
        elif apart > max(most_apart(previous), most_apart(segment)):
            says = f"{apart} words of the source lie between its parts, too many for one quotation"
        elif apart == 0 and not _is_bracketed(previous, segment) and not _has_matter_between(prepared, before.end):
            says = "the ellipsis stands where nothing was left out"
        else:
            continue
        judgement.changed.append(segment.ellipsis)
        judgement.says.append(says)


def _is_bracketed(before: Segment, after: Segment) -> bool:
    """Whether a bracket stands beside the ellipsis between two segments, so that either may stand for what is gone."""
    return "bracketed" in (before.tokens[-1].kind, after.tokens[0].kind)


def _has_matter_between(prepared: PreparedSource, word: int) -> bool:
    """Whether the source itself has an ellipsis, or other matter than words, before ``word``."""
    gap = prepared.gap_after(word - 1)
    return gap is None or bool(_ELLIPSIS.search(gap)) or len(_MARKS.sub("", gap)) > 2


def _points_of(gap: str) -> str:
    """The punctuation of a gap, its dashes made one and its quotation marks, brackets and spaces left out."""
    return _DASHES.sub("-", _MARKS.sub("", _REMARKS.sub("", gap)))


def _judge_points(
    judgement: Judgement, text: str, prepared: PreparedSource, tokens: Sequence[Token], passage: Passage
) -> None:
    """Punctuation and capitals within a segment."""
    for (k, s), (k_next, s_next) in pairwise(passage.pairs):
        if k is None or s is None or k_next is None or s_next is None:
            continue
        here, after = tokens[k], tokens[k_next]
        if here.kind != "plain" or after.kind != "plain":
            continue
        of_draft = text[here.span.end : after.span.start]
        of_source = prepared.gap_after(s)
        if of_source is not None and of_draft != of_source:
            if _points_of(of_draft) != _points_of(of_source):
                judgement.points = True
            elif of_draft.strip() != " ".join(of_source.split()).strip():
                judgement.allowed = True
        if after.word == prepared.words[s_next] and not _same_capitals(after.span.of(text), prepared.as_set(s_next)):
            judgement.points = True


def _same_capitals(word: str, of_source: str) -> bool:
    """Whether two words have their capitals in the same places; a word set in capitals throughout is like any."""
    return word[:1].isupper() == of_source[:1].isupper() or (len(of_source) > 1 and of_source.isupper())


def _judge_first_letter(
    judgement: Judgement, quoted: Quoted, prepared: PreparedSource, placing: Placing, rules: QuotationRules
) -> None:
    """A first letter whose case was changed without brackets."""
    passage = placing.passages[0]
    if passage is None:
        return
    k, s = passage.pairs[0]
    if k is None or s is None:
        return
    token = quoted.segments[0].tokens[k]
    if token.kind != "plain" or token.word != prepared.words[s]:
        return
    if _same_capitals(token.span.of(quoted.text), prepared.as_set(s)):
        return
    if rules.first_letter_silent:
        judgement.allowed = True
        return
    judgement.changed.append(token.span)
    judgement.changed_words.append(s)
    judgement.says.append(f"a first letter that is changed stands in brackets ({rules.name})")


def _judge_closing_point(
    judgement: Judgement, quoted: Quoted, prepared: PreparedSource, placing: Placing, rules: QuotationRules
) -> None:
    """A point at the quotation's end that the source does not have there."""
    passage = placing.passages[-1]
    if passage is None or passage.pairs[-1] != (len(quoted.segments[-1].tokens) - 1, passage.end - 1):
        return
    closing = _points_of(quoted.text[quoted.segments[-1].tokens[-1].span.end :])
    page, span = prepared.place_of(passage.end - 1)
    of_source = prepared.source.pages[page].text[span.end : span.end + 12]
    if not closing or _points_of(of_source).startswith(closing):
        return
    if rules.closing_point_silent and set(closing) <= set(".,;:…"):
        judgement.allowed = True
    else:
        judgement.points = True
