"""Every address of the page: the ordered table of page modules, each of which lists its own."""

from __future__ import annotations

from importlib import import_module

from starlette.routing import BaseRoute

SERVED_BESIDE = ("assets", "watching")
"""The modules of ``fairhand.web`` that are no pages and have a tuple ``ROUTES``."""
PAGES = (
    "desk_page",
    "plan_page",
    "hours_page",
    "new_page",
    "brief_page",
    "jottings_page",
    "sorted_page",
    "focus_page",
    "points_page",
    "sources_page",
    "adding_page",
    "leads_page",
    "find_page",
    "source_text_page",
    "source_page",
    "notes_page",
    "support_page",
    "rough_page",
    "draft_page",
    "sheet_page",
    "offcuts_page",
    "fit_page",
    "revision_page",
    "copy_edit_page",
    "marked_later_page",
    "lapses_page",
    "proof_page",
    "aloud_page",
    "final_page",
    "fair_copy_page",
    "readers_page",
    "verdict_page",
    "hand_in_page",
    "record_page",
    "states_page",
    "versions_page",
    "taking_page",
    "paper_page",
)
"""The modules of ``fairhand.web.pages`` that have a tuple ``ROUTES``."""


def list_routes() -> tuple[BaseRoute, ...]:
    """The addresses of every page that there is."""
    names = (*SERVED_BESIDE, *(f"pages.{name}" for name in PAGES))
    return tuple(route for name in names for route in import_module(f"fairhand.web.{name}").ROUTES)


def working_leaves(routes: tuple[BaseRoute, ...]) -> frozenset[str]:
    """The names of the paper's pages that there are: pages of later parts are not shown until they work."""
    before = "/paper/{slug}/"
    paths = (str(getattr(route, "path", "")) for route in routes)
    return frozenset(path.removeprefix(before) for path in paths if path.startswith(before))
