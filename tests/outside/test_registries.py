"""Registries and pages elsewhere, asked of a server on this machine that speaks their protocols.

The shapes of the answers are those of the protocols' public documents: DOI content negotiation (Crossref's and
DataCite's CSL-JSON), SRU 1.1 with MODS 3.6 (Library of Congress), the MEDLINE display format (NLM). The works
are invented.
"""

from __future__ import annotations

import json
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

import pytest

from fairhand.citing.described import origins_of
from fairhand.citing.identifiers import Identifier, find_identifier
from fairhand.citing.registries import CSL_JSON, ask_registry, read_registry
from fairhand.errors import FileUnreadable, NotReached
from fairhand.model.entry import Entry
from fairhand.model.request import WebAnswer, WebRequest
from fairhand.outside.fetching import Bounds, fetch

CROSSREF = {
    "type": "journal-article",
    "title": "Ebb and flow",
    "author": [{"given": "Ada", "family": "Lind", "sequence": "first", "affiliation": []}, {"name": "Shore Group"}],
    "container-title": "Shore Studies",
    "ISSN": ["1234-5678"],
    "issued": {"date-parts": [[2016, 9]]},
    "DOI": "10.5555/shore.12",
    "reference": [{"key": "1"}],
    "page": "201-219",
}
MODS = """<?xml version="1.0"?><zs:searchRetrieveResponse xmlns:zs="http://www.loc.gov/zing/srw/">
<zs:numberOfRecords>1</zs:numberOfRecords><zs:records><zs:record><zs:recordData>
<mods xmlns="http://www.loc.gov/mods/v3"><titleInfo><nonSort>The</nonSort><title>fen</title>
<subTitle>a history</subTitle></titleInfo><titleInfo type="alternative"><title>Fens</title></titleInfo>
<name type="personal"><namePart type="family">Dun</namePart><namePart type="given">Eva</namePart>
<role><roleTerm type="code">aut</roleTerm></role></name>
<name type="personal"><namePart>Bo Marsh</namePart><role><roleTerm type="code">edt</roleTerm></role></name>
<originInfo><place><placeTerm type="code">enk</placeTerm></place><place><placeTerm type="text">Ely</placeTerm></place>
<publisher>Estuary Press</publisher><dateIssued>[2004]</dateIssued><edition>2nd ed.</edition></originInfo>
</mods></zs:recordData></zs:record></zs:records></zs:searchRetrieveResponse>"""
NONE = '<zs:searchRetrieveResponse xmlns:zs="http://www.loc.gov/zing/srw/"><zs:numberOfRecords>0</zs:numberOfRecords></zs:searchRetrieveResponse>'
MEDLINE = "\nPMID- 123\nTI  - Marsh fever.\nFAU - Ame, Ana\nDP  - 2001 May\nJT  - Marsh medicine\n"


class Registry(BaseHTTPRequestHandler):
    """A server that answers as the registries do, and in some ways that no server should."""

    def do_GET(self) -> None:
        """Answers by the path."""
        path = self.path
        if path.startswith("/doi/10.5555/shore") and self.headers["Accept"] == CSL_JSON:
            self.go("/works/shore")
        elif path == "/works/shore":
            self.send(json.dumps(CROSSREF), CSL_JSON)
        elif "isbn%3D9780306406157" in path or "isbn=9780306406157" in path:
            self.send(MODS, "text/xml")
        elif "isbn" in path:
            self.send(NONE, "text/xml")
        elif path.endswith("id=123"):
            self.send(MEDLINE, "text/plain")
        elif path == "/round":
            self.go("/round")
        elif path == "/away":
            self.go("ftp://elsewhere.example/")
        elif path == "/large":
            self.send("x" * 200_000, "text/plain")
        elif path == "/short":
            self.send("x", "text/plain", length=99)
        elif path == "/drip":
            self.drip()
        else:
            self.send_error(404)

    def send(self, text: str, media_type: str, length: int | None = None) -> None:
        """Sends a text."""
        self.send_response(200)
        self.send_header("Content-Type", f"{media_type}; charset=utf-8")
        self.send_header("Content-Length", str(len(text.encode()) if length is None else length))
        self.end_headers()
        self.wfile.write(text.encode())

    def go(self, where: str) -> None:
        """Sends to another address."""
        self.send_response(302)
        self.send_header("Location", where)
        self.send_header("Content-Length", "0")
        self.end_headers()

    def drip(self) -> None:
        """Sends one header after another for ever, each within the time that one piece may take."""
        try:
            self.wfile.write(b"HTTP/1.0 200 OK\r\n")
            for number in range(10_000):
                self.wfile.write(f"X-{number}: x\r\n".encode())
                self.wfile.flush()
                time.sleep(0.05)
        except OSError:
            return

    def log_message(self, *args: object) -> None:
        """Says nothing."""


