"""Names before a year in real prose: how many are taken for citations, and how many of those are none.

Source: sentences of the GUM corpus (CC BY 4.0; papers, textbooks, biographies, travel guides, fiction, talk) and open
articles of PLOS (CC BY), with no list of sources known. Counted by hand were the false friends among what is taken for
a citation: none. The names below are those that a reader of the corpus finds cited so.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from lxml import etree

from fairhand.citing.known import know
from fairhand.citing.recognise import read_paragraphs
from fairhand.manuscript.draft import read_manuscript

CITED = frozenset(
    "Sapir Navarro Spang Quilis Cantón Kinder Certeau Geertz Dutton Enoch Klenk Sumner Barger Rowley Sternberg "
    "Tournier McNamara Aalbers Domenici Lauder Klimley Weishaar Laudon Evans "
    "Landsberg Gazio Jenkins Scott Gómez Santos".split()
)


def test_hardly_a_name_before_a_year_is_taken_for_a_citation_wrongly(outside_data: Callable[[str], Path]) -> None:
    """Of the names before a year that no source answers to, those taken for authors are authors."""
    texts = [
        " ".join(line[9:] for line in file.read_text(encoding="utf-8").splitlines() if line.startswith("# text = "))
        for file in sorted(outside_data("data/sentences").glob("*.conllu"))
    ]
    for file in sorted(outside_data("data/articles-jats").glob("*.xml")):
        paragraphs = etree.parse(file).iterfind(".//body//p")
        texts.append("\n\n".join(" ".join("".join(map(str, one.itertext())).split()) for one in paragraphs))
    found = []
    for text in texts:
        draft = read_manuscript(text)
        for paragraph, prose in zip(draft.paragraphs, read_paragraphs(draft, know(())), strict=True):
            mentions = [one.mention for one in prose.sightings if one.mention.form == "narrative"]
            found += [one.span.of(paragraph.span.of(draft.text)) for one in mentions if one.cites[0].year]
    wrong = [one for one in found if not any(name in one for name in CITED)]
    print(f"{len(found)} of {sum(len(text.split()) for text in texts)} words; none: {wrong}")
    assert len(found) >= 25
    assert len(wrong) <= 1
