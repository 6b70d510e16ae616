from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.mention import Mention
from fairhand.citing.recognise import recognise, short_forms
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.entry import Entry, Issued, Name


def entry(who: str, year: int, title: str = "", kind: str = "book", container: str = "") -> Entry:
    """An entry by authors parted by semicolons; a name without a comma is a body's."""
    names = tuple(
        Name(family=family, given=given) if comma else Name(literal=family)
        for family, comma, given in (one.partition(", ") for one in who.split("; ") if one)
    )
    return Entry(f"{who}-{year}", kind, title, container_title=container, authors=names, issued=Issued(year))


ENTRIES = (
    entry("Hollis, Ada; Brandt, Piet", 2019, "Five Winters of Ice"),
    entry("Ferro, Lucia", 2018, "The Patient Bridge"),
    entry("Sands, Odile", 2021, "Silt and Care"),
    entry("May, Theo", 2012, "Thaw"),
    entry("World Health Organization", 2020, "Salt"),
    entry("Port and Dock Workers' Union", 1920, "Minutes"),
    Entry("kuile", "book", "Tide", authors=(Name("Kuile", "Ada", particle="van der"),), issued=Issued(2001)),
    entry("", 1924, "Ferry Men Return: Scenes at the Pier", "article-newspaper", "Harbour Mercury"),
)


def mentions_in(draft: str, entries: tuple[Entry, ...] = ENTRIES) -> tuple[list[str], tuple[Mention, ...]]:
    """The words of each mention, and the mentions."""
    manuscript = read_manuscript(draft)
    found = recognise(manuscript, entries)
    return [mention.span.of(draft) for mention in found], found


@pytest.mark.parametrize(
    "friend",
    [
        "It was hot (see 2019).",
        "The sample was small (n = 34) and young (ages 18–24).",
        "It rained in May (2020) and in June (1929).",
        "The reign (1999–2004) was short.",
        "The effect was clear (p < .05).",
        "Costs rose (Figure 2), as we saw (see Table 1) and heard (Chapter 3).",
        "It cost a good deal (US$ 20) and took time (ca. 30 days).",
        "Jane Doe (1901–1970) and her sister (born 1932) left.",
        "We need three things: (1) salt, (2) rope, and (3) tar.",
        "Either (a) they left or (b) they stayed.",
        "The World Health Organization (WHO) agreed.",
        "The Stamp Act (1765), the Great Fire (1666), and the Treaty of Ghent (1814) matter.",
        "The law (Clean Water Act, 1972) passed.",
        "He wrote “teh” [sic] twice.",
        "The fit (*R*2 = 0.97) was good, and so it went from *P*2 to the end (*P*3), as min(Lee, 2009) shows.",
        "It grew (e.g., *Bufo bufo*, 3.92x) with time; the models of DOC and Salt (M2, Table 3) agree.",
        "In *The Long Pier* (1942) nobody sings, and *Fog* (2003) is silent.",
        "Ferry men and others (Marine House, Leith) came.",
        "There were thirty (30) and then fifty (50).",
        "The equation (3) holds for x (5).",
        "A fall of a third (33%) or more (3.5 degrees) came.",
        "Hiroshima (1945) was rebuilt.",
        "She told me so (B. Osei, personal communication, March 3, 2021).",
        "John Ferro (1871–1944) led them.",
        "It thawed early (May 2020), and again later (May 5).",
        "The list (p, q, r) is closed (see above).",
        "They met (Monday, 4 May 2020) and spoke (Spring 2019).",
        "The plane (Boeing 747) and the system (Windows 10) failed.",
        "The paper (A4) is thick (2B).",
    ],
)
def test_false_friends_are_left_alone(friend: str) -> None:
    """What only looks like a citation is none."""
    assert mentions_in(friend + "\n")[0] == []


