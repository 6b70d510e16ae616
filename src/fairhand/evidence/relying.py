"""Words by which a sentence says that it rests on what it cites: whose tables, figures or text it takes over.

**Source**: common practice of scholarly prose; the signs are closed lists, so that what says it otherwise is not seen.
"""

from __future__ import annotations

import re

_COUNTED = (
    r"(?:data|datasets?|data\ssets?|figures?|tables?|numbers?|counts?|totals?|estimates?|measurements?|statistics|"
    r"records?|transcriptions?|transcripts?|samples?|surveys?|interviews|series|calculations?|census|values|returns|prices|"
    r"percentages|rates|ratios|dates|coordinates|quotations)"
)
_THINGS = (
    rf"(?:{_COUNTED}|results?|findings|accounts?|evidence|research|work|study|report|analysis|trial|material|lists?|"
    r"chronology|narrative|article|thesis|book|text|version)"
)
_WORK = r"(?-i:[A-Z])[\w’'-]+(?:\s(?:and|&)\s(?-i:[A-Z])[\w’'-]+|\set\sal\.)?,?\s\(?(?:1[5-9]|20)\d\d"
"""A work as it is cited in a sentence: *Lind (2019)*, *Lind and Marsh (2019)*."""
_THERE = r"(?:the\s(?:\w+\s){1,3}(?:of|by|in)\s)?"
_OBJECT = (
    rf"(?:(?!whether|how|what|who|if|where|when|our|my|ours|mine)\w+\s){{0,4}}?(?:{_THINGS}|(?-i:[A-Z])\w+|him|hers?|his|"
    rf"theirs?|them|(?:that|those)\sof|\w+\s(?:printed|published|given|listed|collected|recorded|compiled)\s(?:in|by))"
)
_OWN = re.compile(
    r"""\b(?:I|we|our|my|ours|mine|us|here|below|above|throughout|this|these
      | all\s(?:the\s)?(?:statements?|figures?|numbers?)
      | the\s(?:article|account|report|text|map|list|page|chapter|paper|study|table|leaflet|brochure|note|site)
        (?:\sthat\sfollows|\sbelow)?
        (?=\s(?:is|was|leans|rests|relies|draws|depends|borrows|takes|uses|repeats|reproduces|follows))
    )\b""",
    re.IGNORECASE | re.VERBOSE,
)
"""That the sentence speaks of its own work; that others rely on something is no tie."""
_DOES = re.compile(
    rf"""(?<!\w)(?:
      (?:rel(?:y|ies|ied|ying)|dr[ae]w(?:s|n|ing)?|rest(?:s|ed|ing)?|based|built|lean(?:s|ed|ing)?|depend(?:s|ed|ing)?)
        \s(?:\w+\s){{0,3}}?(?:up)?on\s{_OBJECT}
    | (?:version|restatement|abridge?ment|summary|digest|reprint|reissue|condensation|recast(?:ing)?)\sof
    | further\sanalysis\sof
    | follow(?:s|ed|ing)?\s(?:closely\s)?(?:that|those|the\s(?:account|order|text))\sof
    | follow(?:s|ed|ing)?\s(?:the\s)?{_COUNTED}\s(?:in|of|by|given)
    | (?:restate|repeat|rehearse|recapitulate|reproduce|rework)s? | report(?:s|ed)?\sagain
    | (?:take|takes|took|taken|taking|borrow|borrows|borrowed|draw|draws|drew)\s(?:my|our|all|these|its|the)\s
        (?:\w+\s){{0,2}}?{_COUNTED}\sfrom
    | (?:identical|the\ssame)\s(?:to|with|as)\s(?:that|those)\s(?:of|in|used)
    | first\s(?:printed|published|appeared|given)(?:,\s[^,]{{3,60}},)?\s(?:as|in|by)
    )(?!\w)""",
    re.IGNORECASE | re.VERBOSE,
)
"""What a work says that it does itself."""
_FROM = re.compile(
    rf"""(?<!\w)(?:
      (?:taken|drawn|derived|compiled|borrowed|adapted|reprinted|reproduced|copied|summari[sz]ed|abridged|excerpted
        |condensed|recalculated|transcribed)\s(?:\w+\s){{0,4}}?from
    | (?:reprint|reproduce|summari[sz]e|abridge|restate|repeat|republish|reanaly[sz]e|re-analy[sz]e)(?:s|es|d|ed)?\s
        (?:\w+['’]?s?\s){{0,4}}?{_THINGS}
    | (?:us|reus|re-us)(?:es?|ed|ing)\s(?:only\s|here\s|again\s)?(?:the|their|her|his|its)\s(?:\w+\s){{0,2}}?{_COUNTED}
    | {_COUNTED}\s(?:used\s|given\s|shown\s|quoted\s|printed\s|cited\s)?
        (?:here\s|below\s|above\s|(?:in|on)\sthis\s\w+\s)?
        (?:are|is|were|was|comes?|came)\s(?:all\s|only\s|entirely\s|wholly\s|mostly\s|in\sthe\smain\s)?
        (?:those|that\sof|taken|drawn|from|his|hers|theirs|(?-i:[A-Z])\w+['’]s)
    | (?:results?|findings|evidence|interviews|cases?)\s(?:are|is|were|was|comes?|came)\s(?:all\s|only\s)?
        (?:those\sof|taken\sfrom|drawn\sfrom|from)
    | (?:is|are)\s(?:the\s(?:ones?|same)|that|those)\s(?:\w+\s){{0,2}}?
        (?:described|reported|published|used|analy[sz]ed|given|printed|collected|recorded)\s(?:in|by)
    | (?:are|is|were|was|comes?|came)\s(?:(?:\w+\s)?from|(?:those|that)\sof)\s{_THERE}{_WORK}
    | (?:are|is)\s(?-i:[A-Z])[\w-]+['’]s\s?\(
    | (?:supplied|provided)\sby\s{_THERE}{_WORK}
    | (?:kindly|generously)\s(?:\w+\s){{0,2}}?(?:available|supplied|provided|lent|given|shared)\sby
    | {_COUNTED}\sfollows?(?=\s(?-i:[A-Z]))
    | owe(?:s|d)?\s(?:\w+\s){{1,5}}?to
    | according\sto\s(?:the\s|their\s|her\s|his\s)?(?:\w+\s){{0,2}}?{_COUNTED}
    | add(?:s|ed|ing)?\s(?:\w+\s){{0,2}}?(?:nothing|no\s(?:new|further|fresh|other))
    | nothing\s(?:\w+\s){{0,2}}?to\sadd | no\s(?:new|further|fresh)\s{_THINGS}
    | same\s(?:\d[\d,]*|(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)(?:-\w+)?|(?:a\s)?hundred|dozen)\s\w+
    | same\s(?:\w+\s){{0,3}}?(?:{_COUNTED}|ledgers|trial|participants|respondents|archive)
    | second(?:ary)?\sanalysis
    | (?:sources?|figures|data|tables?|numbers):
    )(?!\w)""",
    re.IGNORECASE | re.VERBOSE,
)
"""Where matter is said to come from, whoever says it."""
_NOT = re.compile(
    r"(?:\bnot|n['’]t|\bnever|\bnor|\bwithout|\brather\sthan|\binstead\sof|\bunlike|\bno\slonger|\bhardly)\s"
    r"(?:\w+\s){0,3}\Z",
    re.IGNORECASE,
)
_MANNER = re.compile(
    r"\b(?:methods?|methodology|procedures?|approach(?:es)?|protocols?|formulas?|formulae|equations?|definitions?|"
    r"classifications?|schemes?|terminology|translations?|models?|software|packages?|algorithms?|guidelines|"
    r"recommendations|framework|theor(?:y|ies)|concepts?|ideas?|arguments?|suggestions?|phrases?|words?|terms?|names?|"
    r"titles?|mottos?)\b",
    re.IGNORECASE,
)
BESIDE = 40
"""Characters on either side of such words within which stands what is taken over, and whether it is denied."""


def says_it_relies(sentence: str) -> bool:
    """Whether a sentence says that it takes its matter over, and not merely a manner of doing things.

    >>> says_it_relies("For wages I have relied on the tables in Oduya (2011), to which I have nothing to add.")
    True
    >>> says_it_relies("We relied on the method of Oduya (2011)."), says_it_relies("Oduya (2011) disagrees.")
    (False, False)
    """
    line = " ".join(sentence.split())
    found = (*(_DOES.finditer(line) if _OWN.search(line) else ()), *_FROM.finditer(line))
    return any(
        not _NOT.search(line, max(0, one.start() - BESIDE), one.start())
        and not _MANNER.search(line, max(0, one.start() - BESIDE), min(len(line), one.end() + BESIDE))
        for one in found
    )
