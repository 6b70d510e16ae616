"""The in-text forms of the manuals, recognised and resolved.

Each row names its source: pages of the bodies that publish the manuals, or guides to them [page], or the manual from
memory [memory]. The share understood is printed and held by a floor.
"""

from __future__ import annotations

from fairhand.citing.recognise import recognise
from fairhand.citing.resolve import resolve
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.entry import Entry, Issued, Name


def entry(
    entry_id: str, who: str, year: int | None, title: str, kind: str = "book", original: int | None = None
) -> Entry:
    """An entry by authors parted by semicolons; without a comma a body."""
    parts = [one.partition(", ") for one in who.split("; ") if one]
    names = tuple(Name(family, given) if comma else Name(literal=family) for family, comma, given in parts)
    return Entry(entry_id, kind, title, authors=names, issued=Issued(year) if year else None, original_year=original)


ENTRIES = (
    entry("baron", "Baron, Naomi S.", 2013, "Redefining Reading"),
    entry("dorris", "Dorris, Michael; Erdrich, Louise", 1999, "The Crown of Columbus"),
    entry("bejarano", "Alonso Bejarano, Carolina; Juárez, Lucia; García, Mirian", 2019, "Decolonizing Ethnography"),
    entry("roundtable", "", 2010, "Roundtable on Reading"),
    entry("gleick", "Gleick, James", 1987, "Chaos: Making a New Science"),
    entry("massoud", "Massoud, Mark", 2020, "Law's Fragile State"),
    entry("ali", "Ali, A.; Thompson, B.", 1999, "A Study of Two"),
    entry("grady", "Grady, J. S.; Her, M.; Moreno, G.; Perez, C.; Yelinek, J.", 2019, "Emotions in storybooks"),
    entry("book", "", 2014, "Interpersonal Skills"),
    entry("achieving", "", 2013, "Achieving Change"),
    entry("athletics", "Athletics New Zealand", None, "Form a new club", "webpage"),
    entry("piaget", "Piaget, J.; Inhelder, B.", 1969, "The psychology of the child", original=1966),
    entry("derry-a", "Derry, K.", 2016, "Autumn walks"),
    entry("derry-b", "Derry, K.", 2016, "The winter walks"),
    entry("light-m", "Light, M. A.", 2008, "Bulbs"),
    entry("light-i", "Light, Ivan", 2006, "Enterprise"),
    entry("adams", "Adams, L.", 2004, "First"),
    entry("zed", "Zed, P.", 2001, "Last"),
    entry("lyon", "Lyon, T.", 2014, "Rabbits"),
    entry("apa", "American Psychological Association", 2020, "Publication manual"),
    entry("smith", "Smith, Zadie", 2016, "Swing Time"),
    entry("grazer", "Grazer, Brian; Fishman, Charles", 2015, "A Curious Mind"),
    entry("keng", "Keng, Shao-Hsun; Lin, Chun-Hung; Orazem, Peter F.", 2017, "Expanding College Access"),
    entry(
        "laumann",
        "Laumann, Edward O.; Gagnon, John H.; Michael, Robert T.",
        1994,
        "The Social Organization of Sexuality",
    ),
    entry("doniger", "Doniger, Wendy", 1999, "Splitting the Difference"),
    entry("cowlishaw", "Cowlishaw, Guy; Dunbar, Robin", 2000, "Primate Conservation Biology"),
    entry("thoreau", "Thoreau, Henry David", 2016, "Walking"),
    entry("hamlet", "Shakespeare, William", 2012, "Hamlet"),
    entry("yale", "Yale University", None, "About Yale: Yale Facts", "webpage"),
)

