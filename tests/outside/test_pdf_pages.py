"""Published articles set as PDF by typst and read back: sampled quotations stand on the pages on which typst put them.

Data: open articles of the Public Library of Science in JATS XML. The pages on which paragraphs begin are typst's own
account (``query``); the words come back through PDFium.
"""

from __future__ import annotations

import functools
import json
import random
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.fidelity.allowed import rules_for
from fairhand.fidelity.prepared import prepare
from fairhand.fidelity.quotation import find_quotation
from fairhand.model.entry import Entry
from fairhand.reading.source import read_source

ARTICLES = ("journal.pbio.1001473.xml", "journal.pcbi.1000112.xml", "journal.pmed.0020007.xml")
FIRST_PAGE = 341
FOOT = "footer: context align(center, folio())"
HEADS = (
    "columns: 2, header: context [#if calc.odd(here().page()) [Annals of Quays #h(1fr) #folio()] "
    "else [#folio() #h(1fr) Lind and others]]"
)
SHAPES = {
    "one column, folio below": (FOOT, "11pt", ""),
    "two columns, running heads": (HEADS, "9pt", ""),
    "footnotes": (FOOT, "10pt", "#footnote[See the ledger of the year, and the minutes of the harbour office.]"),
}
SENTENCES = re.compile(r"(?<=[a-z]\.) (?=[A-Z])")


@functools.cache
def paragraphs_of(path: Path) -> tuple[str, ...]:
    """The article's paragraphs of running prose."""
    from lxml import etree

    root = etree.parse(str(path), etree.XMLParser(resolve_entities=False, no_network=True, load_dtd=False)).getroot()
    found = (" ".join("".join(map(str, p.itertext())).split()) for p in root.iterfind(".//body//sec/p"))
    return tuple(text for text in found if len(text) > 300)[:40]


@functools.cache
def typeset(path: Path, shape: str) -> tuple[bytes, tuple[int, ...]]:
    """The PDF, and the page on which each paragraph begins."""
    import typst

    page, size, note = SHAPES[shape]
    marked = "\n\n".join(
        "#context [#metadata(here().page()) <begins>]"
        + f"{note} ".join(f"#{json.dumps(sentence, ensure_ascii=False)}" for sentence in SENTENCES.split(paragraph))
        for paragraph in paragraphs_of(path)
    )
    source = "\n".join(
        (
            f"#let folio() = str(here().page() + {FIRST_PAGE - 1})",
            f"#set page(width: 16cm, height: 23cm, {page})",
            f'#set text({size}, lang: "en", hyphenate: true)',
            "#set par(justify: true)",
            marked,
        )
    ).encode()
    begins = json.loads(typst.query(source, "<begins>", field="value"))
    return typst.compile(source), tuple(begins)


@pytest.mark.parametrize("shape", SHAPES)
def test_quotations_are_found_on_the_page_they_were_set_on(shape: str, outside_data: Callable[[str], Path]) -> None:
    """Quotations of 5 to 40 words are found, word for word, on a page that their paragraph takes up."""
    folder = outside_data("data/articles-jats")
    rng = random.Random(3)  # noqa: S311 - a sample
    right = total = 0
    wrong = []
    for name in ARTICLES:
        pdf, begins = typeset(folder / name, shape)
        texts = paragraphs_of(folder / name)
        entry = Entry(name, "article-journal", page=f"{FIRST_PAGE}-{FIRST_PAGE + begins[-1]}")
        for given in (entry, None):
            source, problems = read_source(pdf, "sources/article.pdf", given)
            assert not problems
            assert source.paged
            assert source.pages[0].label == str(FIRST_PAGE), (source.labels_from, [p.label for p in source.pages])
            prepared = prepare(source)
            for _ in range(60):
                at = rng.randrange(len(texts) - 1)
                words = texts[at].split()
                length = min(len(words), rng.randrange(5, 41))
                start = rng.randrange(len(words) - length + 1)
                quoted = " ".join(words[start : start + length])
                match = find_quotation(quoted, prepared, (), {}, rules_for("apa"))
                pages = {str(FIRST_PAGE + n - 1) for n in range(begins[at], begins[at + 1] + 1)}
                total += 1
                if match.outcome in ("verbatim", "allowed") and set(match.pages) <= pages:
                    right += 1
                else:
                    wrong.append((quoted, match.outcome, match.pages, pages, match.wordings))
    print(f"\nPDF, {shape}: {right} of {total} quotations found on their page")
    assert right >= 0.98 * total, wrong[:3]
