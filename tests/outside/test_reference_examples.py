"""Published example references, and in-text forms, set by us and compared letter by letter.

**Source**: MLA Handbook, 9th ed.; APA Publication Manual, 7th ed.; Chicago Manual of Style, 17th ed.: examples of the
manuals' own pages and of public library guides, corrected where a guide errs; numbers 15 (APA), 10–12 (Chicago
author-date) and 9–10 (Chicago notes) from memory. Fields are read off the expected rendering; quotation marks are
compared without their curl.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from fairhand.citing.csl_json import read_csl_json
from fairhand.citing.recognise import recognise
from fairhand.citing.rendering import citation_request, read_answer, reference_request
from fairhand.citing.resolve import resolve
from fairhand.citing.styles import find_style
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.inline import Inline, Link, Note, Styled, Text
from fairhand.press.pandoc import run_pandoc

EXAMPLES = json.loads((Path(__file__).parent / "reference_examples.json").read_text(encoding="utf-8"))
MARKS = str.maketrans("’‘“”", "''\"\"")
FLOOR = 0.95
"""The least share of each list that must come out letter by letter."""


def written(inlines: tuple[Inline, ...]) -> str:
    """Inlines as the examples are written: slanted words between asterisks."""
    out = ""
    for inline in inlines:
        match inline:
            case Text(text):
                out += text
            case Styled("italic", children):
                out += f"*{written(children)}*"
            case Styled(_, children) | Link(children) | Note(children):
                out += written(children)
            case _:
                pytest.fail(f"unexpected in a reference: {inline}")
    return out.translate(MARKS)


def set_draft(draft: str, items: list[dict[str, object]], style: str) -> list[str]:
    """Each citation of the draft as it comes out, in order."""
    entries, problems = read_csl_json(json.dumps(items))
    assert not problems
    manuscript = read_manuscript(draft)
    mentions = recognise(manuscript, entries)
    resolved = resolve(manuscript, mentions, entries)
    request = citation_request(manuscript, mentions, resolved, entries, find_style(style))
    return [written(each.inlines) for each in read_answer(run_pandoc(request), request).mentions]


def share(name: str, pairs: list[tuple[str, str]]) -> None:
    """Print how many came out exactly, and hold the floor."""
    misses = [(got, wanted) for got, wanted in pairs if got != wanted]
    print(f"{name}: {len(pairs) - len(misses)} of {len(pairs)} exact")
    for got, wanted in misses:
        print(f"  got    {got}\n  wanted {wanted}")
    assert len(pairs) - len(misses) >= FLOOR * len(pairs), misses


@pytest.mark.parametrize("style", ["mla-9", "apa-7", "chicago-author-date-17"])
def test_references_come_out_as_the_manual_prints_them(style: str) -> None:
    """Each example reference is rendered letter by letter."""
    entries, problems = read_csl_json(json.dumps([each["item"] for each in EXAMPLES[style]]))
    assert not problems
    request = reference_request(entries, find_style(style))
    references = dict(read_answer(run_pandoc(request), request).references)
    share(style, [(written(references[each["item"]["id"]]), each["expected"]) for each in EXAMPLES[style]])


def test_notes_come_out_as_the_manual_prints_them() -> None:
    """First notes are full, later ones short, and the bibliography turns the first name round."""
    examples = EXAMPLES["chicago-notes-17"]
    notes = [(each, "note", "at") for each in examples]
    notes += [(each, "later", "later_at") for each in examples if "later" in each]
    cites = []
    for each, _, at in notes:
        person = (each["item"].get("author") or each["item"]["editor"])[0]
        title = each["item"]["title"].partition(":")[0]
        mark = "*" if each["item"]["type"] == "book" else '"'
        cites.append(f"It is so ({person['family']}, {mark}{title}{mark} {each[at]}).")
    got = set_draft("\n\n".join(cites), [each["item"] for each in examples], "chicago-notes-17")
    pairs = [(one, each[key]) for one, (each, key, _) in zip(got, notes, strict=True)]
    request = reference_request(
        read_csl_json(json.dumps([each["item"] for each in examples]))[0], find_style("chicago-notes-17")
    )
    references = dict(read_answer(run_pandoc(request), request).references)
    pairs += [(written(references[e["item"]["id"]]), e["bibliography"]) for e in examples if "bibliography" in e]
    share("chicago-notes-17", pairs)


@pytest.mark.parametrize(
    ("style", "at", "expected"),
    [
        ("mla-9", 0, "(Gleick 12)"),
        ("apa-7", 1, "(Grady et al., 2019)"),
        ("apa-7", 14, "(Piaget & Inhelder, 1966/1969)"),
        ("chicago-author-date-17", 5, "(Keng, Lin, and Orazem 2017, 9–10)"),
    ],
)
def test_the_examples_in_text_citations(style: str, at: int, expected: str) -> None:
    """The in-text citation printed beside an example comes out letter by letter."""
    assert set_draft(f"It is so {expected}.", [EXAMPLES[style][at]["item"]], style) == [expected]


def book(key: str, authors: str, year: int | None, title: str, **fields: object) -> dict[str, object]:
    """A record made up for the rules below: authors as ``Family, Given; Family, Given``."""
    record: dict[str, object] = {"id": key, "type": "book", "title": title, "publisher": "Quay Books", **fields}
    if authors:
        record["author"] = [
            dict(zip(("family", "given"), name.split(", "), strict=True)) for name in authors.split("; ")
        ]
    if year:
        record["issued"] = {"date-parts": [[year]]}
    return record


SHELF = [
    book("baron", "Baron, Ada", 2001, "Fair Winds"),
    book("dorris", "Dorris, Michael; Erdrich, Louise", 1991, "The Crown"),
    book("ali", "Ali, Farid; Thompson, Jo", 1999, "Wells"),
    book("keng", "Keng, Shao-Hsun; Lin, Chun-Hung; Orazem, Peter F.", 2017, "Access"),
    book("abel", "Abel, Tom; Birch, Una; Cole, Vic; Dane, Wes", 2015, "Rope"),
    book("roundtable", "", 2004, "Roundtable", type="article-magazine", **{"container-title": "The Quay"}),
    book("lights", "", 2014, "Harbour Lights"),
    book("change", "", 2013, "Achieving Change: A Report", type="chapter", **{"container-title": "The Quay"}),
    book("club", "", None, "Form a Club", type="webpage", author=[{"literal": "Athletics Quay"}]),
    book("aardvark", "Koriagin, Ana", 2016, "The Aardvark"),
    book("zebra", "Koriagin, Ana", 2016, "A Zebra"),
    book("light-i", "Light, Ivan", 2006, "Deflecting"),
    book("light-m", "Light, Martha", 2008, "Adult"),
]
RULES = [
    ("one author", "(Baron, 2001, p. 194)", "(Baron 194)", "(Baron, 2001, p. 194)", "(Baron 2001, 194)"),
    (
        "two",
        "(Dorris & Erdrich, 1991, p. 23)",
        "(Dorris and Erdrich 23)",
        "(Dorris & Erdrich, 1991, p. 23)",
        "(Dorris and Erdrich 1991, 23)",
    ),
    (
        "three",
        "(Keng et al., 2017, p. 9)",
        "(Keng et al. 9)",
        "(Keng et al., 2017, p. 9)",
        "(Keng, Lin, and Orazem 2017, 9)",
    ),
    ("four", "(Abel et al., 2015, p. 5)", "(Abel et al. 5)", "(Abel et al., 2015, p. 5)", "(Abel et al. 2015, 5)"),
    ("named in the sentence", "Ali and Thompson (1999, p. 3)", "(3)", "(1999, p. 3)", "(1999, 3)"),
    (
        "no author, a book",
        "(*Harbour Lights*, 2014, p. 3)",
        "(*Harbour Lights* 3)",
        "(*Harbour Lights*, 2014, p. 3)",
        "(*Harbour Lights* 2014, 3)",
    ),
    (
        "no author, a part",
        '("Achieving Change," 2013, p. 1)',
        '("Achieving Change" 1)',
        '("Achieving Change," 2013, p. 1)',
        '("Achieving Change" 2013, 1)',
    ),
    ("no date", "(Athletics Quay, n.d.)", "(Athletics Quay)", "(Athletics Quay, n.d.)", "(Athletics Quay, n.d.)"),
    (
        "one year, told apart by title without its article",
        "(Koriagin, 2016b, p. 2)",
        "(Koriagin, *Zebra* 2)",
        "(Koriagin, 2016b, p. 2)",
        "(Koriagin 2016b, 2)",
    ),
    (
        "the other of that year",
        "(Koriagin, 2016a, p. 3)",
        "(Koriagin, *Aardvark* 3)",
        "(Koriagin, 2016a, p. 3)",
        "(Koriagin 2016a, 3)",
    ),
    ("one surname", "(I. Light, 2006, p. 4)", "(I. Light 4)", "(I. Light, 2006, p. 4)", "(I. Light 2006, 4)"),
    ("the other Light", "(M. Light, 2008, p. 5)", "(M. Light 5)", "(M. Light, 2008, p. 5)", "(M. Light 2008, 5)"),
    (
        "several works",
        "(Dorris & Erdrich, 1991; Baron, 2001)",
        "(Dorris and Erdrich; Baron)",
        "(Baron, 2001; Dorris & Erdrich, 1991)",
        "(Dorris and Erdrich 1991; Baron 2001)",
    ),
    (
        "second hand",
        "(Reyes, as cited in Baron, 2001, p. 34)",
        "(Reyes qtd. in Baron 34)",
        "(Reyes, as cited in Baron, 2001, p. 34)",
        "(Reyes, quoted in Baron 2001, 34)",
    ),
    *(
        (
            f"pages {pages}",
            f"(Baron, 2001, pp. {pages})",
            f"(Baron {mla})",
            f"(Baron, 2001, pp. {apa})",
            f"(Baron 2001, {cms})",
        )
        for pages, mla, apa, cms in (
            ("69-88", "69-88", "69–88", "69–88"),
            ("150-159", "150-59", "150–159", "150–59"),
            ("490-507", "490-507", "490–507", "490–507"),
            ("117-118", "117-18", "117–118", "117–18"),
            ("247-288", "247-88", "247–288", "247–88"),
            ("100-104", "100-04", "100–104", "100–104"),
            ("315-316", "315-16", "315–316", "315–16"),
        )
    ),
]
"""Case, as the draft has it, then as MLA 9, APA 7 and Chicago author-date 17 have it."""


@pytest.mark.parametrize(("style", "column"), [("mla-9", 2), ("apa-7", 3), ("chicago-author-date-17", 4)])
def test_in_text_forms(style: str, column: int) -> None:
    """Authors, dates, titles and ranges of pages stand in the text as each manual has them.

    **Source**: MLA 9, chapter 6 and 5.89; APA 7, 8.10–8.21; CMOS 17, 15.20–15.31 and 9.61.
    """
    got = set_draft("\n\n".join(f"It is so {row[1]}." for row in RULES), SHELF, style)
    assert [(row[0], one) for row, one in zip(RULES, got, strict=True)] == [(row[0], row[column]) for row in RULES]


def test_the_18th_edition_of_chicago() -> None:
    """From three authors on the text names one, and a publisher's city goes. **Source**: CMOS 18, from memory."""
    assert set_draft("So (Keng et al., 2017, p. 9).", SHELF, "chicago-author-date-18") == ["(Keng et al. 2017, 9)"]
    items = [book("ame", "Ame, Ana", 2001, "Salt", **{"publisher-place": "London"})]
    request = reference_request(read_csl_json(json.dumps(items))[0], find_style("chicago-notes-18"))
    ((_, line),) = read_answer(run_pandoc(request), request).references
    assert written(line) == "Ame, Ana. *Salt*. Quay Books, 2001."