FORMS: tuple[tuple[str, str, tuple[tuple[str | None, str | None], ...]], ...] = (
    # MLA 9: library guides to the handbook [page]
    ("[page] MLA one author", "(Baron 194)", (("baron", "194"),)),
    ("[page] MLA two authors", "(Dorris and Erdrich 23)", (("dorris", "23"),)),
    ("[page] MLA three and more", "(Alonso Bejarano et al. 4)", (("bejarano", "4"),)),
    ("[page] MLA no author", '("Roundtable" 42)', (("roundtable", "42"),)),
    ("[page] MLA book", "(Gleick 12)", (("gleick", "12"),)),
    ("[memory] MLA range", "(Gleick 69-88)", (("gleick", "69-88"),)),
    ("[memory] MLA short title", "(Gleick, *Chaos* 12)", (("gleick", "12"),)),
    ("[memory] MLA second hand", "(qtd. in Gleick 12)", (("gleick", "12"),)),
    ("[memory] MLA several", "(Baron 194; Gleick 12)", (("baron", "194"), ("gleick", "12"))),
    ("[memory] MLA initial", "(I. Light 259)", (("light-i", "259"),)),
    ("[memory] MLA play", "(*Hamlet* 1.5.35-37)", (("hamlet", "1.5.35-37"),)),
    ("[memory] MLA narrative", "Baron says so (194)", (("baron", "194"),)),
    ("[memory] MLA lines", "(Shakespeare, lines 5-8)", (("hamlet", "5-8"),)),
    ("[memory] MLA chapter", "(Gleick, ch. 3)", (("gleick", "3"),)),
    ("[memory] MLA paragraph", "(Gleick, par. 3)", (("gleick", "3"),)),
    # APA 7: the publisher's own style pages [page]
    ("[page] APA one author", "(Massoud, 2020, p. 4)", (("massoud", "4"),)),
    ("[page] APA two authors", "(Ali & Thompson, 1999, p. 3)", (("ali", "3"),)),
    ("[page] APA two, narrative", "Ali and Thompson (1999) say so", (("ali", None),)),
    ("[page] APA three and more", "(Grady et al., 2019)", (("grady", None),)),
    ("[page] APA book without author", "(*Interpersonal Skills*, 2014)", (("book", None),)),
    ("[page] APA article without author", '("Achieving Change," 2013)', (("achieving", None),)),
    ("[page] APA no date", "(Athletics New Zealand, n.d.)", (("athletics", None),)),
    ("[memory] APA reprint", "(Piaget & Inhelder, 1966/1969)", (("piaget", None),)),
    ("[page] APA letters", "(Derry, 2016a, 2016b)", (("derry-a", None), ("derry-b", None))),
    ("[page] APA initials", "(M. A. Light, 2008; I. Light, 2006)", (("light-m", None), ("light-i", None))),
    ("[page] APA several", "(Adams, 2004; Lyon, 2014; Zed, 2001)", (("adams", None), ("lyon", None), ("zed", None))),
    ("[page] APA group, first", "(American Psychological Association [APA], 2020)", (("apa", None),)),
    ("[page] APA group, later", "(APA, 2020)", (("apa", None),)),
    ("[page] APA second hand", "(Rabbitt, 1982, as cited in Lyon, 2014)", (("lyon", None),)),
    ("[memory] APA parts", "(Lyon, 2014, Table 1)", (("lyon", "1"),)),
    ("[memory] APA pages apart", "(Lyon, 2014, pp. 3–5, 12)", (("lyon", "3–5, 12"),)),
    ("[memory] APA paragraphs", "(Lyon, 2014, paras. 2–3)", (("lyon", "2–3"),)),
    ("[memory] APA time", "(Lyon, 2014, 2:12)", (("lyon", "2:12"),)),
    ("[memory] APA see", "(see Lyon, 2014, for a review)", (("lyon", None),)),
    ("[memory] APA page apart", "Lyon (2014) says so (p. 9)", (("lyon", None), ("lyon", "9"))),
    ("[memory] APA e.g.", "(e.g., Adams, 2004; Zed, 2001)", (("adams", None), ("zed", None))),
    # Chicago 17, author-date: the manual's own quick guide [page]
    ("[page] Chicago one author", "(Smith 2016, 315–16)", (("smith", "315–16"),)),
    ("[page] Chicago two authors", "(Grazer and Fishman 2015, 12)", (("grazer", "12"),)),
    ("[page] Chicago three authors", "(Keng, Lin, and Orazem 2017, 9–10)", (("keng", "9–10"),)),
    ("[memory] Chicago et al.", "(Laumann et al. 1994, 262)", (("laumann", "262"),)),
    ("[memory] Chicago no date", "(Yale University, n.d.)", (("yale", None),)),
    ("[memory] Chicago several", "(Smith 2016; Doniger 1999, 65)", (("smith", None), ("doniger", "65"))),
    ("[memory] Chicago second hand", "(quoted in Smith 2016, 31)", (("smith", "31"),)),
    ("[memory] Chicago narrative", "Smith (2016, 31) says so", (("smith", "31"),)),
    ("[memory] Chicago volume", "(Smith 2016, 2:45)", (("smith", "2:45"),)),
    ("[memory] Chicago note", "(Smith 2016, 341n2)", (("smith", "341n2"),)),
    ("[memory] Chicago figure", "(Smith 2016, fig. 3)", (("smith", "3"),)),
    ("[memory] Chicago remark", "(Smith 2016, 31; italics mine)", (("smith", "31"),)),
)

