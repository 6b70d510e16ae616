from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.mention import Resolved
from fairhand.citing.recognise import recognise
from fairhand.citing.resolve import resolve
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.entry import Entry, Issued, Name


def person(name: str) -> Name:
    """A name written *Family, Given*; a body's without a comma."""
    family, comma, given_name = name.partition(", ")
    return Name(family, given_name) if comma else Name(literal=family)


def entry(entry_id: str, who: str, year: int | None, title: str = "", **more: object) -> Entry:
    """An entry by authors parted by semicolons."""
    authors = tuple(person(one) for one in who.split("; ") if one)
    return Entry(entry_id, "book", title, authors=authors, issued=Issued(year) if year else None, **more)  # type: ignore[arg-type]


ENTRIES = (
    entry("vale-a", "Vale, Anna", 1990, "Ropes"),
    entry("vale-b", "Vale, Bruno", 1990, "Tar"),
    entry("moor-quay", "Moor, Ines", 2001, "The Quay at Night"),
    entry("moor-salt", "Moor, Ines", 2001, "A Salt Winter"),
    entry("moor-2005", "Moor, Ines", 2005, "Gulls"),
    entry("hale-orr", "Hale, Tom; Orr, Ada", 2010, "Sounding Lead"),
    entry("hale-orr-pim", "Hale, Tom; Orr, Ada; Pim, Jo", 2012, "Ballast"),
    entry("board", "Harbour Lights Board", 1999, "Lamps"),
    entry("garcia", "García Lorca, Eva", 2003, "Fog"),
    entry("reprint", "Quist, Nils", 1969, "The Ice Year", original_year=1931),
    entry("undated", "Sill, Ruth", None, "Pilots"),
    Entry("press", "book", "Fathoms", authors=(Name("Teal", "Ivo"),), issued=Issued(literal="in press")),
    Entry("edited", "book", "Voices", editors=(Name("Bram", "Piet"),), issued=Issued(2008)),
    Entry("news", "article-newspaper", "Tide Table Wrong: Two Boats Lost", container_title="The Sound Courier"),
)


def one(draft: str, entries: tuple[Entry, ...] = ENTRIES) -> Resolved:
    """What the last citation of a draft means."""
    manuscript = read_manuscript(draft + "\n")
    return resolve(manuscript, recognise(manuscript, entries), entries)[-1]


@pytest.mark.parametrize(
    ("draft", "meant"),
    [
        ("A. van der Vale puts it down to chance (94).", "vale-a"),
        ("It is so (Quist).\n\n> The Hale and Orr lead was used. (12)", "reprint"),
        ("It sank (Hale & Orr, 2010).", "hale-orr"),
        ("It sank (Hale et al., 2012).", "hale-orr-pim"),
        ("It sank (Hale, Orr, and Pim 2012).", "hale-orr-pim"),
        ("It sank (Orr and Hale 2010).", "hale-orr"),
        ("It sank (Hale 2010).", "hale-orr"),
        ("It sank (A. Vale, 1990).", "vale-a"),
        ("It sank (Bruno Vale 1990).", "vale-b"),
        ("It sank (Vale, *Tar* 4).", "vale-b"),
        ("It sank (Moor, 2001a).", "moor-quay"),
        ("It sank (Moor, 2001b).", "moor-salt"),
        ("It sank (Moor, “Salt Winter” 12).", "moor-salt"),
        ("It sank (Harbour Lights Board [HLB], 1999).", "board"),
        ("The Harbour Lights Board (HLB) warned. It sank (HLB, 1999).", "board"),
        ("It sank (Garcia Lorca 2003).", "garcia"),
        ("It sank (Lorca 2003).", "garcia"),
        ("It sank (Quist, 1931/1969).", "reprint"),
        ("It sank (Quist 1931).", "reprint"),
        ("It sank (Quist [1931] 1969, 4).", "reprint"),
        ("It sank (Moor [2001] 2005, 4).", "moor-2005"),
        ("It sank (*Hale and Orr*, 2010).", "hale-orr"),
        ("It sank (Bram [ed.] 2008, 4).", "edited"),
        ("It sank (Tide Table Wrong 4).", "news"),
        ("It sank (Sill, “Pilots”).", "undated"),
        ("It sank (Sill, n.d.).", "undated"),
        ("It sank (Teal, in press).", "press"),
        ("It sank (Bram 2008).", "edited"),
        ("It sank (“Tide Table Wrong” 4).", "news"),
        ("It sank (*Sound Courier*, n.d., 4).", "news"),
        ("It sank, as Anna Vale (1990) says.", "vale-a"),
        ("Anna Vale calls it “the last rope” (1990, 4).", "vale-a"),
        ("In *The Quay at Night*, Moor calls it “late” (44).", "moor-quay"),
        ("In *The Quay at Night* it is late (Moor 44).", "moor-quay"),
        ("In their 2012 book Hale and others say so. Hale and Orr call it “heavy” (4).", "hale-orr"),
        ("It sank. A. Vale calls it “the last rope” (4).", "vale-a"),
        ("Anna Vale saw it sink. Vale calls it “the last rope” (4).", "vale-a"),
        ("Moor returned to it in 2005, when she called it “a gull’s trade” (9).", "moor-2005"),
    ],
)
def test_a_citation_means_the_work_that_its_names_title_and_year_fit(draft: str, meant: str) -> None:
    """Names without accents or initials, acronyms, titles, letters and reprints lead to the work that is meant."""
    found = one(draft)
    assert found.trouble is None, found.why
    assert found.entry == meant


