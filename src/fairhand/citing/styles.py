"""Citation styles by name, shipped or from a file."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files

from fairhand.citing.style_rules import StyleRules, rules_of
from fairhand.errors import StyleUnknown
from fairhand.model.requirement import Value

ALIASES = {
    "mla": "mla-9",
    "modern language association": "mla-9",
    "apa": "apa-7",
    "american psychological association": "apa-7",
    "chicago": "chicago-notes-18",
    "cmos": "chicago-notes-18",
    "chicago notes": "chicago-notes-18",
    "chicago notes bibliography": "chicago-notes-18",
    "chicago footnotes": "chicago-notes-18",
    "chicago author date": "chicago-author-date-18",
    "turabian": "turabian-notes-9",
    "turabian notes": "turabian-notes-9",
    "turabian author date": "turabian-author-date-9",
    "harvard cite them right": "harvard",
    "cite them right": "harvard",
    "ama": "ama-11",
    "american medical association": "ama-11",
    "nlm": "vancouver",
    "asa style": "asa",
    "mhra": "mhra-notes",
    "cse": "cse-name-year",
    "any consistent": "mla-9",
}
"""What a style is also called. Without an edition the newest is meant; without a system, Chicago's notes."""

NOISE = re.compile(
    r"\b(?:style|edition|ed|the|manual|of|handbook|guide|system|format|and|citations?)\b|(?<=\d)(?:st|nd|rd|th)\b"
)


@dataclass(frozen=True)
class Style:
    """A citation style, ready for the engine."""

    name: str
    """Our name for it, as ``mla-9``; of a style from a file that is none of ours, its title."""
    title: str
    """The title that its CSL file bears."""
    edition_says: str
    """What it follows, as a finding names it: ``"MLA Handbook, 9th ed."``."""
    csl: str
    """The CSL file's text, unmodified."""
    is_note: bool
    """Whether citations stand in notes."""
    numeric: bool
    """Whether citations are numbers."""

    @property
    def rules(self) -> StyleRules:
        """The rules that CSL does not hold, or those of the nearest kind for a style from a file."""
        return rules(self)


@lru_cache(maxsize=1)
def shipped_styles() -> Mapping[str, str]:
    """The shipped styles' names, each with the name of its CSL file."""
    table = files("fairhand") / "citing" / "shipped_styles.toml"
    return tomllib.loads(table.read_text(encoding="utf-8"))


def find_style(name: str, csl_file: bytes | None = None) -> Style:
    """The style of that name, or that a CSL file holds.

    Args:
        name: ours (``apa-7``), or what people call it (``"MLA 9th edition"``); of a file, its name.
        csl_file: a CSL 1.0 style's bytes, which then is the style.

    Raises:
        StyleUnknown: no shipped style has that name, or the file holds no CSL style.

    >>> find_style("MLA Handbook, 9th ed.").name, find_style("Chicago author-date, 17th").name
    ('mla-9', 'chicago-author-date-17')
    """
    if csl_file is not None:
        return _read_style(name, csl_file)
    wanted = _shipped_name(name)
    if wanted is None:
        from rapidfuzz import process

        near = [str(found[0]) for found in process.extract(name.lower(), list(shipped_styles()), limit=3)]
        message = f'no citation style is called "{name}"; the nearest are {", ".join(near)}; or name a CSL file'
        raise StyleUnknown(message)
    return _load_style(wanted)


def style_for(values: Mapping[str, Value]) -> str:
    """The name of the style that a requirement asks for: of its edition where we have that, else the newest.

    >>> style_for({"style": "chicago-notes", "edition": 17}), style_for({"style": "apa", "edition": None})
    ('chicago-notes-17', 'apa-7')
    """
    asked = str(values.get("style") or "")
    edition = values.get("edition")
    if isinstance(edition, int | float | str):
        dated = _shipped_name(f"{asked} {edition:g}" if isinstance(edition, float) else f"{asked} {edition}")
        if dated is not None:
            return dated
    return _shipped_name(asked) or asked


def rules(style: Style) -> StyleRules:
    """The rules of a style that its CSL file does not hold."""
    return rules_of(style.name, is_note=style.is_note, numeric=style.numeric, title=style.title)


def _shipped_name(said: str) -> str | None:
    if said in shipped_styles():
        return said
    plain = " ".join(NOISE.sub(" ", re.sub(r"[^a-z0-9]+", " ", said.lower())).split())
    dashed = plain.replace(" ", "-")
    if dashed in shipped_styles():
        return dashed
    if plain in ALIASES:
        return ALIASES[plain]
    words = plain.split()
    editions = [word for word in words if word.isdigit()]
    base = ALIASES.get(" ".join(word for word in words if not word.isdigit()))
    if base is None or len(editions) != 1:
        return None
    dated = f"{base.rstrip('0123456789').rstrip('-')}-{editions[0]}"
    return dated if dated in shipped_styles() else None


@lru_cache(maxsize=8)
def _load_style(name: str) -> Style:
    place = files("fairhand") / "built" / "styles" / f"{shipped_styles()[name]}.csl"
    try:
        data = place.read_bytes()
    except OSError:
        message = f"the style {name} was not built with this installation; install Fairhand again"
        raise StyleUnknown(message) from None
    return _read_style(name, data, shipped=True)


def _read_style(name: str, data: bytes, *, shipped: bool = False) -> Style:
    from lxml import etree

    parser = etree.XMLParser(resolve_entities=False, no_network=True)
    try:
        root = etree.fromstring(data, parser)
    except etree.XMLSyntaxError as fault:
        message = f"{name} is not a CSL style: {fault}; give a file that ends in .csl"
        raise StyleUnknown(message) from None
    space = {"c": "http://purl.org/net/xbiblio/csl"}
    if etree.QName(root).localname != "style" or root.tag != f"{{{space['c']}}}style":
        message = f"{name} is XML, but not a CSL style; give a file that ends in .csl"
        raise StyleUnknown(message)
    title = " ".join((root.findtext("c:info/c:title", namespaces=space) or name).split())
    if root.find("c:citation", namespaces=space) is None:
        link = root.find("c:info/c:link[@rel='independent-parent']", namespaces=space)
        return _parent_style(name, str(link.get("href")) if link is not None else "")
    kind = root.find("c:info/c:category[@citation-format]", namespaces=space)
    numeric = kind is not None and kind.get("citation-format") == "numeric"
    is_note = root.get("class") == "note"
    bears = (root.findtext("c:info/c:id", namespaces=space) or "").rsplit("/", 1)[-1]
    known = next((ours for ours, file in shipped_styles().items() if file == bears), title)
    ours = name if shipped else known
    return Style(
        name=ours,
        title=title,
        edition_says=rules_of(ours, is_note=is_note, numeric=numeric, title=title).follows,
        csl=etree.tostring(root, encoding="unicode"),
        is_note=is_note,
        numeric=numeric,
    )


def _parent_style(name: str, address: str) -> Style:
    """The shipped style that a dependent one points to."""
    parent = address.rsplit("/", 1)[-1]
    for ours, shipped in shipped_styles().items():
        if shipped == parent:
            return _load_style(ours)
    message = f"{name} only points to another style, {parent}; give that file instead"
    raise StyleUnknown(message)
