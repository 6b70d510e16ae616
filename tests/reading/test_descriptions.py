"""What files say of their works is found in the file, and told with its place; nothing is made up."""

from __future__ import annotations

import json
import zlib
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.description import Description
from fairhand.reading.describing import describe_file
from fairhand.reading.first_pages import FIRST_PAGE, is_isbn, say_of_first_pages
from fairhand.reading.html_description import CITATION, DUBLIN_CORE, LINKED_DATA, OPEN_GRAPH, SAVED
from fairhand.reading.package_description import PACKAGE, PROPERTIES
from fairhand.reading.pdf_description import INFORMATION, LARGEST, XMP

Make = Callable[..., bytes]

PACKET = """<?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?><x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about=""
 xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:prism="http://prismstandard.org/namespaces/basic/2.0/"
 prism:volume="12">
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">Salt and silt</rdf:li></rdf:Alt></dc:title>
<dc:creator><rdf:Seq><rdf:li>Ada Lind</rdf:li><rdf:li>Bo Marsh</rdf:li></rdf:Seq></dc:creator>
<dc:publisher><rdf:Bag><rdf:li>Estuary Press</rdf:li></rdf:Bag></dc:publisher>
<prism:publicationName>Shore Studies</prism:publicationName><prism:number>3</prism:number>
<prism:doi>10.5555/shore.12.3</prism:doi><prism:startingPage>201</prism:startingPage>
<prism:endingPage>219</prism:endingPage><prism:coverDate>2016-09-01</prism:coverDate>
<prism:aggregationType>journal</prism:aggregationType>
</rdf:Description></rdf:RDF></x:xmpmeta><?xpacket end="w"?>"""


def told(description: Description) -> dict[str, str]:
    """What was found, on one line each."""
    return {name: field.words for name, field in description.fields.items()}


def where(description: Description) -> dict[str, str]:
    """Where each thing was found."""
    return {name: field.from_ for name, field in description.fields.items()}


def with_packet(pdf: bytes, packet: bytes, *, filtered: bool = False) -> bytes:
    """The PDF with a metadata stream behind its end, where nothing but a search finds it."""
    body = zlib.compress(packet) if filtered else packet
    how = b"/Filter/FlateDecode" if filtered else b""
    head = b"99 0 obj<</Type/Metadata/Subtype/XML" + how + b"/Length %d>>stream\n" % len(body)
    return pdf + head + body + b"\nendstream endobj\n"


@pytest.mark.parametrize("filtered", [False, True])
def test_a_publishers_packet_tells_the_whole_record(pdf: Make, *, filtered: bool) -> None:
    """XMP with Dublin Core and PRISM gives title, names, journal, volume, pages and DOI, compressed or not."""
    found = describe_file(with_packet(pdf("Salt"), PACKET.encode(), filtered=filtered), "a.pdf", ("Salt",))
    assert told(found) == {
        "title": "Salt and silt",
        "author": "Ada Lind; Bo Marsh",
        "container-title": "Shore Studies",
        "volume": "12",
        "issue": "3",
        "page": "201-219",
        "DOI": "10.5555/shore.12.3",
        "issued": "2016-09-01",
        "type": "article-journal",
        "publisher": "Estuary Press",
    }
    assert set(where(found).values()) == {XMP}


def test_the_information_dictionary_is_read(pdf: Make) -> None:
    """A title and an author that are one are taken; when the file was made is not when the work appeared."""
    made = pdf('#set document(title: "Mud flats", author: ("Ada Lind", "Bo Marsh"))\nMud')
    found = describe_file(made, "a.pdf", ("Mud",))
    assert told(found) == {"title": "Mud flats", "author": "Ada Lind; Bo Marsh"}
    assert where(found)["title"] in {XMP, INFORMATION}


@pytest.mark.parametrize(
    "title", ["Microsoft Word - essay_final.docx", "untitled", "thesis.dvi", "12-3456", "Document1"]
)
def test_what_programs_leave_is_no_title(pdf: Make, title: str) -> None:
    """A file's name or a program's remark is not taken; the largest type on the first page is, and is said to be it."""
    made = pdf(f'#set document(title: "{title}", author: "admin")\n#text(24pt)[The drowned lane] \\ by nobody at all')
    found = describe_file(made, "scan 7.pdf", ("x",))
    assert told(found) == {"title": "The drowned lane"}
    assert where(found)["title"] == LARGEST
    assert [field.value for name, field in found.others if name == "title"] == ["scan 7"]