def test_many_authors_in_the_list() -> None:
    """APA names twenty, and of more the first nineteen and the last. **Source**: APA 7, 9.8."""
    letters = "ABCDEFGHIJKLMNOPQRSTU"
    items = [
        book(f"b{count}", "; ".join(f"N{a.lower()}, {a}." for a in letters[:count]), 1980 + count, "Salt")
        for count in (20, 21)
    ]
    request = reference_request(read_csl_json(json.dumps(items))[0], find_style("apa-7"))
    lines = {key: written(line) for key, line in read_answer(run_pandoc(request), request).references}
    assert ", Ns, S., & Nt, T. (2000)" in lines["b20"]
    assert "…" not in lines["b20"]
    assert ", Ns, S., … Nu, U. (2001)" in lines["b21"]


@pytest.mark.parametrize(
    ("style", "expected"),
    [
        (
            "ieee",
            '[1] A. Ame and B. Bone, "Salt," *Tides*, vol. 14, no. 2, pp. 101–113, 2019, doi: 10.1000/182.',
        ),
        ("ama-11", "1. Ame A, Bone B. Salt. *Tides*. 2019;14(2):101-113. doi:10.1000/182"),
        ("vancouver", "1. Ame A, Bone B. Salt. Tides. 2019;14(2):101–13. doi:10.1000/182"),
        (
            "harvard",
            'Ame, A. and Bone, B. (2019) "Salt," *Tides*, 14(2), pp. 101–113. Available at: https://doi.org/10.1000/182.',
        ),
    ],
)
def test_an_article_in_the_numbered_styles_and_harvard(style: str, expected: str) -> None:
    """A journal article stands in the list as the style has it. **Source**: from memory."""
    fields = {"container-title": "Tides", "volume": "14", "issue": "2", "page": "101-113", "DOI": "10.1000/182"}
    item = book("ame", "Ame, Ana; Bone, Bo", 2019, "Salt", type="article-journal", **fields)
    request = reference_request(read_csl_json(json.dumps([item]))[0], find_style(style))
    ((_, line),) = read_answer(run_pandoc(request), request).references
    assert written(line) == expected