@pytest.mark.parametrize(
    ("draft", "candidates"),
    [
        ("It sank (Vale, 1990).", {"vale-a", "vale-b"}),
        ("It sank (Vale, 1990, p. 12).", {"vale-a", "vale-b"}),
        ("It sank, as Vale (1990) says.", {"vale-a", "vale-b"}),
        ("It sank (Moor, 2001).", {"moor-salt", "moor-quay"}),
        ("Moor says that it sank (12).", {"moor-salt", "moor-quay", "moor-2005"}),
        ("It sank (Moor 12).", {"moor-salt", "moor-quay", "moor-2005"}),
    ],
)
def test_what_fits_several_works_is_ambiguous_whatever_its_page(draft: str, candidates: set[str]) -> None:
    """Without initial, letter, title or full name, nothing tells the works apart."""
    found = one(draft)
    assert found.trouble == "ambiguous"
    assert set(found.candidates) == candidates


def test_a_bare_surname_in_a_parenthesis_stays_ambiguous_but_the_sentence_says_who_is_meant() -> None:
    """The initial belongs in the parenthesis (APA 7, 8.20); the full name tells in which source to look."""
    found = one("Bruno Vale says that it sank (Vale, 1990, p. 4).")
    assert (found.trouble, found.entry) == ("ambiguous", "vale-b")


@pytest.mark.parametrize(
    ("draft", "entry_id", "says"),
    [
        ("It sank (Hale & Orr, 2011).", "hale-orr", "2010"),
        ("As Bram (1998) says, it sank.", "edited", "2008"),
        ("It sank (Moor, 2007).", None, "2001 and 2005"),
        ("It sank (Hale & Orr, n.d.).", "hale-orr", "2010"),
        ("It sank (Sill 1980).", "undated", "no year"),
    ],
)
def test_a_year_that_no_work_of_the_author_has_is_told_with_the_right_one(
    draft: str, entry_id: str | None, says: str
) -> None:
    """The names fit, the year does not; where one work alone is by them, it is named."""
    found = one(draft)
    assert (found.trouble, found.entry) == ("year", entry_id)
    assert says in found.why


