"""Reference lists of published articles, set as PDF by typst in nine styles and three layouts, mined out of it again.

Data: open articles of the Public Library of Science in JATS XML. Pandoc sets their references in each style, typst the
pages, PDFium gives the words back. An entry is found where its words come back whole, with nothing of its neighbours;
a field is right where it says, letter by letter, what the article's own XML says (case, spaces and signs aside), and
is asked for only where the style prints it. Nothing was trained on them.
"""

from __future__ import annotations

import json
import random
import re
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

import pypandoc

from fairhand.leads.mining import mine_references
from fairhand.reading.source import read_source

STYLES = Path(str(__file__)).parents[2] / "src" / "fairhand" / "built" / "styles"
SET_IN = (
    "apa",
    "modern-language-association",
    "chicago-author-date",
    "nlm-citation-sequence",
    "ieee",
    "harvard-cite-them-right",
    "american-chemical-society",
    "american-sociological-association",
    "mhra-notes",
)
HEADS = (
    "header: context [#if calc.odd(here().page()) [Annals of Quays #h(1fr) #counter(page).display()] "
    "else [#counter(page).display() #h(1fr) Lind and others]]"
)
ONE_COLUMN = """
#set page(paper: "us-letter", margin: 1in, footer: context align(center, counter(page).display()))
#set text(size: 11pt)
"""
TWO_COLUMNS = f"""
#set page(paper: "a4", columns: 2, margin: 1.8cm, {HEADS})
#set text(size: 8.5pt, hyphenate: true, lang: "en")
#set par(justify: true)
"""
DOUBLE_SPACED = """
#set page(paper: "us-letter", margin: 1in, header: align(right)[Lind #context counter(page).display()])
#set text(size: 12pt)
#set par(leading: 1.2em, spacing: 1.2em)
"""
SHAPES = (ONE_COLUMN, TWO_COLUMNS, DOUBLE_SPACED)
KINDS = {"book": "book", "confproc": "paper-conference", "report": "report", "thesis": "thesis", "web": "webpage"}
NUMBER = re.compile(r"\s*(\[\d+\]|\(\d+\)|\d+\.|\d+(?=\s))\s*")
MOST = 40
"""References of one article that are set."""


def words_of(element: Any, path: str) -> str:
    """The text of the first element of that name, on one line."""
    found = element.find(f".//{path}")
    return " ".join("".join(found.itertext()).split()) if found is not None else ""


def read_article(path: Path) -> tuple[list[dict[str, Any]], list[str]]:
    """The references of an article as CSL-JSON, those that say enough, and its first paragraphs."""
    from lxml import etree

    root = etree.parse(str(path), etree.XMLParser(resolve_entities=False, no_network=True, load_dtd=False)).getroot()
    records = []
    for number, reference in enumerate(root.iterfind(".//ref-list//ref")):
        kinds = ("element-citation", "mixed-citation", "nlm-citation")
        cited = next((found for kind in kinds for found in reference.iter(kind)), None)
        record = read_citation(cited, f"r{number}") if cited is not None else {}
        if record.get("title") and (record.get("author") or record.get("editor")) and "issued" in record:
            records.append(record)
    paragraphs = (" ".join("".join(map(str, p.itertext())).split()) for p in root.iterfind(".//body//sec/p"))
    return records[:MOST], [text for text in paragraphs if len(text) > 300][:8]


def read_citation(cited: Any, id_: str) -> dict[str, Any]:
    """One reference of the XML as CSL-JSON."""
    people: dict[str, list[dict[str, str]]] = {"author": [], "editor": []}
    for name in cited.iterfind(".//name"):
        role = "editor" if name.getparent().get("person-group-type") == "editor" else "author"
        people[role].append({"family": words_of(name, "surname"), "given": words_of(name, "given-names")})
    body = words_of(cited, "collab")
    article = words_of(cited, "article-title") or words_of(cited, "chapter-title")
    place = words_of(cited, "source")
    kind = KINDS.get(cited.get("publication-type") or cited.get("citation-type") or "", "article-journal")
    first, last = words_of(cited, "fpage"), words_of(cited, "lpage")
    year = re.match(r"\d{4}", words_of(cited, "year"))
    doi = re.search(r"10\.\d{4,}/[^\s<]+", "".join(cited.itertext()))
    record = {
        "id": id_,
        "type": "chapter" if kind == "book" and article else kind,
        "author": [one for one in people["author"] if one["family"]] or ([{"literal": body}] if body else []),
        "editor": [one for one in people["editor"] if one["family"]],
        "title": article or place,
        "container-title": place if article else "",
        "volume": words_of(cited, "volume"),
        "issue": words_of(cited, "issue"),
        "page": f"{first}-{last}" if last and last != first else first,
        "publisher": words_of(cited, "publisher-name"),
        "publisher-place": words_of(cited, "publisher-loc"),
        "issued": {"date-parts": [[int(year[0])]]} if year else None,
        "DOI": doi[0].rstrip(".") if doi else "",
    }
    return {key: value for key, value in record.items() if value}


def set_references(records: list[dict[str, Any]], style: str, scratch: Path) -> list[tuple[str, str]]:
    """Each reference as the style has it, with the record's id, in the style's order."""
    listed = scratch / "listed.json"
    listed.write_text(json.dumps(records), "utf-8")
    told = pypandoc.convert_text(
        "---\nnocite: '@*'\n---\n",
        "json",
        format="markdown",
        extra_args=["--citeproc", f"--csl={STYLES / style}.csl", f"--bibliography={listed}"],
    )
    return list(entries_in(json.loads(told)["blocks"]))


