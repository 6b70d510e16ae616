"""Which page of the printed thing each leaf of a file is.

In this order: the entry's page range, from its first label; but the file's own labels, or else its printed folios,
where they contain that range (a file of the whole book, or one with a cover sheet before the article). Without a
range, the printed folios, else a count from 1. Web pages and posts have no pages, whatever parts their file.
"""

from __future__ import annotations

from collections.abc import Sequence

from fairhand.model.entry import Entry
from fairhand.model.source import Page
from fairhand.reading.footnotes import part_footnotes
from fairhand.reading.labels import labels_in, page_key, parse_label
from fairhand.reading.leaves import Leaves
from fairhand.reading.running_heads import printed_folios, strip_running_lines

WITHOUT_PAGES = frozenset(
    (
        "webpage", "post", "post-weblog", "personal_communication", "motion_picture", "broadcast", "song", "software",
        "dataset",
    )
)  # fmt: skip
"""Entry types (CSL-JSON 1.0.2) whose works have no pages."""
_PAGED_IN_PRINT_ONLY = frozenset(("article-newspaper", "article-magazine"))
"""Types that are cited without a page when they are read on the web."""
_ARTICLE_NUMBER = 100_000
"""A lone number from here on is an article's number and no page."""


def number_leaves(leaves: Leaves, entry: Entry | None) -> tuple[tuple[Page, ...], bool, str]:
    """The pages of a file, whether a reader could look their labels up, and where the labels come from."""
    folios = printed_folios(leaves.texts) if leaves.leaved else None
    texts = strip_running_lines(leaves.texts, folios) if leaves.leaved else leaves.texts
    labels, origin = _labels(leaves, folios, entry)
    if labels is None:
        return tuple(Page(None, text) for text in texts), False, "none"
    return tuple(_page(label, text) for label, text in zip(labels, texts, strict=True)), True, origin


def _page(label: str | None, text: str) -> Page:
    """A page, its footnotes told apart."""
    text, notes_from = part_footnotes(text)
    return Page(label or None, text, notes_from)


def _labels(
    leaves: Leaves, folios: Sequence[str | None] | None, entry: Entry | None
) -> tuple[Sequence[str | None] | None, str]:
    """The label of each leaf, and where the labels come from."""
    count = len(leaves.texts)
    stated = _stated_labels(entry)
    if entry is not None and entry.type in WITHOUT_PAGES:
        return None, "none"
    if leaves.printed and leaves.labels is not None:
        return leaves.labels, "file"
    if not leaves.leaved:
        return ((stated[0],) * count, "entry") if len(stated) == 1 else (None, "none")
    if stated:
        for labels, origin in ((leaves.labels, "pdf"), (folios, "folio")):
            if labels is not None and _contains(labels, stated):
                return labels, origin
        return _counted_on(stated, count), "entry"
    if folios is not None:
        return folios, "folio"
    if entry is not None and entry.type in _PAGED_IN_PRINT_ONLY and entry.url:
        return None, "none"
    return tuple(str(number) for number in range(1, count + 1)), "counted"


def _stated_labels(entry: Entry | None) -> tuple[str, ...]:
    """The labels of the entry's page range; an article's number is no page."""
    labels = labels_in(entry.page) if entry is not None else ()
    if len(labels) == 1:
        label = parse_label(labels[0])
        if label is None or label.number >= _ARTICLE_NUMBER or label.prefix.lower() == "e":
            return ()
    return labels


def _contains(labels: Sequence[str | None], stated: Sequence[str]) -> bool:
    """Whether a range's first and last page are among the labels."""
    keys = {page_key(label) for label in labels if label}
    return page_key(stated[0]) in keys and page_key(stated[-1]) in keys


def _counted_on(stated: Sequence[str], count: int) -> tuple[str, ...]:
    """The stated labels one by one, and counted on from the last; from the first where the numbers do not tally.

    >>> _counted_on(("A1", "A14"), 2), _counted_on(("xiv",), 2), _counted_on(("7", "12", "13"), 2)
    (('A1', 'A14'), ('xiv', 'xv'), ('7', '8'))
    """
    if len(stated) == count:
        return tuple(stated)
    first = parse_label(stated[0])
    if first is None:
        return tuple(stated[0] if not k else f"{stated[0]}+{k}" for k in range(count))
    return tuple(str(first.on(k)) for k in range(count))