NOTES: tuple[tuple[str, str, str], ...] = (
    # Chicago 17, notes: the manual's own quick guide and library guides [page]
    ("Wendy Doniger, *Splitting the Difference* (Chicago: University of Chicago Press, 1999), 65.", "doniger", "65"),
    ("Doniger, *Splitting the Difference*, 66–67.", "doniger", "66–67"),
    (
        (
            "Guy Cowlishaw and Robin Dunbar, *Primate Conservation Biology* "
            "(Chicago: University of Chicago Press, 2000), 104–5."
        ),
        "cowlishaw",
        "104–5",
    ),
    ("Cowlishaw and Dunbar, *Primate Conservation Biology*, 106.", "cowlishaw", "106"),
    (
        (
            "Edward O. Laumann et al., *The Social Organization of Sexuality: Sexual Practices in the United States* "
            "(Chicago: University of Chicago Press, 1994), 262."
        ),
        "laumann",
        "262",
    ),
    ("Laumann et al., *Social Organization of Sexuality*, 24.", "laumann", "24"),
    (
        (
            "Brian Grazer and Charles Fishman, *A Curious Mind: The Secret to a Bigger Life* "
            "(New York: Simon & Schuster, 2015), 12."
        ),
        "grazer",
        "12",
    ),
    ("Grazer and Fishman, *Curious Mind*, 37.", "grazer", "37"),
    (
        (
            "Henry David Thoreau, “Walking,” in *The Making of the American Essay*, "
            "ed. John D’Agata (Minneapolis: Graywolf Press, 2016), 177–78."
        ),
        "thoreau",
        "177–78",
    ),
    ("Thoreau, “Walking,” 182.", "thoreau", "182"),
)


def understood(draft: str) -> tuple[tuple[str | None, str | None], ...]:
    """Source and place of each work that a draft cites."""
    manuscript = read_manuscript(draft)
    found = resolve(manuscript, recognise(manuscript, ENTRIES), ENTRIES)
    return tuple((one.entry, one.cite.locator.text if one.cite.locator else None) for one in found)


def test_the_forms_of_the_manuals_are_understood() -> None:
    """Every in-text form of MLA 9, APA 7 and Chicago 17 means the source and place that it means there."""
    missed = [(mark, form) for mark, form, meant in FORMS if understood(f"It was so; thus {form}.\n") != meant]
    print(f"in-text forms: {len(FORMS) - len(missed)} of {len(FORMS)} understood; missed: {missed}")
    assert not missed


def test_the_notes_of_the_manual_are_understood() -> None:
    """Full and shortened notes of Chicago 17 mean their source and page."""
    missed = []
    for note, source, page in NOTES:
        if understood(f"It was so.[^1]\n\n[^1]: {note}\n") != ((source, page),):
            missed.append((note, understood(f"It was so.[^1]\n\n[^1]: {note}\n")))
    print(f"notes: {len(NOTES) - len(missed)} of {len(NOTES)} understood; missed: {missed}")
    assert not missed
