"""Rules for titles that no engine applies, applied to a record before it is rendered."""

from __future__ import annotations

import re

from fairhand.citing.entries import MARKUP, text_of
from fairhand.citing.records import Item

TITLES = ("title", "title-short", "container-title", "collection-title", "volume-title", "original-title")
LEADING_ARTICLE = re.compile(r"(?:The|An?)\s+(?=\S)")
MAIN_TITLE = re.compile(r"(.+?)(?::\s|(?<=[?!])\s)")
LONG_PREPOSITION = re.compile(
    r"(?<=[\w,] )(?:upon|between|through|throughout|against|among|amongst|under|within|without|towards?|during|beneath"
    r"|beside|beyond|across|along|around|above|below|behind|despite|versus|concerning|regarding)(?= )"
)


def drop_tags_unmatched(item: Item) -> None:
    """A title whose markup is not closed is read as plain text. **Source**: common practice."""
    for key in TITLES:
        title = text_of(item, key)
        if "<" in title and len(re.findall(r"<(?!/)", title)) != title.count("</"):
            item[key] = MARKUP.sub("", title)


def trim_titles(item: Item) -> None:
    """A title ends in no full stop of its own, and one mark alone parts its two halves.

    **Source**: MLA 9, 5.25; CMOS 17, 14.96 (*Whose Culture Is It?* keeps its mark and takes no colon).
    """
    for key in TITLES:
        title = text_of(item, key)
        if title:
            title = re.sub(r"\s+:\s+", ": ", title)
            title = re.sub(r"([?!]):(?=\s|$)", r"\1", title)
            item[key] = title[:-1] if re.search(r"[a-z]{2}\.$", title) and not title.endswith("etc.") else title


def shorten_title(item: Item) -> None:
    """The short title is the main title alone. **Source**: CMOS 17, 14.33; MLA 9, 6.10; APA 7, 8.14."""
    if not item.get("title-short"):
        title = text_of(item, "title")
        main = MAIN_TITLE.match(title)
        if main and main[1].count("<") == 2 * main[1].count("</"):
            item["title-short"] = main[1]


def shorten_without_article(item: Item) -> None:
    """A short title drops its first *A*, *An* or *The*. **Source**: CMOS 17, 14.33; MLA 9, 6.10.

    >>> item = {"title": "The Social Organization of Sexuality: Practices"}; shorten_without_article(item)
    >>> item["title-short"]
    'Social Organization of Sexuality'
    """
    shorten_title(item)
    short = text_of(item, "title-short") or text_of(item, "title")
    if text_of(item, "language").lower()[:2] in {"", "en"}:
        item["title-short"] = re.sub(rf"^((?:<i>)?){LEADING_ARTICLE.pattern}", r"\1", short)


def keep_prepositions(item: Item) -> None:
    """A preposition that is small in the record stays small, however long. **Source**: CMOS 17, 8.159; MLA 9, 2.90.

    >>> item = {"title": "Letters upon the Tide"}; keep_prepositions(item); item["title"]
    'Letters <span class="nocase">upon</span> the Tide'
    """
    for key in TITLES:
        title = text_of(item, key)
        if title and "nocase" not in title:
            item[key] = LONG_PREPOSITION.sub(r'<span class="nocase">\g<0></span>', title)


def drop_article_of_newspaper(item: Item) -> None:
    """A newspaper's name loses its first *The*. **Source**: CMOS 17, 14.193."""
    if item["type"] == "article-newspaper" and "container-title" in item:
        item["container-title"] = re.sub(r"^The\s+(?=\S)", "", text_of(item, "container-title"))
