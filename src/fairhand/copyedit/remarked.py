"""What a remark of a reader or teacher names as an error: words with what is right, or an error by its name."""

from __future__ import annotations

import re

from fairhand.model.lapse import Lapse

_SHOULD_BE = re.compile(
    r"[\"“‘']?(?P<wrong>[\w’' -]{2,40}?)[\"”’']?\s*(?:→|->|>|=>|\bshould (?:be|read)\b|\bnot\b:?)\s*[\"“‘']?"
    r"(?P<right>[\w’' -]{2,40}?)[\"”’']?(?=[.,;:!)]|\s\(|\Z)"
)
_ABOUT = re.compile(r"\s\(on “(?P<words>[^”]{2,40})”\)\Z")
_ABOUT_ANY = re.compile(r"\s\(on “[^”]*”\)\Z")
_SPELLING = re.compile(r"\b(?:sp|spell(?:ing)?)\b\.?", re.IGNORECASE)
_OPENS = r"(?:(?:this|here) is |another |again:? |watch (?:out for |for )?|see |check |avoid |an? |the |your )*"
_NAMES: tuple[tuple[str, str], ...] = (
    ("comma-splice", r"comma splices?|c\.?s"),
    ("fused-sentence", r"fused sentences?|run-?on sentences?|run-?ons?|f\.?s|r-?o"),
    (
        "comma-opening",
        r"(?:missing |no )?comma (?:missing )?after (?:an? |the )?intro(?:ductory)?\b[\w ]*|intro(?:ductory)? comma",
    ),
    ("comma-unneeded", r"(?:un(?:necessary|needed) comma|no comma|comma (?:is )?not needed)s?"),
    ("comma-nonrestrictive", r"(?:missing )?commas? (?:around|with) (?:an? |the )?non-?restrictive\b[\w ]*"),
    (
        "comma-compound",
        r"(?:missing )?comma (?:missing )?(?:before (?:and|but|so|yet)|in (?:an? )?compound(?: sentence)?)",
    ),
    ("semicolon", r"(?:wrong )?semi-?colon"),
    ("fragment", r"(?:sentence )?fragments?|frag|(?:an )?incomplete sentence"),
    ("agreement", r"(?:subject[ –/-]+verb|s[ /-]?v) agr(?:eement)?|agr|verb does not agree(?: with its subject)?"),
    ("article", r"(?:wrong |missing )?articles?|art"),
    ("verb-form", r"(?:wrong )?(?:verb form|form of the verb)|vf"),
    ("plural-missing", r"(?:missing )?plural(?: missing)?|pl"),
    ("doubled-word", r"repeated word|word (?:is )?(?:repeated|twice|doubled)|doubled? word"),
    ("confused-words", r"wrong word|w\.?w"),
    ("contraction", r"(?:no )?contractions?(?: here)?"),
    ("apostrophe", r"(?:missing |no )?(?:apostrophes?|apos|possessive)"),
    ("missing-word", r"missing word|word missing|(?:a )?word (?:is )?(?:missing|left out)|m\.?w"),
    ("capital", r"cap(?:ital)?s?(?: letter)?|capitali[sz]e|capitali[sz]ation"),
    ("hyphen", r"(?:missing )?hyphens?|hyph"),
    ("numeral-opening", r"(?:do not |don['’]t )?(?:open|start|begin) (?:a sentence )?with a (?:numeral|number|figure)"),
)
"""Checks by what handbooks and markers in margins call what they find (common practice)."""
_NAMED = tuple(
    (check, re.compile(rf"\W*{_OPENS}(?:{names})(?: here| again)?\W*", re.IGNORECASE)) for check, names in _NAMES
)


def read_comment(comment: str) -> Lapse | None:
    """The lapse that a reader's remark names: what is wrong with what is right, or an error by its name; None else.

    A remark that says more than the name, as praise or a question, names no error.

    >>> its, spelled = read_comment("“its” should be “it’s”."), read_comment("sp. (on “seperate”)")
    >>> (its.wrong, its.right, spelled.wrong), read_comment("A strong opening.")
    (('its', 'it’s', 'seperate'), None)
    >>> [read_comment(one).check for one in ("Comma splice!", "frag (on “Because of the ebb.”)", "s-v agr")]
    ['comma-splice', 'fragment', 'agreement']
    """
    about = _ABOUT.search(comment)
    said = _ABOUT_ANY.sub("", comment)
    for check, named in _NAMED:
        if named.fullmatch(said):
            return Lapse(check.replace("-", " "), check=check, example=about["words"] if about else "")
    found = _SHOULD_BE.fullmatch(said.strip()) or _SHOULD_BE.search(said)
    if found and found["wrong"].strip().casefold() != found["right"].strip().casefold():
        wrong, right = found["wrong"].strip(), found["right"].strip()
        return Lapse(f"{wrong} for {right}", wrong=wrong, right=right)
    if about and _SPELLING.search(said) and len(about["words"].split()) == 1:
        return Lapse(about["words"], wrong=about["words"])
    return None
