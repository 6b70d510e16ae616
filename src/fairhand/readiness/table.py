"""The two tables that the verdict is made of: the checks in their order, and the judge of each kind of requirement."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from fairhand.model.requirement import Kind, Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Check
from fairhand.readiness.checks import (
    abbreviation,
    agreement,
    article,
    aside_left,
    block_quotation,
    citation_ambiguous,
    citation_page_missing,
    citation_unknown,
    citation_year,
    claim_unsupported,
    close_wording,
    comma_splice,
    confused_words,
    contraction,
    copied_unmarked,
    dash,
    doubled_word,
    exhibit_mention,
    fragment,
    heading_alone,
    length,
    mark_spacing,
    mark_unpaired,
    numeral_opening,
    off_focus,
    paragraph_quoted,
    percent_sign,
    placeholder_left,
    plural_missing,
    point_dependent,
    point_missing,
    point_thin,
    quotation_differs,
    quotation_elsewhere,
    quotation_gap,
    quotation_marks,
    quotation_not_found,
    quotation_stop,
    quotation_unchecked,
    quotation_uncited,
    quoted_much,
    range_hyphen,
    repeated_argument,
    section_missing,
    source_uncited,
    spelling,
    spelling_mixed,
    verb_form,
)
from fairhand.readiness.judgement import Judgement
from fairhand.readiness.verdicts import due, element, late, section, sources, sources_banned, style, told
from fairhand.readiness.verdicts import format as format_verdict
from fairhand.readiness.verdicts import length as length_verdict

PRACTICE = "common practice"
HANDBOOKS = "Lunsford & Lunsford 2008 and handbooks of usage"
DICTIONARY = "the dictionaries of SCOWL, American and British"
QUOTING = (
    "MLA Handbook, 9th ed., ch. 6; APA Manual, 7th ed., 8.30–8.31; Chicago Manual, 17th ed., 13.7–13.8 (from memory)"
)
COPYING = (
    "MLA Handbook, 9th ed., 4.1–4.15; APA Manual, 7th ed., 8.2–8.3; Chicago Manual, 17th ed., 13.1–13.6 (from memory)"
)
SOURCING = "MLA Handbook, 9th ed., 4.5–4.8; APA Manual, 7th ed., 8.1; Chicago Manual, 17th ed., 13.1–13.5 (from memory)"
CITING = "MLA Handbook, 9th ed., ch. 6; APA Manual, 7th ed., ch. 8; Chicago Manual, 17th ed., chs. 14–15 (from memory)"

DASHES = "APA Manual, 7th ed., 6.6; MLA Handbook, 9th ed., 2.53; Chicago Manual, 17th ed., 6.75–6.85 (from memory)"
NUMERALS = "APA Manual, 7th ed., 6.33; MLA Handbook, 9th ed., 2.126; Chicago Manual, 17th ed., 9.5 (from memory)"
HEADINGS = "MLA Handbook, 9th ed., 1.5; APA Manual, 7th ed., 2.27 (from memory)"

STOPS = "MLA Handbook, 9th ed., 6.53; APA Manual, 7th ed., 6.8; Chicago Manual, 17th ed., 6.9 (from memory)"
EXHIBITS = "APA Manual, 7th ed., 7.5; MLA Handbook, 9th ed., 1.7; Chicago Manual, 17th ed., 3.50 (from memory)"
PERCENT = "APA Manual, 7th ed., 6.44 (from memory)"
MARKS = "MLA Handbook, 9th ed., 6.4; APA Manual, 7th ed., 6.7; Chicago Manual, 17th ed., 13.30 (from memory)"
ABBREVIATIONS = "APA Manual, 7th ed., 6.25; Chicago Manual, 17th ed., 10.3 (from memory)"

CHECKS: tuple[Check, ...] = (
    Check("length", "revision", "must", "a paper longer or shorter than the sheet allows", "the sheet", length.find),
    Check("section-missing", "revision", "must", "a section that the sheet names", "the sheet", section_missing.find),
    Check("point-thin", "revision", "should", "a point with too few sources", PRACTICE, point_thin.find),
    Check(
        "point-dependent", "revision", "should", "a point whose sources are one witness", PRACTICE, point_dependent.find
    ),
    Check("point-missing", "revision", "should", "a main point that is not argued", PRACTICE, point_missing.find),
    Check(
        "claim-unsupported",
        "revision",
        "should",
        "a figure or a finding that no source vouches for",
        SOURCING,
        claim_unsupported.find,
        of_manual=True,
    ),
    Check("off-focus", "revision", "query", "a paragraph that strays from the paper", PRACTICE, off_focus.find),
    Check(
        "repeated-argument",
        "revision",
        "query",
        "an argument that was made before",
        PRACTICE,
        repeated_argument.find,
    ),
    Check(
        "paragraph-quoted",
        "revision",
        "query",
        "a paragraph that is mostly quotation",
        PRACTICE,
        paragraph_quoted.find,
    ),
    Check("quoted-much", "revision", "query", "a paper of which much is quotation", PRACTICE, quoted_much.find),
    Check(
        "quotation-differs",
        "copy-edit",
        "must",
        "words changed inside a quotation",
        QUOTING,
        quotation_differs.find,
        of_manual=True,
    ),
    Check(
        "quotation-gap",
        "copy-edit",
        "must",
        "words dropped from a quotation unmarked",
        QUOTING,
        quotation_gap.find,
        of_manual=True,
    ),
    Check(
        "quotation-elsewhere",
        "copy-edit",
        "must",
        "a quotation on another page",
        CITING,
        quotation_elsewhere.find,
        of_manual=True,
    ),
    Check(
        "quotation-not-found",
        "copy-edit",
        "should",
        "a quotation in no source",
        CITING,
        quotation_not_found.find,
        of_manual=True,
    ),
    Check(
        "quotation-unchecked",
        "copy-edit",
        "query",
        "sources whose text is not at hand",
        PRACTICE,
        quotation_unchecked.find,
    ),
    Check(
        "copied-unmarked",
        "copy-edit",
        "should",
        "a source's words with no quotation marks",
        COPYING,
        copied_unmarked.find,
        of_manual=True,
    ),
    Check(
        "close-wording",
        "copy-edit",
        "should",
        "a sentence that follows a source's too closely",
        COPYING,
        close_wording.find,
        of_manual=True,
    ),
    Check(
        "citation-unknown",
        "copy-edit",
        "must",
        "a citation that fits no source",
        CITING,
        citation_unknown.find,
        of_manual=True,
    ),
    Check(
        "citation-ambiguous",
        "copy-edit",
        "must",
        "a citation that fits several",
        CITING,
        citation_ambiguous.find,
        of_manual=True,
    ),
    Check(
        "citation-year", "copy-edit", "must", "a citation with another year", CITING, citation_year.find, of_manual=True
    ),
    Check(
        "citation-page-missing",
        "copy-edit",
        "must",
        "a quotation without its page",
        CITING,
        citation_page_missing.find,
        of_manual=True,
    ),
    Check(
        "quotation-uncited",
        "copy-edit",
        "must",
        "a quotation without any citation",
        CITING,
        quotation_uncited.find,
        of_manual=True,
    ),
    Check(
        "source-uncited",
        "copy-edit",
        "must",
        "a source on the list never cited",
        CITING,
        source_uncited.find,
        of_manual=True,
    ),
    Check("aside-left", "copy-edit", "must", "a remark to oneself", PRACTICE, aside_left.find),
    Check("placeholder-left", "copy-edit", "must", "matter still to come", PRACTICE, placeholder_left.find),
    Check(
        "spelling", "copy-edit", "should", "a word that no dictionary has", DICTIONARY, spelling.find, of_language=True
    ),
    Check(
        "spelling-mixed",
        "copy-edit",
        "query",
        "a word spelled as the other country has it",
        DICTIONARY,
        spelling_mixed.find,
        of_language=True,
    ),
    Check(
        "confused-words",
        "copy-edit",
        "should",
        "one of two words taken for the other",
        HANDBOOKS,
        confused_words.find,
        of_language=True,
    ),
    Check(
        "plural-missing",
        "copy-edit",
        "should",
        "a noun that wants its plural",
        HANDBOOKS,
        plural_missing.find,
        of_language=True,
    ),
    Check(
        "agreement",
        "copy-edit",
        "should",
        "a verb that does not agree with its subject",
        HANDBOOKS,
        agreement.find,
        of_language=True,
    ),
    Check(
        "comma-splice",
        "copy-edit",
        "should",
        "two sentences joined by a comma alone",
        HANDBOOKS,
        comma_splice.find,
        of_language=True,
    ),
    Check(
        "fragment",
        "copy-edit",
        "should",
        "a part of a sentence set as a whole one",
        HANDBOOKS,
        fragment.find,
        of_language=True,
    ),
    Check(
        "verb-form",
        "copy-edit",
        "should",
        "a verb in a form that its auxiliary does not take",
        HANDBOOKS,
        verb_form.find,
        of_language=True,
    ),
    Check(
        "article",
        "copy-edit",
        "should",
        "“a” where “an” belongs, or the other way about",
        HANDBOOKS,
        article.find,
        of_language=True,
    ),
    Check(
        "doubled-word",
        "copy-edit",
        "should",
        "the same word twice running",
        PRACTICE,
        doubled_word.find,
        of_language=True,
    ),
    Check(
        "mark-spacing", "copy-edit", "should", "a mark with a blank too many or too few", PRACTICE, mark_spacing.find
    ),
    Check("dash", "copy-edit", "should", "a hyphen where a dash belongs", DASHES, dash.find, of_manual=True),
    Check(
        "range-hyphen",
        "copy-edit",
        "query",
        "a hyphen in a range of numbers",
        DASHES,
        range_hyphen.find,
        of_manual=True,
    ),
    Check(
        "numeral-opening",
        "copy-edit",
        "should",
        "a sentence that opens with a numeral",
        NUMERALS,
        numeral_opening.find,
        of_manual=True,
    ),
    Check(
        "heading-alone",
        "copy-edit",
        "should",
        "a heading with nothing under it, or the only one",
        HEADINGS,
        heading_alone.find,
    ),
    Check(
        "mark-unpaired",
        "copy-edit",
        "should",
        "a bracket or quotation mark without the other",
        PRACTICE,
        mark_unpaired.find,
    ),
    Check(
        "quotation-stop",
        "copy-edit",
        "should",
        "a stop after the closing quotation mark",
        STOPS,
        quotation_stop.find,
        of_manual=True,
    ),
    Check(
        "block-quotation",
        "copy-edit",
        "should",
        "a quotation run in or set off against the style’s measure",
        QUOTING,
        block_quotation.find,
        of_manual=True,
    ),
    Check(
        "exhibit-mention",
        "copy-edit",
        "should",
        "a table or figure that the text does not speak of, or has not got",
        EXHIBITS,
        exhibit_mention.find,
        of_manual=True,
    ),
    Check(
        "quotation-marks",
        "copy-edit",
        "query",
        "quotations in the other kind of marks",
        MARKS,
        quotation_marks.find,
        of_manual=True,
    ),
    Check(
        "percent-sign",
        "copy-edit",
        "query",
        "percentages in a form that the style has not, or in both",
        PERCENT,
        percent_sign.find,
        of_manual=True,
    ),
    Check(
        "contraction",
        "copy-edit",
        "should",
        "a contraction where the sheet forbids them",
        "the sheet",
        contraction.find,
    ),
    Check(
        "abbreviation",
        "copy-edit",
        "query",
        "an abbreviation explained twice, or too late",
        ABBREVIATIONS,
        abbreviation.find,
        of_manual=True,
    ),
)
"""Every check, in the order of the work: argument and length first, then quotations, citations and language."""

JUDGES: Mapping[Kind, Callable[[Requirement, Analysis], Judgement]] = {
    "task": told.judge_task,
    "length": length_verdict.judge,
    "section": section.judge,
    "element": element.judge,
    "sources": sources.judge,
    "sources_banned": sources_banned.judge,
    "style": style.judge,
    "format": format_verdict.judge,
    "due": due.judge,
    "submit": told.judge_submit,
    "policy": told.judge_policy,
    "late": late.judge,
    "rubric": told.judge_rubric,
}
"""Who judges each kind of requirement."""