def entries_in(blocks: list[dict[str, Any]]) -> Iterator[tuple[str, str]]:
    """The entries of the list, in pandoc's tree."""
    for block in blocks:
        if block["t"] == "Div":
            (name, _, _), inner = block["c"]
            if name.startswith("ref-"):
                yield name[4:], " ".join(text_in(inner).split())
            else:
                yield from entries_in(inner)


def text_in(node: Any) -> str:
    """The words of a piece of pandoc's tree."""
    if isinstance(node, list):
        return "".join(map(text_in, node))
    if not isinstance(node, dict):
        return ""
    kind, inner = node["t"], node.get("c", [])
    if kind in {"Str", "Space", "SoftBreak"}:
        return str(inner) if kind == "Str" else " "
    if kind == "Quoted":
        marks = "‘’" if inner[0]["t"] == "SingleQuote" else "“”"
        return f"{marks[0]}{text_in(inner[1])}{marks[1]}"
    if kind in {"Span", "Link", "Div"}:
        return f" {text_in(inner[1])} " if "csl-left-margin" in str(inner[0]) else text_in(inner[1])
    return text_in(inner) + (" " if kind in {"Para", "Plain"} else "")


def typeset(paragraphs: list[str], entries: list[tuple[str, str]], shape: str, heading: str) -> bytes:
    """The article as PDF: its paragraphs, the heading, and the entries, numbered ones with their numbers apart."""
    import typst

    quoted = [f"#{json.dumps(text, ensure_ascii=False)}" for text in paragraphs]
    for _, text in entries:
        number = NUMBER.match(text)
        if number and all(NUMBER.match(one) for _, one in entries):
            cells = (json.dumps(part, ensure_ascii=False) for part in (number[1], text[number.end() :]))
            quoted.append("#grid(columns: (2.2em, 1fr), {})".format(", ".join(f"[#{cell}]" for cell in cells)))
        else:
            quoted.append(f"#par(hanging-indent: 1.5em)[#{json.dumps(text, ensure_ascii=False)}]")
    quoted.insert(len(paragraphs), f"= {heading}")
    return bytes(typst.compile((shape + "\n\n".join(quoted)).encode()))


def plain(text: object) -> str:
    """Letters and digits alone."""
    return re.sub(r"[\W_]+", "", str(text).casefold())


def fields_of(csl: Mapping[str, Any], printed: str) -> dict[str, str]:
    """What a record says in the fields that are asked for, as far as it is printed; all of it for an empty text."""
    people = csl.get("author") or []
    said = {name: plain(csl.get(name, "")) for name in ("title", "container-title", "publisher", "DOI")}
    surnames = [plain(one.get("family") or one.get("literal", "")) for one in people]
    said["surnames"] = "".join(one for one in surnames if not printed or one in printed)
    said["volume"] = plain(re.sub(r"^vol(ume)?\.?\s|[(/].*", "", str(csl.get("volume", ""))))
    said["first page"] = plain(re.split(r"[-–]", str(csl.get("page", "")))[0])
    said["year"] = str((csl.get("issued") or {}).get("date-parts", [[""]])[0][0])
    return {name: value for name, value in said.items() if value and value in (printed or value)} | (
        {"surnames": said["surnames"]} if said["surnames"] else {}
    )


def test_references_are_mined_out_of_pdfs(outside_data: Callable[[str], Path], tmp_path: Path) -> None:
    """Entries are found whole, with recall and precision of .97 at least; F1 over their fields is .88 at least."""
    files = sorted(outside_data("data/articles-jats").glob("*.xml"))
    random.Random(5).shuffle(files)  # noqa: S311 - a sample
    found, given, whole = 0, 0, 0
    right: Counter[str] = Counter()
    told: Counter[str] = Counter()
    wanted: Counter[str] = Counter()
    done = 0
    for path in files:
        records, paragraphs = read_article(path)
        if len(records) < 8:
            continue
        style, shape = SET_IN[done % len(SET_IN)], SHAPES[done % len(SHAPES)]
        entries = set_references(records, style, tmp_path)
        pdf = typeset(paragraphs, entries, shape, "Works Cited" if style.startswith("modern") else "References")
        source, _ = read_source(pdf, "article.pdf", None)
        references = mine_references(source)
        mined = {plain(one.raw): one for one in references}
        by_id = {record["id"]: record for record in records}
        found += len(references)
        authors = ""
        for id_, text in entries:
            printed = plain(NUMBER.sub("", text, count=1) if NUMBER.match(text) else text)
            one = mined.get(printed)
            given += 1
            gold = fields_of(by_id[id_], printed)
            if text[0] in "—–-" and authors:  # a dash stands for the authors of the entry before
                gold["surnames"] = authors
            authors = gold.get("surnames", "")
            wanted.update(gold.keys())
            if one is not None:
                whole += 1
                said = fields_of(one.csl, "")
                told.update(said.keys())
                right.update(name for name, value in gold.items() if said.get(name) == value)
        done += 1
        if done == 2 * len(SET_IN):
            break
    precision, recall = whole / found, whole / given
    print(f"\n{given} entries in {done} PDFs of {len(SET_IN)} styles: recall {recall:.3f}, precision {precision:.3f}")
    for name in wanted:
        print(f"  {name}: F1 {2 * right[name] / (told[name] + wanted[name]):.3f} of {wanted[name]}")
    fields = 2 * right.total() / (told.total() + wanted.total())
    print(f"  all fields: F1 {fields:.3f}")
    assert recall >= 0.97
    assert precision >= 0.97
    assert fields >= 0.88