@pytest.mark.parametrize(
    ("draft", "says"),
    [
        ("It sank (Harkaway, 1958).", "Harkaway 1958."),
        ("It sank (Halle & Orr, 2010).", "did you mean Hale and Orr?"),
        ("It sank (Harbor Lights Board, 1999).", "did you mean Harbour Lights Board?"),
        ("It sank (C. Vale, 1990).", "did you mean Vale?"),
        ("It sank (Orr, 2010).", "did you mean Hale and Orr?"),
        ("It sank (“Tide Tables Wrong” 4).", "did you mean “Tide Table Wrong”?"),
    ],
)
def test_an_unknown_work_is_told_with_the_one_spelt_most_like_it(draft: str, says: str) -> None:
    """No source fits; a slip of spelling is guessed and asked."""
    found = one(draft)
    assert (found.trouble, found.entry) == ("unknown", None)
    assert says in found.why


def test_a_page_alone_means_the_work_last_named_in_its_paragraph() -> None:
    """The author of the sentence comes first, then what was cited before; the paragraph above does not count."""
    draft = "Hale and Orr (2010) sounded it. It was deep (p. 4). Sill doubts it (p. 9)."
    manuscript = read_manuscript(draft + "\n\nIt was very deep (p. 12).\n")
    resolved = resolve(manuscript, recognise(manuscript, ENTRIES), ENTRIES)
    assert [found.entry for found in resolved] == ["hale-orr", "hale-orr", "undated", None]
    assert resolved[1].named_at is not None
    assert resolved[1].named_at.of(draft) == "Hale and Orr (2010)"
    assert resolved[3].trouble == "unknown"


def test_a_page_alone_shares_the_trouble_of_what_it_follows() -> None:
    """After an ambiguous or unknown name the page is no better known."""
    assert one("Vale (1990) says that it sank (p. 4).").trouble == "ambiguous"
    assert one("Harkaway (1958) says that it sank (p. 4).").trouble == "unknown"


def test_a_page_alone_means_the_work_that_the_paper_is_about() -> None:
    """In a paper whose title names one work, lines and pages without a name are that work's."""
    draft = "# Night in *The Quay at Night*\n\nThe porter speaks first (1.2.3). As Sill says, he lies (p. 3).\n\n"
    assert one(draft + "“Who?” (2.1.4).").entry == "moor-quay"


def test_the_only_source_is_meant_where_none_is_named() -> None:
    """A paper on one text need not name it again."""
    assert one("“The sea came up the stair” (110).", ENTRIES[:1]).entry == "vale-a"


@given(st.text(max_size=120), st.text(max_size=30))
def test_any_text_resolves_one_cite_after_another(text: str, name: str) -> None:
    """Each cite of each mention is resolved, in order, whatever the draft and the list of sources hold."""
    entries = (*ENTRIES, Entry("x", "book", name, authors=(Name(name, name), Name(literal=name))))
    manuscript = read_manuscript(f"{text} ({name}, 1990) and Vale ({text}) says (p. 3).")
    mentions = recognise(manuscript, entries)
    resolved = resolve(manuscript, mentions, entries)
    assert [found.cite for found in resolved] == [cite for mention in mentions for cite in mention.cites]
    assert all(found.trouble or found.entry for found in resolved)


def test_a_work_of_two_is_told_by_both() -> None:
    """The second author is not left out; of many the first stands for all."""
    for names, told in ((("Vale", "Moor"), "A. Vale and A. Moor"), (("Vale", "Moor", "Lind"), "A. Vale and others")):
        work = Entry("x", "book", "Quays", authors=tuple(Name(name, "A.") for name in names), issued=Issued(1990))
        assert told in one("(Vale and Moor 1990)" if len(names) == 2 else "(Vale et al. 1990)", (work,)).why


@pytest.mark.parametrize("pronoun", ["She", "He", "They"])
def test_a_pronoun_is_no_author(pronoun: str) -> None:
    """A year and page after it mean the work of that year cited above, over a block quotation too."""
    draft = (
        f"Moor (2005) writes of gulls.\n\n> A gull waits.\n\n{pronoun} also records a word and notes “it” (2005: 13)."
    )
    assert one(draft).entry == "moor-2005"
    assert (
        one(f"{pronoun} notes that it waits (1877, 13).").why
        == "No author in the list of sources is named before (1877)."
    )
