"""Sources added in the page: files of every kind, lists, numbers and addresses, what waits in the inbox, or by hand.

What is sent waits in the paper's inbox until it is taken in, so that nothing is lost if the program ends meanwhile.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import PurePath

from starlette.responses import Response

from fairhand.citing.described import list_missing, origins_of
from fairhand.citing.entry_files import ENDINGS, detect
from fairhand.citing.entry_form import FIELDS, TYPES_ASKED, fields_of
from fairhand.citing.entry_list import Joined
from fairhand.desk.inbox import list_inbox, put_in_inbox
from fairhand.desk.paper_files import read_paper
from fairhand.errors import DeskError, FairhandError
from fairhand.session.job import Job
from fairhand.session.sources.adding import Added, add_sources, sort_asked
from fairhand.session.sources.adding import Asked as Wanted
from fairhand.session.sources.entries import add_lists, add_record, add_text
from fairhand.session.sources.joining import join_works
from fairhand.session.sources.looking_up import WHAT_LEAVES, allow_outside
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import Upload
from fairhand.web.pages.source_page import read_fields, read_kind, show_source
from fairhand.web.pages.source_text_page import find_entry

SOON_SECONDS = 1.5
"""How long an answer waits for the work to be over before it shows how far it is."""
_FRONT = 400
_NOTHING = "Nothing was sent: choose a file, paste a list, or give a number."


def show_adding(asked: Asked, *, fault: str = "", status: int = 200, joined: Joined | None = None) -> Response:
    """The ways to add; or, where a type was chosen, a record to be written by hand."""
    kind = read_kind(asked, "")
    written = {name: asked.form.text(name) for name in FIELDS}
    return asked.page(
        "source_adding.html",
        status=status,
        title="Add sources",
        step="Copy the record from the work itself; what you do not know yet can wait."
        if kind
        else "Give what you have: the file itself, a list from a library, or its record written by hand.",
        fault=fault,
        joined=joined,
        pasted=asked.form.matter("pasted"),
        number=asked.form.text("number"),
        kind=kind,
        kinds=TYPES_ASKED,
        fields=fields_of(kind, {name: text for name, text in written.items() if text}) if kind else (),
        written=written,
        waiting=[path.name for path in list_inbox(asked.paper.folder)],
        outside=asked.paper.opened.look().paper.desk.outside,
        what_leaves=WHAT_LEAVES,
        job=_job_of(asked),
    )


def add(asked: Asked) -> Response:
    """What was sent has joined the sources, or is being taken in; where nothing could, the page again."""
    form = asked.form
    if form.text("do") == "type":
        return show_adding(asked)
    try:
        return _add_by_hand(asked) if form.text("type") else _add_sent(asked)
    except FairhandError as error:
        return show_adding(asked, fault=str(error), status=page_of(error)[0])


def _add_by_hand(asked: Asked) -> Response:
    new = add_record(asked.paper.folder, read_kind(asked, "document"), read_fields(asked.form))
    for file in asked.form.uploads("file")[:1]:
        entry = find_entry(asked, new)
        try:
            add_text(asked.paper.folder, entry, file.name, file.data)
        except FairhandError as error:
            return show_source(asked, entry, fault=f"The source is in the list. {error}", status=page_of(error)[0])
    return asked.go(asked.to("sources", at=new))


def _add_sent(asked: Asked) -> Response:
    """Lists alone join at once; files and numbers are a piece of work that is watched."""
    form, files = asked.form, asked.form.uploads("list")
    number = sort_asked([form.text("number")] if form.text("number") else [])
    lists = [(form.matter("pasted").encode(), "what was pasted")] if form.text("pasted") else []
    if not number.needs_outside and all(map(_is_list, files)):
        lists = [*((file.data, file.name) for file in files), *lists]
        files = ()
    if not (files or lists or number.needs_outside):
        raise FairhandError(_NOTHING)
    joined = add_lists(asked.paper.folder, lists) if lists else None
    if not (files or number.needs_outside):
        unclear = joined is not None and (joined.there or joined.problems)
        return show_adding(asked, joined=joined) if unclear else asked.go(asked.to("sources"))
    paths = [put_in_inbox(asked.paper.folder, file.name, file.data) for file in files]
    wanted = sort_asked(list(map(str, paths)))
    return _begin(asked, Wanted(wanted.files, wanted.lists, number.addresses, number.numbers))


def _is_list(file: Upload) -> bool:
    suffix = PurePath(file.name).suffix.lower()
    return suffix in ENDINGS or (suffix == ".txt" and detect(file.data[:_FRONT].decode("utf-8", "replace")) != "")


def _begin(asked: Asked, wanted: Wanted) -> Response:
    """The work is under way; its page is shown once it is over, or after a moment."""
    jobs = asked.request.app.state.jobs
    present = jobs.get(asked.paper.slug)
    if present is not None and not present.ended:
        message = "Others are being taken in still. What you sent waits in the inbox: take it in when they are done."
        raise DeskError(message)
    folder = asked.paper.folder
    job: Job[Added] = Job(lambda job: add_sources(folder, wanted, job))
    jobs[asked.paper.slug] = job
    job.begin()
    job.wait(SOON_SECONDS)
    return asked.go(asked.to("sources", "adding"))


def _job_of(asked: Asked) -> Job[Added] | None:
    job: Job[Added] | None = asked.request.app.state.jobs.get(asked.paper.slug)
    return job


def take_inbox(asked: Asked) -> Response:
    """What waits in the inbox is being taken in."""
    try:
        return _begin(asked, sort_asked([str(path) for path in list_inbox(asked.paper.folder)]))
    except FairhandError as error:
        return show_adding(asked, fault=str(error), status=page_of(error)[0])


def show_work(asked: Asked) -> Response:
    """How far the work is, and, once it is over, what became of each thing, with where each field came from."""
    job = _job_of(asked)
    if job is None:
        return asked.go(asked.to("sources", "add"))
    over = job.ended  # asked once: it may end while this is made, and then nothing of it would be told
    added = job.wait(0) if over else None
    entries = asked.paper.opened.look().entries
    present = [one for one in added.doubles if one.new in entries and one.there in entries] if added else []
    return asked.page(
        "adding_page.html",
        title="Sources taken in" if over else "Taking in sources",
        step=_step(added) if added else "",
        job=job,
        over=over,
        added=added,
        fault=str(job.fault) if over and job.fault else "",
        entries=entries,
        doubles=present,
        origins={name: _tell_origins(entries[name].csl) for name in _new_ids(added) if name in entries},
        missing={name: list_missing(entries[name]) for name in _new_ids(added) if name in entries},
    )


def _new_ids(added: Added | None) -> Sequence[str]:
    return [one.id for one in added.taken if one.outcome == "new"] if added else ()


def _step(added: Added) -> str:
    if added.doubles:
        return "Say first which of these are one work; then write what is missing."
    if added.new:
        return "Hold each record against the work itself, and write what is missing."
    return "Nothing new came of it."


def _tell_origins(record: Mapping[str, object]) -> list[tuple[str, str]]:
    """Where the fields of a record came from: each place with the fields that it gave, in words."""
    told: dict[str, list[str]] = {}
    for name, where in origins_of(record).items():
        label = FIELDS[name].label.partition(",")[0].partition(":")[0] if name in FIELDS else name
        told.setdefault(where, []).append(label if label.isupper() else label.lower())
    lines = {where: ", ".join(labels) for where, labels in told.items()}
    return [(f"{line[:1].upper()}{line[1:]}", where) for where, line in lines.items()]


def stop(asked: Asked) -> Response:
    """The work stops after the piece that it is at; what is left waits where it was."""
    job = _job_of(asked)
    if job is not None:
        job.cancel()
        job.wait(SOON_SECONDS)
    return asked.go(asked.to("sources", "adding"))


def join(asked: Asked) -> Response:
    """Two sources that the writer says are one are one."""
    join_works(asked.paper.folder, asked.form.text("keep"), asked.form.text("other"))
    return asked.go(asked.to("sources", asked.form.text("keep")))


def settle_outside(asked: Asked) -> Response:
    """The writer allows registries and pages elsewhere to be asked, or takes that back."""
    try:
        allow_outside(read_paper(asked.paper.folder), allowed=asked.form.text("do") == "allow")
    except FairhandError as error:
        return show_adding(asked, fault=str(error), status=page_of(error)[0])
    return asked.go(asked.to("sources", "add", at="outside"))


ROUTES = (
    get("/paper/{slug}/sources/add", show_adding),
    post("/paper/{slug}/sources/add", add),
    post("/paper/{slug}/sources/add/inbox", take_inbox),
    post("/paper/{slug}/sources/add/outside", settle_outside),
    get("/paper/{slug}/sources/adding", show_work),
    post("/paper/{slug}/sources/adding/stop", stop),
    post("/paper/{slug}/sources/adding/join", join),
)
