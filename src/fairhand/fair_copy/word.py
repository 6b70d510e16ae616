"""The reference document that gives a word processor's file its styles, header and page."""

from __future__ import annotations

import io
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from fairhand.fair_copy.document import FairCopy
from fairhand.fair_copy.layout import PAPER_SIZES_PT
from fairhand.fair_copy.looks import HEADING_LEVELS, VERBATIM_FONT, Look, looks_for, run_in_style
from fairhand.fair_copy.wording import furniture
from fairhand.model.inline import plain

if TYPE_CHECKING:
    from docx.document import Document
    from docx.styles.style import ParagraphStyle
    from docx.text.paragraph import Paragraph

_NUMBERED_SIDES = {"left": "left", "centre": "center", "right": "right"}


def reference_docx(copy: FairCopy) -> bytes:
    """A document without text whose styles, header and page are those of ``copy``."""
    import docx

    document = docx.Document()
    looks = looks_for(copy.layout)
    for name, look in looks.items():
        _define(document, name, look)
    _define_characters(document, looks)
    _define_table(document)
    _set_page(document, copy)
    _set_furniture(document, copy)
    properties = document.core_properties
    properties.title, properties.author = plain(copy.front.title)[:250], copy.front.author[:250]
    properties.comments, properties.language = "", copy.language
    kept = io.BytesIO()
    document.save(kept)
    return kept.getvalue()


def finish_docx(data: bytes) -> bytes:
    """Pandoc's document without the copies of its pictures' bytes that stand in their descriptions."""
    import docx

    document = docx.Document(io.BytesIO(data))
    for drawn in document.element.body.iter("{http://schemas.openxmlformats.org/drawingml/2006/picture}cNvPr"):
        if drawn.get("descr", "").startswith("data:"):
            drawn.set("descr", "")
    kept = io.BytesIO()
    document.save(kept)
    return kept.getvalue()


def _define(document: Document, name: str, look: Look) -> None:
    """Give the style ``name`` its look, making it where the template lacks it."""
    from docx.enum.style import WD_STYLE_TYPE
    from docx.enum.text import WD_ALIGN_PARAGRAPH
    from docx.oxml.ns import qn
    from docx.shared import Pt

    known = {style.name for style in document.styles}
    style: Any = document.styles[name] if name in known else document.styles.add_style(name, WD_STYLE_TYPE.PARAGRAPH)
    style.hidden, style.quick_style = False, True
    if look.base and look.base != name:
        style.base_style = document.styles[look.base]
    _set_font(style, look)
    paragraph = style.paragraph_format
    paragraph.line_spacing = look.spacing
    paragraph.space_before, paragraph.space_after = Pt(look.before_pt), Pt(look.after_pt)
    paragraph.left_indent, paragraph.right_indent = Pt(look.left_pt), Pt(0)
    paragraph.first_line_indent = Pt(look.first_pt)
    sides = {"left": WD_ALIGN_PARAGRAPH.LEFT, "centre": WD_ALIGN_PARAGRAPH.CENTER, "full": WD_ALIGN_PARAGRAPH.JUSTIFY}
    paragraph.alignment = sides[look.side]
    paragraph.keep_with_next, paragraph.page_break_before = look.keep, look.new_page
    paragraph.widow_control, paragraph.keep_together = True, False
    if look.outline is not None:
        _set_outline(style, look.outline)
    for unwanted in ("w:pBdr", "w:tabs"):
        for old in style.element.pPr.findall(qn(unwanted)):
            style.element.pPr.remove(old)


def _set_font(style: Any, look: Look) -> None:
    """Give a style of paragraphs or of characters the look's type."""
    from docx.oxml.ns import qn
    from docx.shared import Pt, RGBColor

    font = style.font
    font.name, font.size = look.font, Pt(look.size_pt)
    font.bold, font.italic, font.color.rgb = look.bold, look.italic, RGBColor(0, 0, 0)
    faces = style.element.get_or_add_rPr().get_or_add_rFonts()
    for theme in ("asciiTheme", "hAnsiTheme", "eastAsiaTheme", "cstheme"):
        faces.attrib.pop(qn(f"w:{theme}"), None)
    for script in ("ascii", "hAnsi", "cs", "eastAsia"):
        faces.set(qn(f"w:{script}"), look.font)


def _set_outline(style: ParagraphStyle, level: int) -> None:
    """The style's place in the document's outline, 0 for the highest."""
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn

    paragraph: Any = style.element.get_or_add_pPr()
    for old in paragraph.findall(qn("w:outlineLvl")):
        paragraph.remove(old)
    outline = OxmlElement("w:outlineLvl")
    outline.set(qn("w:val"), str(level))
    paragraph.append(outline)