@contextmanager
def registry() -> Iterator[str]:
    """The address of a server on this machine."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), Registry)
    server.daemon_threads = True
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02})
    thread.start()
    yield f"http://127.0.0.1:{server.server_address[1]}"
    server.shutdown()
    thread.join()
    server.server_close()


@pytest.fixture(scope="module")
def here() -> Iterator[str]:
    """The address of the server."""
    with registry() as address:
        yield address


def look_up(number: str, here: str) -> Entry:
    """The entry that the server has under a number."""
    addresses = {"DOI": f"{here}/doi/{{}}", "ISBN": f"{here}/sru?query=isbn%3D{{}}", "PMID": f"{here}/efetch?id={{}}"}
    identifier = find_identifier(number)
    assert identifier is not None
    return read_registry(identifier, fetch(ask_registry(identifier, addresses)))


def test_a_doi_is_asked_by_content_negotiation(here: str) -> None:
    """The server sends on to the record; what no list needs is left out, and each field is marked as from there."""
    entry = look_up("doi:10.5555/Shore.12", here)
    assert (entry.type, entry.title, entry.container_title) == ("article-journal", "Ebb and flow", "Shore Studies")
    assert [name.surname for name in entry.authors] == ["Lind", "Shore Group"]
    assert entry.csl["ISSN"] == "1234-5678"
    assert "reference" not in entry.csl
    assert origins_of(entry.csl)["title"] == "the registry’s record of DOI 10.5555/shore.12"


def test_an_isbn_is_asked_in_a_catalogue(here: str) -> None:
    """SRU with MODS: title with its article, people by their roles, place, publisher, year, edition."""
    entry = look_up("978-0-306-40615-7", here)
    assert (entry.title, entry.publisher, entry.csl["publisher-place"]) == (
        "The fen: a history",
        "Estuary Press",
        "Ely",
    )
    assert [name.surname for name in (*entry.authors, *entry.editors)] == ["Dun", "Marsh"]
    assert entry.issued is not None
    assert entry.issued.year == 2004
    with pytest.raises(FileUnreadable, match="no record"):
        look_up("0-8044-2957-X", here)


def test_a_pmid_is_asked_for_the_medline_format(here: str) -> None:
    """The same reader as that of nbib files."""
    assert look_up("PMID 123", here).title == "Marsh fever"


@pytest.mark.parametrize(
    ("path", "says"),
    [("/round", "sent on"), ("/away", "https"), ("/large", "larger"), ("/short", "not reached"), ("/no", "nothing")],
)
def test_servers_that_misbehave_are_left_in_one_line(here: str, path: str, says: str) -> None:
    """One that sends round and round, elsewhere, too much, too little, or knows nothing."""
    with pytest.raises(NotReached, match=says) as caught:
        fetch(WebRequest(here + path), Bounds(seconds=5, most_bytes=100_000))
    assert "\n" not in str(caught.value)


def test_a_server_that_never_ends_is_hung_up_on(here: str) -> None:
    """Everything together has its time, however small the pieces that come."""
    with pytest.raises(NotReached, match="within"):
        fetch(WebRequest(f"{here}/drip"), Bounds(seconds=0.4))


@pytest.mark.parametrize(
    "address", ["http://shore.example/", "file:///etc/passwd", "https://", "ftp://127.0.0.1/", "https://a:b@c.example/"]
)
def test_only_https_is_spoken(address: str) -> None:
    """Nothing is sent in the clear, and no file of this machine is an address."""
    with pytest.raises(NotReached, match="https"):
        fetch(WebRequest(address))


@pytest.mark.parametrize("data", [b"", b"[]", b"{", b"<a/>", b"\xff\xfe", b'{"title": []}', b"[" * 100_000])
@pytest.mark.parametrize("kind", ["DOI", "ISBN", "PMID"])
def test_answers_that_are_none_are_refused(kind: str, data: bytes) -> None:
    """Whatever a server sends, an entry or one line comes of it."""
    with pytest.raises(FileUnreadable, match="registry"):
        read_registry(Identifier(kind, "1"), WebAnswer("https://a.example/", "x/y", data))  # type: ignore[arg-type]
