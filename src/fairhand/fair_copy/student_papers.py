"""The page of each style's student paper."""

from __future__ import annotations

from dataclasses import replace

from fairhand.fair_copy.document import Layout

APA = Layout(
    "APA 7, student paper",
    first_page="title-page",
    title_bold=True,
    title_again=True,
    title_page_form="upper half",
    heading_forms=(
        "centred bold",
        "left bold",
        "left bold italic",
        "indented bold run-in",
        "indented bold italic run-in",
    ),
)
"""**Source**: Publication Manual of the APA, 7th ed., chapter 2."""

MLA = Layout(
    "MLA 9",
    running_head="surname",
    list_title="Works Cited",
    list_title_bold=False,
    heading_forms=("left bold", "left italic", "centred bold", "centred italic", "left plain"),
    caption_form="mla",
    table_spacing=2.0,
)
"""**Source**: MLA Handbook, 9th ed., chapter 1; it has no fixed set of headings, these are common practice."""

CHICAGO = Layout(
    "Turabian 9 (Chicago)",
    first_page="title-page",
    number_title_page=False,
    list_title="Bibliography",
    list_title_bold=False,
    list_spacing=1.0,
    quote_spacing=1.0,
    note_spacing=1.0,
    heading_forms=("centred bold", "centred plain", "left bold", "left plain", "indented bold run-in"),
    caption_form="chicago",
)
"""**Source**: Turabian, A Manual for Writers, 9th ed., appendix."""

BRITISH = Layout(
    "Harvard",
    spacing=1.5,
    list_spacing=1.5,
    quote_spacing=1.5,
    note_spacing=1.0,
    page_number="bottom centre",
    title_bold=True,
    heading_forms=(
        "left bold",
        "left bold italic",
        "left italic",
        "indented bold run-in",
        "indented bold italic run-in",
    ),
)
"""**Source**: common practice; Harvard referencing prescribes no page."""

NUMBERED = Layout(
    "numbered references",
    title_bold=True,
    note_spacing=1.0,
    heading_forms=BRITISH.heading_forms,
)
"""**Source**: common practice for double-spaced manuscripts in the sciences."""

PLAIN = Layout("a plain manuscript page", title_bold=True, heading_forms=BRITISH.heading_forms)
"""**Source**: common practice of the typed manuscript: name and date, title, double spacing, numbered pages."""

PLAIN_PAGE = "plain"
"""The name of the page of a paper that follows no style."""

LAYOUTS = {
    PLAIN_PAGE: PLAIN,
    "chicago-author-date": replace(CHICAGO, style="Turabian 9 (Chicago, author-date)", list_title="References"),
    "turabian-author-date": replace(CHICAGO, style="Turabian 9 (author-date)", list_title="References"),
    "chicago": CHICAGO,
    "turabian": CHICAGO,
    "mla": MLA,
    "modern-language": MLA,
    "apa": APA,
    "mhra": replace(BRITISH, style="MHRA 4", list_title="Bibliography", spacing=2.0),
    "harvard": BRITISH,
    "ieee": replace(NUMBERED, style="IEEE"),
    "ama": replace(NUMBERED, style="AMA 11"),
    "vancouver": replace(NUMBERED, style="Vancouver"),
    "asa": replace(APA, style="ASA 7", title_again=False, title_bold=False),
}
"""Each style's page; the first row whose name begins (else occurs in) the style's name holds."""