def _define_characters(document: Document, looks: Mapping[str, Look]) -> None:
    """The styles of a note's number, of verbatim words, and those linked with the headings."""
    from docx.enum.style import WD_STYLE_TYPE

    for level in range(1, HEADING_LEVELS + 1):
        _set_font(document.styles[run_in_style(level)], looks[f"Heading {level}"])
    number: Any = document.styles.add_style("Footnote Reference", WD_STYLE_TYPE.CHARACTER)
    number.font.superscript = True
    verbatim: Any = document.styles.add_style("Verbatim Char", WD_STYLE_TYPE.CHARACTER)
    verbatim.font.name = VERBATIM_FONT


def _define_table(document: Document) -> None:
    """The table style that pandoc asks for: rules above, below, and under the head row."""
    from docx.oxml import parse_xml
    from docx.oxml.ns import nsdecls

    def rule(side: str, eighths_pt: int) -> str:
        return f'<w:{side} w:val="single" w:sz="{eighths_pt}" w:space="0" w:color="000000"/>'

    document.styles.element.append(
        parse_xml(
            f'<w:style {nsdecls("w")} w:type="table" w:customStyle="1" w:styleId="Table"><w:name w:val="Table"/>'
            f'<w:basedOn w:val="TableNormal"/><w:tblPr><w:tblBorders>{rule("top", 6)}{rule("bottom", 6)}</w:tblBorders>'
            f'</w:tblPr><w:tblStylePr w:type="firstRow"><w:tcPr><w:tcBorders>{rule("bottom", 4)}</w:tcBorders></w:tcPr>'
            "</w:tblStylePr></w:style>"
        )
    )


def _set_page(document: Document, copy: FairCopy) -> None:
    """Paper, margins and line numbers."""
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn
    from docx.shared import Pt

    layout, section = copy.layout, document.sections[0]
    width, height = PAPER_SIZES_PT[layout.paper]
    top, right, bottom, left = layout.margins_pt
    section.page_width, section.page_height = Pt(width), Pt(height)
    section.top_margin, section.right_margin = Pt(top), Pt(right)
    section.bottom_margin, section.left_margin = Pt(bottom), Pt(left)
    section.header_distance, section.footer_distance = Pt(min(36.0, top / 2)), Pt(min(36.0, bottom / 2))
    properties: Any = section._sectPr  # noqa: SLF001 - python-docx has no public way to number lines
    if layout.line_numbers:
        numbers = OxmlElement("w:lnNumType")
        numbers.set(qn("w:countBy"), "1")
        numbers.set(qn("w:restart"), "newPage" if layout.proof else "continuous")
        _insert(properties, numbers, before=("w:pgNumType", "w:cols", "w:titlePg", "w:docGrid"))
    if layout.first_page == "title-page" and not layout.number_title_page:
        section.different_first_page_header_footer = True
        start = OxmlElement("w:pgNumType")
        start.set(qn("w:start"), "0")
        _insert(properties, start, before=("w:cols", "w:titlePg", "w:docGrid"))


def _insert(parent: Any, child: Any, before: tuple[str, ...]) -> None:
    """Put ``child`` before the first of the named elements, as the file format's order wants it."""
    from docx.oxml.ns import qn

    names = {qn(name) for name in before}
    following = next((element for element in parent if element.tag in names), None)
    if following is None:
        parent.append(child)
    else:
        following.addprevious(child)


def _set_furniture(document: Document, copy: FairCopy) -> None:
    """Running head and page number."""
    from docx.enum.text import WD_ALIGN_PARAGRAPH, WD_TAB_ALIGNMENT
    from docx.shared import Pt

    layout, section = copy.layout, document.sections[0]
    sides = {"left": WD_ALIGN_PARAGRAPH.LEFT, "centre": WD_ALIGN_PARAGRAPH.CENTER, "right": WD_ALIGN_PARAGRAPH.RIGHT}
    for line, place in zip(furniture(copy), (section.header, section.footer), strict=True):
        if not line:
            continue
        paragraph = place.paragraphs[0]
        paragraph.alignment = sides[line.side]
        gap = "\t" if line.parted else " "
        paragraph.add_run(line.head + gap if line.head and line.numbered else line.head)
        if line.parted:
            width = PAPER_SIZES_PT[layout.paper][0] - layout.margins_pt[1] - layout.margins_pt[3]
            paragraph.paragraph_format.tab_stops.add_tab_stop(Pt(width), WD_TAB_ALIGNMENT.RIGHT)
        if line.numbered:
            _add_page_number(paragraph)


def _add_page_number(paragraph: Paragraph) -> None:
    """A field that shows the page's number."""
    from docx.oxml import OxmlElement
    from docx.oxml.ns import qn

    for kind, text in (("begin", ""), ("", "PAGE"), ("separate", ""), ("shown", "1"), ("end", "")):
        run = paragraph.add_run()
        if kind in {"begin", "separate", "end"}:
            element = OxmlElement("w:fldChar")
            element.set(qn("w:fldCharType"), kind)
        else:
            element = OxmlElement("w:t" if kind else "w:instrText")
            element.text = text
        run._r.append(element)  # noqa: SLF001 - python-docx has no public way to add a field