def test_faults_seen_in_guides_are_not_made() -> None:
    """A comma stands before *and* and *et al.*, a press keeps its P, pages run in full in APA, a DOI has its host.

    **Source**: faults seen in public guides, as the trade's check values list them.
    """
    costello = book(
        "a", "Costello, Brandon; Whitted, Qiana J.", 2008, "Panels", publisher="University of Chicago Press"
    )
    johnson = book("b", "", 2001, "Quilts", editor=[{"family": "Johnson", "given": "N. G."}] * 3)
    pages = {"container-title": "Science", "volume": "1", "page": "221-8", "DOI": "https://10.1126/science.1"}
    article = book("c", "Ame, Ana", 2014, "Whose culture is it?: The promise", type="article-journal", **pages)
    city = book("d", "Zed, Zoe", 2014, "Rope", **{"publisher-place": "Boston"})
    found = {}
    for style in ("mla-9", "apa-7"):
        entries, _ = read_csl_json(json.dumps([costello, johnson, article, city]))
        request = reference_request(entries, find_style(style))
        found[style] = {key: written(line) for key, line in read_answer(run_pandoc(request), request).references}
    assert found["mla-9"]["a"] == "Costello, Brandon, and Qiana J. Whitted. *Panels*. U of Chicago P, 2008."
    assert found["mla-9"]["b"].startswith("Johnson, N. G., et al., editors. *Quilts*.")
    assert found["apa-7"]["c"] == (
        "Ame, A. (2014). Whose culture is it? The promise. *Science, 1*, 221–228. https://doi.org/10.1126/science.1"
    )
    assert found["apa-7"]["d"] == "Zed, Z. (2014). *Rope*. Quay Books."
