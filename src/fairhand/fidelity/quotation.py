"""A quotation against its source: verbatim, changed as the manuals allow, or not."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import replace

from fairhand.fidelity.allowed import QuotationRules
from fairhand.fidelity.judgement import Judgement, judge
from fairhand.fidelity.match import Outcome, QuotationMatch
from fairhand.fidelity.passages import Effort
from fairhand.fidelity.prepared import PreparedSource
from fairhand.fidelity.quoted import Quoted, take_apart
from fairhand.fidelity.search import Placing, place
from fairhand.fidelity.speech import SAYS
from fairhand.fidelity.wordings import differing_wordings, places_of
from fairhand.reading.labels import page_key

_FEWEST_EXACT = 4
"""Words that a quotation must have to be claimed for a source that it does not cite."""
_FEWEST_INEXACT = 6
_AS_ROUND = str.maketrans("[]", "()")


def find_quotation(
    text: str,
    cited: PreparedSource | None,
    locator_labels: Sequence[str],
    others: Mapping[str, PreparedSource],
    rules: QuotationRules,
) -> QuotationMatch:
    """What became of a quotation: the best place for it in the source it cites, else in another.

    Args:
        text: The quoted words, without their marks.
        cited: The source that it cites, or None where no text of it is at hand.
        locator_labels: The labels of the pages that it cites (see :func:`fairhand.reading.labels.labels_in`).
        others: The other sources by id.
        rules: What may be changed without a mark.
    """
    quoted = take_apart(text)
    if cited is None:
        found = _in_others(quoted, others, effort="exact")
        if found is None:
            return QuotationMatch("no-text")
        return replace(_matched(quoted, *found, set(), rules), outcome="no-text", wordings=None)
    if not quoted.length:
        return QuotationMatch("allowed", cited.source.id)
    keys = {page_key(label) for label in locator_labels}
    wanted = [k for k, page in enumerate(cited.source.pages) if page.label is not None and page_key(page.label) in keys]
    placing = place(cited, quoted, wanted)
    match = QuotationMatch("not-found", cited.source.id, likeness=0.0)
    if placing is not None:
        match = _matched(quoted, cited, placing, keys, rules)
        if match.outcome not in ("differs", "gap"):
            return match
    # Brackets may be the source's own, as its numbers of notes are: then nothing in them is the writer's.
    if "[" in text:
        plain = take_apart(text.translate(_AS_ROUND))
        as_set = place(cited, plain, wanted, effort="exact")
        if as_set is not None and not as_set.faults:
            return _matched(plain, cited, as_set, keys, rules)
    # Words that another source has exactly are its own, however near the cited one comes to them.
    found = _in_others(quoted, others, effort="exact" if placing else "near")
    if found is None:
        return match
    return replace(_matched(quoted, *found, set(), rules), outcome="other-source")


def _in_others(
    quoted: Quoted, others: Mapping[str, PreparedSource], *, effort: Effort
) -> tuple[PreparedSource, Placing] | None:
    """The quotation in a source that it does not cite: its exact words first, then nearly its words."""
    if quoted.length < _FEWEST_EXACT:
        return None
    for prepared in others.values():
        placing = place(prepared, quoted, effort="exact")
        if placing is not None and not placing.faults:
            return prepared, placing
    if effort == "exact" or quoted.length < _FEWEST_INEXACT:
        return None
    near = [(p, found) for p in others.values() if (found := place(p, quoted, effort=effort)) is not None]
    return min(near, key=lambda pair: pair[1].faults, default=None)


def _matched(
    quoted: Quoted, prepared: PreparedSource, placing: Placing, keys: AbstractSet[str], rules: QuotationRules
) -> QuotationMatch:
    """The match that a place in a source amounts to; ``keys`` are those of the labels cited."""
    judgement = judge(quoted, prepared, placing, rules)
    passages = [passage for passage in placing.passages if passage is not None]
    places = places_of(prepared, passages)
    pages = prepared.source.pages
    labels = tuple(dict.fromkeys(label for k, _ in places if (label := pages[k].label) is not None))
    wrong_page = bool(labels and _can_judge(prepared, keys) and keys.isdisjoint(map(page_key, labels)))
    outcome = _outcome(judgement)
    if wrong_page and outcome in ("verbatim", "allowed"):
        outcome = "elsewhere"
    says = "; ".join(dict.fromkeys(judgement.says))
    if judgement.tellers and outcome not in ("differs", "gap"):
        says = SAYS
    wordings = None
    if outcome in ("differs", "gap") or judgement.points or judgement.tellers:
        differing = (*judgement.changed_words, *judgement.dropped, *judgement.tellers)
        wordings = differing_wordings(quoted.text, judgement.changed, prepared, passages, differing)
    return QuotationMatch(
        outcome,
        prepared.source.id,
        labels,
        places,
        wordings,
        wrong_page,
        judgement.agreed / judgement.claimed if judgement.claimed else 1.0,
        says,
        judgement.points,
        bool(judgement.tellers),
    )


def _can_judge(prepared: PreparedSource, keys: AbstractSet[str]) -> bool:
    """Whether the pages cited are numbered as the source's are.

    A PDF's sheets that were merely counted are not, where the pages cited lie outside the count: an article's file that
    begins with 1, cited by its pages in the journal.
    """
    source = prepared.source
    if source.labels_from == "counted" and source.file.lower().endswith(".pdf"):
        return not keys.isdisjoint(page_key(page.label) for page in source.pages if page.label)
    return source.paged and bool(keys)


def _outcome(judgement: Judgement) -> Outcome:
    """The outcome, the page left aside."""
    if judgement.changed:
        return "differs"
    if judgement.dropped:
        return "gap"
    return "allowed" if judgement.allowed or judgement.points or judgement.tellers else "verbatim"