def test_the_first_page_tells_the_doi_and_the_day(pdf: Make) -> None:
    """A DOI on the first page is taken without the point after it, and the day that it says it appeared on."""
    text = "Shore Studies\nhttps://doi.org/10.5555/shore(2016)12.\nPublished online: 3 May 2016\n© 2017 The Authors"
    found = describe_file(pdf("Shore"), "a.pdf", (text,))
    assert told(found)["DOI"] == "10.5555/shore(2016)12"
    assert told(found)["issued"] == "3 May 2016"
    assert where(found)["DOI"] == FIRST_PAGE
    assert ("issued", "2017") in [(name, field.value) for name, field in found.others]


def test_of_several_dois_none_is_guessed() -> None:
    """Where a page names several and calls none its own, there is none; one that is called so is it."""
    two = "See 10.5555/one and 10.5555/two."
    assert not [one for one in say_of_first_pages([two]) if one[0] == "DOI"]
    assert next(iter(say_of_first_pages([f"{two}\ndoi: 10.5555/own"])))[1] == "10.5555/own"


def test_isbns_are_held_to_their_check_digit() -> None:
    """ISO 2108: 978-0-306-40615-7 and 0-8044-2957-X are right (public worked examples), one digit off is not."""
    found = {name: value for name, value, _ in say_of_first_pages(["x", "ISBN 978-0-306-40615-7 (cloth)"])}
    assert found == {"ISBN": "9780306406157", "type": "book"}
    assert not list(say_of_first_pages(["x", "ISBN 978-0-306-40615-8"]))
    assert is_isbn("080442957X")


HIGHWIRE = """<!DOCTYPE html><html lang="en"><head><title>Ebb | Shore Studies</title>
<meta name="citation_title" content="Ebb and flow"><meta name="citation_author" content="Lind, Ada">
<meta name="citation_author" content="Bo Marsh"><meta name="citation_journal_title" content="Shore Studies">
<meta name="citation_publication_date" content="2016/09/01"><meta name="citation_volume" content="12">
<meta name="citation_firstpage" content="201"><meta name="citation_lastpage" content="219">
<meta name="citation_doi" content="doi:10.5555/shore.12"><meta name="DC.title" content="Ebb &amp; flow, again">
<meta name="DC.date" content="2015"></head><body><p>Ebb.</p></body></html>"""


def test_citation_tags_are_trusted_first() -> None:
    """They give the record; what Dublin Core says otherwise is kept beside it."""
    found = describe_file(HIGHWIRE.encode(), "a.html")
    assert told(found) == {
        "title": "Ebb and flow",
        "author": "Lind, Ada; Bo Marsh",
        "container-title": "Shore Studies",
        "issued": "2016/09/01",
        "volume": "12",
        "page": "201-219",
        "DOI": "10.5555/shore.12",
        "type": "article-journal",
        "language": "en",
    }
    assert where(found)["title"] == CITATION
    assert ("issued", DUBLIN_CORE) in [(name, field.from_) for name, field in found.others]


def test_dublin_core_alone_is_enough() -> None:
    """Title, creators, date and a DOI among the identifiers."""
    page = (
        "<html><head><meta name='DC.Title' content='Peat'><meta name='DC.Creator' content='Dun, Eva'>"
        "<meta name='DCTERMS.issued' content='2004'><meta name='DC.Identifier' content='https://doi.org/10.5555/p.1'>"
        "</head><body>Peat</body></html>"
    )
    found = describe_file(page.encode(), "a.html")
    assert {**told(found), "type": ""} == {
        "title": "Peat", "author": "Dun, Eva", "issued": "2004", "DOI": "10.5555/p.1", "type": "",
    }  # fmt: skip


def test_linked_data_is_read_and_never_run() -> None:
    """JSON-LD in a graph gives article, journal and volume; other scripts are only skipped."""
    graph = {
        "@context": "https://schema.org",
        "@graph": [
            {"@type": "WebSite", "name": "Shore"},
            {
                "@type": "ScholarlyArticle",
                "headline": "Dune grass",
                "author": [{"@type": "Person", "givenName": "Ada", "familyName": "Lind"}, {"name": "Bo Marsh"}],
                "datePublished": "2020-02-03T10:00:00Z",
                "publisher": {"name": "Estuary Press"},
                "sameAs": "https://doi.org/10.5555/dune",
                "pageStart": "4",
                "pageEnd": "9",
                "isPartOf": {
                    "@type": "PublicationIssue",
                    "issueNumber": 2,
                    "isPartOf": {"@type": ["PublicationVolume", "Periodical"], "volumeNumber": "8", "name": "S"},
                },
            },
        ],
    }
    page = (
        f"<html><head><script>while(true){{}}</script><script type='application/ld+json'>{json.dumps(graph)}</script>"
        "<script type='application/ld+json'>{broken</script></head><body>x</body></html>"
    )
    found = describe_file(page.encode(), "a.html")
    want = {
        "type": "article-journal", "title": "Dune grass", "author": "Lind, Ada; Bo Marsh", "issue": "2", "volume": "8",
        "issued": "2020-02-03T10:00:00Z", "DOI": "10.5555/dune", "page": "4-9",
    }  # fmt: skip
    assert told(found) == want
    assert set(where(found).values()) == {LINKED_DATA}


