"""Citations of real student papers, understood.

Source: the annotated student papers of the OpenStax Writing Guide (CC BY-NC-SA 4.0), one in MLA and one in APA form.
The names and years below are facts of their lists of works; what is counted is how many of their citations are
recognised and resolved.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from lxml import etree

from fairhand.citing.recognise import recognise
from fairhand.citing.resolve import resolve
from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.parts import Manuscript
from fairhand.model.entry import Entry, Issued, Name


def people(*names: str) -> tuple[Name, ...]:
    """Names written *Family, Given*; those without a comma are bodies."""
    parts = [name.partition(", ") for name in names]
    return tuple(Name(family, given) if comma else Name(literal=family) for family, comma, given in parts)


def works(*rows: tuple[str, str, int | None]) -> tuple[Entry, ...]:
    """Entries by authors (parted by semicolons), title and year."""
    return tuple(
        Entry(
            f"w{at}",
            "webpage",
            title,
            authors=people(*who.split("; ")) if who else (),
            issued=Issued(year) if year else None,
        )
        for at, (who, title, year) in enumerate(rows)
    )


MLA = works(
    ("Barnard, Neal", "How Eating More Plants Can Save Lives and the Planet", 2019),
    ("Berners-Lee, M.; Kennelly, C.; Watson, R.", "Current Global Food Production Is Sufficient", 2018),
    ("Chai, Bingli Clark; van der Voort, J.; Grofelnik, K.", "Which Diet Has the Least Environmental Impact", 2019),
    ("Curnow, Mandy", "Managing Manure to Reduce Greenhouse Gas Emissions", 2020),
    ("Gray, Richard", "Why the Vegan Diet Is Not Always Green", 2020),
    ("Hamilton, Bruce", "Food and Our Climate", 2014),
    ("Hertwich, Edgar G.; van der Voet, E.; Suh, S.", "Assessing the Environmental Impacts", 2010),
    ("Lusk, Jayson L.; Norwood, F. Bailey", "Some Economic Benefits and Costs of Vegetarianism", 2009),
    ("Lynch, Heidi; Johnston, C.; Wharton, C.", "Plant-Based Diets", 2018),
    ("Münter, Leilani", "Why a Plant-Based Diet Will Save the World", 2012),
    ("Purdy, Chase", "Being Vegan Isn’t as Good for Humanity as You Think", 2016),
    ("Schulz, Lee", "Would a Sudden Loss of the Meat and Dairy Industry", None),
    ("Sierra Club", "Agriculture and Food", 2015),
    ("Sparks, Hannah", "Veganism Won’t Save the World", 2019),
    ("Willett, Walter; Rockström, J.; Loken, B.", "Food in the Anthropocene", 2019),
    ("World Health Organization", "Malnutrition", 2020),
    ("World Health Organization", "Obesity and Overweight", 2020),
    ("World Wildlife Fund", "Appetite for Destruction: Summary Report", 2017),
    ("World Wildlife Fund; Knorr Foods", "Future Fifty Foods", 2019),
    ("", "World Population by Year", None),
)
APA = works(
    ("Biello, D.", "Combatting climate change", 2007),
    ("Bourzac, K.", "COVID-19 lockdowns had strange effects", 2020),
    ("Dearn, G.", "Walmart said it will eliminate its carbon footprint", 2020),
    ("Green America", "Top 10 solutions to reverse climate change", 2020),
    ("Lomborg, B.", "The alarm about climate change is blinding us", 2020),
    ("Mulvaney, K.", "Climate change report card", 2019),
    ("National Oceanic and Atmospheric Administration", "Record-breaking Atlantic hurricane season", 2020),
    ("Union of Concerned Scientists", "Climate solutions", 2020),
    ("U.S. Environmental Protection Agency", "Sources of greenhouse gas emissions", 2020),
    ("U.S. Global Change Research Program", "Melting ice", 2014),
    ("U.S. Global Change Research Program", "Our changing climate", 2014),
)


def read_paper(path: Path) -> Manuscript:
    """A paper's paragraphs, without its list of works and the annotators' remarks."""
    paragraphs = []
    for para in etree.parse(path).iter("{*}para"):
        text = " ".join("".join(map(str, para.itertext())).split())
        if para.get("class") != "annotation-text" and not re.search(r"https?:|www\.|doi:|\.(?:com|edu|uk)/", text):
            block = "> " if next(para.iterancestors("{*}quote"), None) is not None else ""
            paragraphs.append(block + re.sub(r"[*_`#>]", " ", text))
    return read_manuscript("\n\n".join(paragraphs) + "\n")


@pytest.mark.parametrize(
    ("file", "entries", "least"), [("m00118.cnxml", MLA, 32), ("m00062.cnxml", APA, 17)], ids=["MLA", "APA"]
)
def test_citations_of_a_student_paper_are_understood(
    outside_data: Callable[[str], Path], file: str, entries: tuple[Entry, ...], least: int
) -> None:
    """Nearly every citation of a real paper is resolved, and nothing in it is taken for a faulty one."""
    manuscript = read_paper(outside_data("data/student-papers") / file)
    mentions = recognise(manuscript, entries)
    resolved = resolve(manuscript, mentions, entries)
    told = [one for one in resolved if one.entry]
    troubled = [one for one in resolved if one.trouble]
    spans = [mention.span for mention in mentions]
    left = [
        bracket.span.of(manuscript.text)
        for bracket in manuscript.brackets
        if bracket.mark == "(" and not any(span.overlaps(bracket.span) for span in spans)
    ]
    print(f"{file}: {len(mentions)} mentions, {len(told)} resolved, {len(troubled)} with trouble; left alone: {left}")
    for one in troubled:
        print("  ", mentions[one.mention].span.of(manuscript.text), one.trouble, one.why)
    assert len(told) >= least
    assert not troubled
