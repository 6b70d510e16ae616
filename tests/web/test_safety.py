"""Who is let in, and what is let through."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from fairhand import errors
from fairhand.web import forms, safety
from fairhand.web.app import make_app
from fairhand.web.error_pages import ERROR_PAGES
from fairhand.web.forms import Form
from fairhand.web.routes import list_routes

SECRET = "the-secret-of-this-run"  # noqa: S105 - of the tests alone
HERE = "http://127.0.0.1"


@pytest.fixture
def stranger(desk: Path) -> TestClient:
    """Somebody on this machine who was not told the secret."""
    return TestClient(make_app(desk, SECRET), base_url=HERE, headers={"origin": HERE}, follow_redirects=False)


@pytest.mark.parametrize(
    "host",
    ["rebound.example", "127.0.0.1.rebound.example", "127.0.0.2", "", "localhost@rebound.example", "10.0.0.1:80"],
)
def test_a_foreign_host_is_refused(client: TestClient, host: str) -> None:
    """A name that was pointed at this machine from elsewhere shows nothing, secret or not."""
    answer = client.get("/", headers={"host": host})
    assert answer.status_code == 400
    assert "Nine Minutes" not in answer.text


@pytest.mark.parametrize("host", ["127.0.0.1", "127.0.0.1:8000", "LOCALHOST:8000", "[::1]:8000", "[::1]"])
def test_this_machine_by_any_of_its_names(client: TestClient, host: str) -> None:
    """The three names of this machine are let in, with and without a port."""
    cookie = f"fairhand-80={SECRET}"
    assert client.get("/", headers={"host": host, "cookie": cookie}).status_code == 200


@pytest.mark.parametrize(
    "headers",
    [
        {"origin": "https://elsewhere.example"},
        {"origin": "http://127.0.0.1:9999"},
        {"origin": "https://127.0.0.1"},
        {"origin": "null"},
        {"origin": HERE, "sec-fetch-site": "cross-site"},
        {"origin": HERE, "sec-fetch-site": "same-site"},
        {"origin": HERE, "sec-fetch-site": "none"},
    ],
)
def test_a_form_on_a_foreign_page_changes_nothing(client: TestClient, desk: Path, headers: dict[str, str]) -> None:
    """The cookie alone does not speak for the writer: the page that the form stood on must be ours."""
    answer = client.post("/new", data={"title": "Not mine"}, headers=headers)
    assert answer.status_code == 403
    assert not (desk / "not-mine").exists()


def test_a_form_that_nobody_vouches_for_changes_nothing(client: TestClient, desk: Path) -> None:
    """A request that says nothing of where it comes from is not carried out."""
    del client.headers["origin"]
    assert client.post("/new", data={"title": "Not mine"}).status_code == 403
    assert not (desk / "not-mine").exists()


@pytest.mark.parametrize("path", ["/", "/new", "/paper/tram-libraries", "/look/fairhand.css", "/no-such-page"])
def test_without_the_secret_nothing_is_shown(stranger: TestClient, path: str) -> None:
    """Not even whether an address exists."""
    answer = stranger.get(path)
    assert answer.status_code == 403
    assert "Nine Minutes" not in answer.text


@pytest.mark.parametrize("key", ["", "wrong", SECRET.upper(), SECRET + "x", "ü"])
def test_a_wrong_secret_is_none(stranger: TestClient, key: str) -> None:
    """Neither in the address nor as a cookie."""
    assert stranger.get("/", params={"key": key}).status_code == 403
    assert stranger.get("/", headers={b"cookie": f"fairhand-80={key}".encode()}).status_code == 403


def test_the_secret_leaves_the_address_at_once(stranger: TestClient) -> None:
    """It becomes a cookie that no script reads and no other site sends; the rest of the address stays."""
    answer = stranger.get("/paper/tram-libraries", params={"key": SECRET, "page": "2"})
    assert answer.status_code == 303
    assert answer.headers["location"] == "/paper/tram-libraries?page=2"
    cookie = answer.headers["set-cookie"].lower()
    assert "httponly" in cookie
    assert "samesite=strict" in cookie


def test_the_secret_leads_nowhere_else(stranger: TestClient) -> None:
    """A path that reads as another machine's address is no place to be sent to."""
    assert not stranger.get(f"//elsewhere.example/?key={SECRET}").headers.get("location", "/").startswith("//")


@pytest.mark.parametrize(
    "path",
    [
        "/paper/%2e%2e",
        "/paper/%2e%2e%2foutside",
        "/paper/..%5Coutside",
        "/paper/%2Fetc",
        "/paper/courses",
        "/paper/.fairhand",
        "/paper/tram-libraries%2Fdraft.md",
        "/paper/tram-libraries%00",
        "/look/../safety.py",
        "/look/%2e%2e%2fsafety.py",
        "/look/..%2f..%2fsafety.py",
    ],
)
def test_a_path_outside_the_desk_leads_nowhere(client: TestClient, desk: Path, path: str) -> None:
    """An address names a paper on the desk or a file of the look, by name alone."""
    outside = desk.parent / "outside"
    outside.mkdir()
    (outside / "draft.md").write_text("Another's draft.", "utf-8")
    answer = client.get(path)
    assert answer.status_code == 404
    assert "Another's draft" not in answer.text