@pytest.mark.parametrize(
    ("sentence", "mentioned"),
    [
        ("As Hollis and Brandt (2019) argue, ice is slow.", "Hollis and Brandt (2019)"),
        ("Sands’s (2021) study is short.", "Sands’s (2021)"),
        ("Sands’s study of silt (2021) is short.", "(2021)"),
        ("*The Patient Bridge* (2018) is short.", "*The Patient Bridge* (2018)"),
        ("According to Harkaway (1958), nothing held.", "Harkaway (1958)"),
        ("Harkaway (1958) argues that nothing held.", "Harkaway (1958)"),
        ("Harkaway’s (1958) view is known.", "Harkaway’s (1958)"),
        ("Brill and Moor (1958) were first.", "Brill and Moor (1958)"),
        ("Brill et al. (1958) were first.", "Brill et al. (1958)"),
        ("Brill and colleagues (1958) were first.", "Brill and colleagues (1958)"),
        ("The Union of Concerned Pilots (2020) warns of it.", "Union of Concerned Pilots (2020)"),
        ("The World Health Organization (2020) agrees.", "World Health Organization (2020)"),
        ("May (2012) argues otherwise.", "May (2012)"),
        ("Ferro (102) calls it patient.", "Ferro (102)"),
        ("All this (as Ferro [2018] says) is plain.", "Ferro [2018]"),
        ("Van der Kuile (2001) is older.", "Van der Kuile (2001)"),
        ("In Ferro’s words, it is “not steel but time” (2018, 3).", "(2018, 3)"),
        ("As Harkaway observes, it “held to the last” (1958, 12).", "(1958, 12)"),
    ],
)
def test_narrative_citations_reach_from_the_name_to_the_parenthesis(sentence: str, mentioned: str) -> None:
    """An author named in the sentence is part of the citation where the parenthesis follows at once."""
    words, found = mentions_in(sentence + "\n")
    assert words == [mentioned]
    assert found[0].form == "narrative"
    assert found[0].cites[0].year or found[0].cites[0].locator


@pytest.mark.parametrize(
    ("sentence", "place"),
    [
        ("Ferro (2018) calls it “patient” (p. 1).", "1"),
        ("Ferro calls it “patient” (1).", "1"),
        ("Ferro calls it patient (1).", "1"),
        ("Ferro notes this (2.1.34–36).", "2.1.34–36"),
        ("Ferro notes this (lines 5–7).", "5–7"),
        ("Ferro notes this (para. 6).", "6"),
        ("Ferro notes this (ch. 3).", "3"),
        ("It was (Ferro 2018). Nobody doubts it (ibid., 4).", "4"),
    ],
)
def test_a_place_alone_is_a_citation_after_a_named_work(sentence: str, place: str) -> None:
    """A page, line or scene in parentheses cites the work that has been named."""
    _, found = mentions_in(sentence + "\n")
    assert found[-1].form == "page-only"
    locator = found[-1].cites[0].locator
    assert locator is not None
    assert locator.text == place


def test_an_unknown_author_and_page_is_a_citation_only_where_the_draft_cites_so() -> None:
    """*(Harkaway 12)* cites in a paper by author and page; *(Apollo 11)* does not in one by author and year."""
    assert mentions_in("It held (Ferro 3). It broke (Harkaway 12).\n")[0] == ["(Ferro 3)", "(Harkaway 12)"]
    assert mentions_in("It held (Ferro 2018). It landed (Apollo 11).\n")[0] == ["(Ferro 2018)"]


def test_a_parenthesis_within_a_quotation_is_the_sources_own() -> None:
    """Words in quotation marks cite nothing, but the citation of a block quotation at its end does."""
    draft = (
        'She wrote, "Old men (Brandt, 2015) forget" (Ferro, 2018).\n\n> Ice (Brandt, 2015) is slow. (Sands, 2021, p. 4)'
    )
    assert mentions_in(draft + "\n")[0] == ["(Ferro, 2018)", "(Sands, 2021, p. 4)"]


def test_titles_with_years_are_citations_only_of_sources() -> None:
    """A film's year is left alone; a newspaper in the list of sources is cited."""
    draft = "It plays (*The Long Pier*, 1942). They came back (*Harbour Mercury*, June 10, 1924, 5)."
    assert mentions_in(draft + "\n")[0] == ["(*Harbour Mercury*, June 10, 1924, 5)"]


def test_the_list_of_references_cites_nothing() -> None:
    """What stands under References or Works Cited is a list, not a text that cites."""
    draft = (
        "# A\n\nIt held (Ferro, 2018).\n\n"
        "## References\n\nFerro, L. (2018). *The patient bridge*.\n\nMoor and Brill (1990).\n"
    )
    assert mentions_in(draft)[0] == ["(Ferro, 2018)"]


def test_a_list_of_references_without_a_heading_cites_nothing() -> None:
    """A line that reads *Works Cited* opens the list, whatever its marks."""
    assert mentions_in("It held (Ferro, 2018).\n\n**Works Cited**\n\nMoor and Brill (1990) wrote it.\n")[0] == [
        "(Ferro, 2018)"
    ]


