"""Support in the page."""

from __future__ import annotations

import html
import json
from pathlib import Path

import pytest
from starlette.testclient import TestClient

SUPPORT = "/paper/tram-libraries/support"


@pytest.fixture
def paper(desk: Path) -> Path:
    """The paper's folder."""
    return desk / "tram-libraries"


def pairs(client: TestClient) -> str:
    """What the page says of pairs of sources."""
    page = html.unescape(client.get(SUPPORT).text)
    return page[page.index("What may be one witness") :]


def test_holes_stand_first_over_the_grid(client: TestClient) -> None:
    """What to look for is the next step; each source has a row, each point a column, and the sheet's rules follow."""
    page = html.unescape(client.get(SUPPORT).text)
    assert "Look for 1 more independent source for" in page
    assert page.index("1 still to find") < page.index("3 independent of 2 needed")
    assert 'scope="row">Osei' in page
    assert 'scope="col">p' in page
    assert "What the sheet asks of the sources" in page
    assert "is your judgement" in page


def test_a_dependence_is_overruled_and_the_word_taken_back(client: TestClient, paper: Path) -> None:
    """The writer's word holds at once, also for the points, and is kept in a file."""
    page = pairs(client)
    first, second = (page.split(f'name="{name}" value="', 1)[1].split('"', 1)[0] for name in ("first", "second"))
    sent = {"first": first, "second": second}
    assert client.post(SUPPORT, data={**sent, "do": "two"}).headers["location"] == f"{SUPPORT}#pairs"
    assert "independent = true" in (paper / "support.toml").read_text("utf-8")
    assert "They count as two, by your word." in pairs(client)
    client.post(SUPPORT, data={**sent, "do": "undecided"})
    assert "They count as one." in pairs(client)
    assert "by your word" not in pairs(client)


def test_the_writer_names_a_pair(client: TestClient) -> None:
    """Two sources are one witness by the writer's word; one source alone is no pair."""
    sent = {"first": "lund-1999", "second": "tramways-1931", "do": "one"}
    assert client.post(SUPPORT, data={**sent, "second": "lund-1999"}).status_code == 400
    assert client.post(SUPPORT, data=sent).status_code == 303


def test_a_search_is_written_down_once(client: TestClient, paper: Path) -> None:
    """With what it gave; sent twice it stands once, and without words it is asked for again."""
    sent = {"words": "tram <library>", "place": "city archive", "hits": "7", "kept": "lund-1999", "route": "leads"}
    for _ in range(2):
        assert client.post(SUPPORT, data=sent).headers["location"] == f"{SUPPORT}#searches"
    (line,) = (paper / "searches.jsonl").read_text("utf-8").splitlines()
    kept = json.loads(line)
    assert (kept["hits"], kept["kept"], kept["route"]) == (7, ["lund-1999"], "leads")
    page = client.get(SUPPORT).text
    assert "<library>" not in page
    assert "tram <library>”, city archive: 7 hits, 1 source kept" in html.unescape(page)
    again = client.post(SUPPORT, data={**sent, "words": " "})
    assert again.status_code == 400
    assert "A search needs its words" in again.text
    assert 'value="city archive"' in again.text


def test_support_is_not_shown_where_no_sources_are_asked_for(client: TestClient, desk: Path, paper: Path) -> None:
    """Neither shown nor judged."""
    (paper / "brief.txt").write_text("Write 900 words about a place. Due 12 March 2027.\n", "utf-8")
    (desk / "courses" / "writing-from-sources" / "course.toml").unlink()
    page = client.get(SUPPORT).text
    assert "asks for no sources" in page
    assert "<table" not in page
    assert "still to find" not in page


def test_what_shows_a_dependence_stands_beside_it(client: TestClient) -> None:
    """The words, with the page one link away; where both texts have the same, both."""
    page = pairs(client)
    assert "Brandvold (2016) cites Osei (2014), and says that it rests on it." in page
    assert "“For the number of loans I rely on the transcription in Osei (2014)" in page
    assert '/sources/brandvold-2016/text?page=1">Brandvold (2016), page 1</a>' in page


def test_a_dependence_is_confirmed(client: TestClient, paper: Path) -> None:
    """It counts as before, by the writer's word too, until that is taken back."""
    sent = {"first": "brandvold-2016", "second": "osei-2014"}
    client.post(SUPPORT, data={**sent, "do": "one"})
    assert "independent = false" in (paper / "support.toml").read_text("utf-8")
    page = pairs(client)
    assert "They count as one, by your word." in page
    assert "Count them as two<" not in page
    client.post(SUPPORT, data={**sent, "do": "undecided"})
    assert "by your word" not in pairs(client)


def test_a_citation_in_passing_is_told_and_counts_as_two(client: TestClient, paper: Path) -> None:
    """The writer may hold otherwise."""
    file = paper / "sources" / "lund-1999.txt"
    file.write_text(f"{file.read_text('utf-8')}\n\nHaldane (2008) saw it otherwise.\n", "utf-8")
    record = json.loads((paper / "points.json").read_text("utf-8"))
    record["points"][0]["sources"] = [{"id": "lund-1999"}, {"id": "haldane-2008"}]
    (paper / "points.json").write_text(json.dumps(record), "utf-8")
    page = pairs(client)
    assert "Lund (1999) cites Haldane (2008). To be cited in passing is no dependence: they count as two." in " ".join(
        page.replace('<span class="note">', "").split()
    )
    client.post(SUPPORT, data={"first": "lund-1999", "second": "haldane-2008", "do": "one"})
    assert "Lund (1999) and Haldane (2008) are one witness, as you hold" in pairs(client)


def test_a_source_that_was_noted_for_a_point_is_told(client: TestClient) -> None:
    """Where the point does not name it yet."""
    sent = {"source": "lund-1999", "page": "61", "remark": "Time of their own.", "point": "p2"}
    client.post("/paper/tram-libraries/notes", data=sent)
    page = html.unescape(client.get(SUPPORT).text)
    assert 'Noted for it, and not named by it: <a href="/paper/tram-libraries/points/p2">Lund (1999)</a>.' in page