def test_a_link_out_of_the_desk_is_not_followed(client: TestClient, desk: Path) -> None:
    """A folder that only seems to stand on the desk is not opened, and the page says why."""
    outside = desk.parent / "outside"
    outside.mkdir()
    (outside / "draft.md").write_text("Another's draft.", "utf-8")
    (desk / "linked").symlink_to(outside, target_is_directory=True)
    answer = client.get("/paper/linked/brief")
    assert answer.status_code == 404
    assert "Another's draft" not in answer.text
    assert client.get("/").status_code == 200


@pytest.mark.parametrize(
    ("method", "path", "headers"),
    [
        ("GET", "/", {}),
        ("GET", "/new", {}),
        ("GET", "/nowhere", {}),
        ("GET", "/look/fairhand.css", {}),
        ("GET", "/", {"host": "rebound.example"}),
        ("GET", "/", {"cookie": ""}),
        ("POST", "/new", {"origin": "https://elsewhere.example"}),
        ("DELETE", "/new", {}),
    ],
)
def test_every_answer_is_sealed(client: TestClient, method: str, path: str, headers: dict[str, str]) -> None:
    """No answer is without its content policy and the rest of its headers, refusals included."""
    answer = client.request(method, path, headers=headers)
    policy = answer.headers["content-security-policy"]
    assert "default-src 'none'" in policy
    assert "unsafe" not in policy
    for name, value in safety.ALWAYS.items():
        assert answer.headers[name] == value


def test_a_nonce_is_used_once(client: TestClient) -> None:
    """Each answer has its own, the page's elements carry it, and no handler stands in the page itself."""
    pages = [client.get("/") for _ in range(2)]
    nonces = [re.findall(r"'nonce-([^']+)'", page.headers["content-security-policy"]) for page in pages]
    assert nonces[0][0] != nonces[1][0]
    assert f'nonce="{nonces[0][0]}"' in pages[0].text
    assert re.search(r"<[^>]+\son\w+=", pages[0].text) is None
    assert "style=" not in pages[0].text


def test_too_large_a_request_is_refused_before_it_is_read(client: TestClient) -> None:
    """Its own word for its size is enough."""
    answer = client.post("/new", content=b"", headers={"content-length": str(safety.MOST_BODY + 1)})
    assert answer.status_code == 413


@pytest.mark.parametrize("length", ["-1", "many", "1e9", "９"])
def test_a_length_that_is_none_is_refused(client: TestClient, length: str) -> None:
    """A request whose length cannot be told is not read."""
    assert client.post("/new", content=b"", headers={b"content-length": length.encode()}).status_code in {400, 413}


def test_a_request_that_grows_on_the_way_is_broken_off(client: TestClient, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where no size was given, what comes is counted."""
    monkeypatch.setattr(safety, "MOST_BODY", 1000)
    answer = client.post(
        "/new",
        content=(b"x" * 100 for _ in range(20)),
        headers={"content-type": "application/x-www-form-urlencoded"},
    )
    assert answer.status_code == 413


def test_every_exception_has_its_page() -> None:
    """The page's one table names each class of the tree."""

    def tree(kind: type[errors.FairhandError]) -> set[type[errors.FairhandError]]:
        return {kind}.union(*map(tree, kind.__subclasses__()))

    ours = {kind for kind in tree(errors.FairhandError) if kind.__module__ == errors.__name__}
    assert set(ERROR_PAGES) == ours


def test_a_script_in_a_title_is_text(client: TestClient, desk: Path) -> None:
    """What a writer's file holds is shown as it stands, and does nothing."""
    (desk / "tram-libraries" / "paper.toml").write_text("title = '<script>alert(1)</script>'", "utf-8")
    shown = client.get("/").text
    assert "<script>alert" not in shown
    assert "&lt;script&gt;alert" in shown


def test_every_page_answers_in_its_own_way() -> None:
    """No address is asked in a way that its row does not name."""
    methods = {frozenset(getattr(route, "methods", None) or ()) for route in list_routes()}
    assert methods <= {frozenset({"GET", "HEAD"}), frozenset({"POST"})}


def test_a_form_without_a_field_reads_as_empty() -> None:
    """Nothing is presumed of what was sent."""
    assert Form().text("title") == ""
    assert Form().uploads("sheet") == ()


def test_too_large_a_file_is_refused(client: TestClient, desk: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The page says how large a file may be and what else can be done; nothing is kept."""
    monkeypatch.setattr(forms, "MOST_FILE", 100)
    answer = client.post("/new", data={"title": "Large"}, files={"sheet": ("large.txt", b"x" * 101)})
    assert answer.status_code == 413
    assert "by hand" in answer.text
    assert not (desk / "large").exists()


def test_too_many_files_are_refused(client: TestClient) -> None:
    """A form with more parts than any of ours is not taken apart."""
    files = [("sheet", (f"{n}.txt", b"x")) for n in range(forms.MOST_FILES + 1)]
    assert client.post("/new", files=files).status_code == 400