@pytest.mark.parametrize(
    ("draft", "places"),
    [
        ("It is so (Adair and Bello 1028).", [("", "1028")]),
        ("It is so (Adair & Bello, 2008, 1028).", [("2008", "1028")]),
        ("Adair and Bello (2008, 1028) say so.", [("2008", "1028")]),
        ("Adair and Bello write so (1028–1031).", [("", "1028–1031")]),
        ("Adair and Bello (2008) write:\n\n> It is so. (1028)", [("2008", None), ("", "1028")]),
        ("It is so (Adair & Bello, 2008, 2011).", [("2008", None), ("2011", None)]),
        ("It is so (Ferro 2018, 1204).", [("2018", "1204")]),
    ],
)
def test_a_page_of_four_figures_is_no_year(draft: str, places: list[tuple[str, str | None]]) -> None:
    """The pages of the list of sources tell; no work is of a year before printing."""
    article = Entry("adair", "article-journal", "Rope", authors=(Name("Adair", "Ana"), Name("Bello", "Bo")),
        issued=Issued(2008), page="1021-40")  # fmt: skip
    _, found = mentions_in(draft, (*ENTRIES, article))
    cites = [cite for mention in found for cite in mention.cites]
    assert [(cite.year, cite.locator.text if cite.locator else None) for cite in cites] == places


def test_an_author_named_as_a_month_keeps_the_initial() -> None:
    """*J. May 2012* is a name and a year, after another's citation too."""
    _, found = mentions_in("It is so (quoted in T. May 2012). It is so (Ferro 2018; May 2012).")
    assert [(cite.names, cite.year) for mention in found for cite in mention.cites] == [
        (("May",), "2012"),
        (("Ferro",), "2018"),
        (("May",), "2012"),
    ]


def test_a_parenthesis_without_end_is_read_all_the_same() -> None:
    """However many works are joined by *and*, the reading ends."""
    draft = "It held (" + "Ferro 2018 and " * 2000 + "Sands 2021).\n"
    assert len(mentions_in(draft)[0]) == 1


def test_footnotes_hold_citations_full_and_short() -> None:
    """A note's full citation, short citation and *ibid.* are each one mention, unknown works too."""
    draft = (
        "It held.[^1] It broke.[^2]\n\n"
        "[^1]: Lucia Ferro, *The Patient Bridge* (Leeds: Mole Press, 2018), 65; "
        "see Ann Moor, “Rust,” *Iron* 4 (1990): 12.\n\n"
        "[^2]: Ibid., 66. The archive (Leeds: Mole House) is closed.\n"
    )
    words, found = mentions_in(draft)
    assert [mention.form for mention in found] == ["note", "note", "note"]
    assert [mention.cites[0].locator and mention.cites[0].locator.text for mention in found] == ["65", "12", "66"]
    assert found[0].cites[0].year == "2018"
    assert words[2] == "Ibid., 66"


def test_a_title_in_italics_before_its_publisher_is_no_quotation_of_a_source() -> None:
    """*A Title* (Penguin, 1987) gives a book's publisher."""
    assert mentions_in("I read *The Long Pier* (Penguin, 1987) twice.\n")[0] == []


def test_acronyms_are_learnt_where_they_are_introduced() -> None:
    """Brackets after a name introduce its short form, whatever small words the name holds."""
    assert short_forms("the Department of Work and Pay (DWP) and Sea Board [SB]") == {
        "dwp": "departmentofworkandpay",
        "sb": "seaboard",
    }


PIECES = st.sampled_from(
    (
        "( ) [ ] ; , . : “ ” \" ' * _ & – > \n \n\n 2019 2019a n.d. 102 p. pp. 3–5 1.2.34 Ferro Sands Hollis "
        "and Brandt et al. see cf. qtd. in as cited in World Health Organization WHO *Tide* “Ferry Men Return” May "
        "12:34 xiv ibid. [^1] [^1]: ’s"
    ).split(" ")
)


@given(st.one_of(st.text(max_size=200), st.lists(PIECES, max_size=40).map(" ".join)))
def test_any_text_is_read_and_mentions_lie_apart_within_it(text: str) -> None:
    """No text stops the reading; mentions do not overlap, and their parts lie within the draft."""
    found = recognise(read_manuscript(text), ENTRIES)
    assert all(first.span.end <= second.span.start for first, second in pairwise(found))
    for mention in found:
        assert 0 <= mention.span.start < mention.span.end <= len(text)
        for cite in mention.cites:
            assert mention.span.contains(cite.span)
            assert cite.locator is None or mention.span.contains(cite.locator.span)