def test_a_plain_page_says_its_title_its_site_and_where_it_was_saved() -> None:
    """Open Graph, the title element and the browser's remark; its type is said to be that of a page."""
    page = (
        "<!DOCTYPE html><!-- saved from url=(0024)https://shore.example/ebb --><html><head><title>Ebb</title>"
        "<meta property='og:site_name' content='The Shore'></head><body>x</body></html>"
    )
    found = describe_file(page.encode(), "a.html")
    want = {"title": "Ebb", "container-title": "The Shore", "URL": "https://shore.example/ebb", "type": "webpage"}
    assert told(found) == want
    assert (where(found)["container-title"], where(found)["URL"]) == (OPEN_GRAPH, SAVED)


@pytest.mark.parametrize("version", [2, 3])
def test_an_epub_tells_its_book(zipped: Make, version: int) -> None:
    """Package metadata of both versions: roles, the name to file under, the ISBN, and which date is which."""
    dc = 'xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:opf="http://www.idpf.org/2007/opf"'
    people = (
        '<dc:creator opf:role="aut" opf:file-as="Lind, Ada">Ada Lind</dc:creator>'
        '<dc:contributor opf:role="trl">Bo Marsh</dc:contributor>'
        if version == 2
        else '<dc:creator id="a">Ada Lind</dc:creator><meta refines="#a" property="file-as">Lind, Ada</meta>'
        '<dc:contributor id="b">Bo Marsh</dc:contributor><meta refines="#b" property="role">trl</meta>'
    )
    package = (
        f"<package {dc}><metadata><dc:title>Fen</dc:title>{people}<dc:publisher>Estuary Press</dc:publisher>"
        '<dc:date opf:event="modification">2022-01-01</dc:date><dc:date>2001-05-01T00:00:00Z</dc:date>'
        "<dc:identifier>urn:isbn:978-0-306-40615-7</dc:identifier><dc:language>en</dc:language></metadata></package>"
    )
    container = '<container><rootfiles><rootfile full-path="p.opf"/></rootfiles></container>'
    data = zipped({"mimetype": "application/epub+zip", "META-INF/container.xml": container, "p.opf": package})
    found = describe_file(data, "a.epub")
    assert told(found) == {
        "title": "Fen", "author": "Lind, Ada", "translator": "Bo Marsh", "publisher": "Estuary Press",
        "issued": "2001-05-01", "language": "en", "ISBN": "9780306406157", "type": "book",
    }  # fmt: skip
    assert where(found)["title"] == PACKAGE


def test_a_word_processors_properties_are_read(zipped: Make) -> None:
    """Title and author, unless the author is the program's own default."""

    def core(author: str) -> bytes:
        return zipped(
            {
                "word/document.xml": "<a/>",
                "docProps/core.xml": '<c xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title>Lodes</dc:title>'
                f"<dc:creator>{author}</dc:creator></c>",
            }
        )

    found = describe_file(core("Ada Lind; Bo Marsh"), "a.docx")
    assert told(found) == {"title": "Lodes", "author": "Ada Lind; Bo Marsh"}
    assert where(found)["author"] == PROPERTIES
    assert "author" not in told(describe_file(core("Windows User"), "a.docx"))


def test_a_photograph_has_its_name_and_nothing_else() -> None:
    """What is not known is not there, to be asked."""
    found = describe_file(b"\xff\xd8\xff\xe0 jpeg", "photos/IMG_2041.jpg")
    assert told(found) == {"title": "IMG 2041"}


@given(st.binary(max_size=400), st.sampled_from(["pdf", "html", "txt", "epub", "docx"]))
def test_whatever_stands_in_a_file_something_is_said(data: bytes, ending: str) -> None:
    """No bytes crash a reader: each file is described or refused as a file of its kind is."""
    starts = {"pdf": b"%PDF-1.4\n", "html": b"<html>", "txt": b"x", "epub": b"PK\x03\x04", "docx": b"PK\x03\x04"}
    assert describe_file(starts[ending] + data, f"a.{ending}", ("x",)).fields["title"].value
