"""One source: its record corrected, its text given, the source taken out of the list."""

from __future__ import annotations

from collections.abc import Mapping

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.citing.described import FROM, list_missing, origins_of
from fairhand.citing.entry_form import FIELDS, TYPES_ASKED, fields_of, tell_field
from fairhand.desk.seen import hash_bytes
from fairhand.errors import FairhandError
from fairhand.model.entry import Entry
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.noted import tell_held
from fairhand.session.research.notes_for import list_served, notes_from
from fairhand.session.research.noting import list_notes, name_note
from fairhand.session.sources.entries import change_record, remove_record, state_of
from fairhand.session.sources.photographs import find_photograph
from fairhand.session.sources.replacing import ASIDE, find_notes_again, give_text
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import Form, plain_file_name
from fairhand.web.pages.source_text_page import find_entry, tell_text
from fairhand.web.safety import POLICY_OF_FILE, write_policy


def show(asked: Asked) -> Response:
    """The record with the fields of its type, its text, and what was noted from it."""
    return show_source(asked, find_entry(asked, asked.name("id")))


def show_source(
    asked: Asked, entry: Entry, *, fault: str = "", status: int = 200, present: Entry | None = None
) -> Response:
    """One source's page, with what was typed into its fields where something was.

    Args:
        asked: The request.
        entry: The source.
        fault: What was wrong with what was sent.
        status: The HTTP status.
        present: The record as it now stands, where another program changed it meanwhile.
    """
    known = asked.paper.opened.look()
    sent = read_fields(asked.form)
    notes = notes_from(list_notes(asked.paper.folder)[0], entry.id, known)
    kind = read_kind(asked, entry.type)
    fields = fields_of(kind, {**entry.csl, **{name: text for name, text in sent.items() if text}})
    return asked.page(
        "source_page.html",
        status=status,
        title=known.names.get(entry.id, entry.id),
        step="Correct the record as the work itself has it; what is not shown here stays as it is.",
        entry=entry,
        fault=fault,
        kind=kind,
        kinds={**({} if entry.type in TYPES_ASKED else {entry.type: entry.type.replace("-", " ")}), **TYPES_ASKED},
        fields=fields,
        written={field.name: sent.get(field.name, tell_field(entry.csl, field)) for field in fields},
        now=_tell_record(present) if present else "",
        seen=state_of(entry) if present else asked.form.text("seen", state_of(entry)),
        origins=origins_of(entry.csl),
        missing=list_missing(entry) if FROM in str(entry.csl.get("custom", "")) else (),
        photograph=_name_photograph(asked, entry),
        text=tell_text(known.paper.texts.get(entry.id)),
        texts=known.paper.texts,
        replaced=_tell_replaced(asked, entry, known),
        held={note.id: tell_held(known, note) for note in notes},
        notes=notes,
        name=name_note,
        served=list_served(known),
    )


def _tell_replaced(asked: Asked, entry: Entry, known: Analysis) -> str:
    """What became of the text that was replaced, and of the notes from it; nothing where none was just now."""
    aside = plain_file_name(asked.query("aside")) if asked.query("aside") else ""
    if not aside or not (asked.paper.folder / ASIDE / aside).is_file():
        return ""
    again = find_notes_again(asked.paper.folder, entry.id, known.paper.texts.get(entry.id))
    return f"The new text is in place; the old one stands in {ASIDE}/{aside}. {again.told}".strip()


def show_photograph(asked: Asked) -> Response:
    """The photograph that is all there is of a source; its address changes with the file."""
    return send_photograph(find_photograph(asked.paper.opened.source_texts, find_entry(asked, asked.name("id"))))


def send_photograph(found: tuple[bytes, str] | None) -> Response:
    """The bytes of a photograph under its media type; it may be kept, since its address changes with it."""
    if found is None:
        raise HTTPException(404)
    data, media_type = found
    headers = {"cache-control": "private, max-age=31536000, immutable", "content-security-policy": FILE_POLICY}
    return Response(data, media_type=media_type, headers=headers)


def _name_photograph(asked: Asked, entry: Entry) -> str:
    """What tells one photograph of the source from another; nothing where there is none."""
    found = find_photograph(asked.paper.opened.source_texts, entry)
    return hash_bytes(found[0])[:12] if found else ""


def read_fields(form: Form) -> Mapping[str, str]:
    """What was written in a record's fields, by their names."""
    return {name: form.text(name) for name in FIELDS if form.has(name)}


def read_kind(asked: Asked, default: str) -> str:
    """The type of work that was chosen; the default where none was, or none that is asked for."""
    kind = asked.form.text("type") or asked.query("type")
    return kind if kind in TYPES_ASKED else default


def change(asked: Asked) -> Response:
    """The record corrected; where another program changed it meanwhile, both are shown."""
    entry, form = find_entry(asked, asked.name("id")), asked.form
    if form.text("do") == "type":
        return show_source(asked, entry)
    if form.text("seen") != state_of(entry):
        fault = "Another program changed this record while you were writing; nothing was overwritten."
        return show_source(asked, entry, fault=fault, status=409, present=entry)
    try:
        change_record(asked.paper.folder, entry, read_kind(asked, entry.type), read_fields(form))
    except FairhandError as error:
        return show_source(asked, entry, fault=str(error), status=page_of(error)[0])
    return asked.go(asked.to("sources", at=entry.id))


def give(asked: Asked) -> Response:
    """The file that was chosen is the source's text; what it had before is set aside, and its notes are found again."""
    entry = find_entry(asked, asked.name("id"))
    files = asked.form.uploads("file")
    had = entry.id in asked.paper.opened.look().paper.texts
    try:
        for file in files[:1]:
            aside = give_text(asked.paper.folder, entry, file.name, file.data)
            if aside:
                return asked.go(asked.to("sources", entry.id, aside=aside.rpartition("/")[2], at="text"))
    except FairhandError as error:
        return show_source(asked, entry, fault=str(error), status=page_of(error)[0])
    return asked.go(asked.to("sources", at=entry.id) if files and not had else asked.to("sources", entry.id))


def remove(asked: Asked) -> Response:
    """The source is not in the list any more."""
    entry = find_entry(asked, asked.name("id"))
    try:
        remove_record(asked.paper.folder, entry)
    except FairhandError as error:
        return show_source(asked, entry, fault=str(error), status=page_of(error)[0])
    return asked.go(asked.to("sources"))


def _tell_record(entry: Entry) -> str:
    """A record as lines of type."""
    told = ((field.label, tell_field(entry.csl, field)) for field in fields_of(entry.type, entry.csl))
    return "\n".join(f"{label.partition(',')[0]}: {value.replace(chr(10), '; ')}" for label, value in told if value)


FILE_POLICY = write_policy(POLICY_OF_FILE)
ONE = "/paper/{slug}/sources/{id:path}"
ROUTES = (
    post(f"{ONE}/text", give),
    post(f"{ONE}/remove", remove),
    get(f"{ONE}/photograph", show_photograph),
    get(ONE, show),
    post(ONE, change),
)
