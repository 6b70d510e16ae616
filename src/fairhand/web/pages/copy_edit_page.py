"""The copy-edit: the second pass over the draft, for its quotations, its citations and its language."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from starlette.responses import Response
from starlette.routing import Route

from fairhand.copyedit.rhythm import measure_ease, quote_look
from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.language.counts import open_with
from fairhand.model.finding import Finding
from fairhand.model.requirement import Requirement
from fairhand.model.stet import Stet, Word
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.language_tools import LEAVE, REFUSAL, rules_on_tools, shut_by, tell_answer
from fairhand.readiness.table import CHECKS
from fairhand.readiness.used import list_used
from fairhand.readiness.verdict import Verdict
from fairhand.session.assignment.answering import answer_requirement
from fairhand.session.correction.going_through import (
    OF_LANGUAGE,
    Numbered,
    learn_from_mending,
    leave_for_later,
    mend_offered,
    offer_of,
    read_left,
    take_back,
)
from fairhand.session.correction.lapses import keep_lapse, most_frequent, survey_lapses
from fairhand.session.correction.learning import lapse_of
from fairhand.session.correction.words import learn_word
from fairhand.session.editing import Passage
from fairhand.web.asked import Asked, get, post
from fairhand.web.marked_text import Marked, ProofPage

LEFT: Mapping[str, str] = {"open": "Not gone through", "mend": "Mend later", "later": "Come back"}
"""How far marks were gone through, as the page can be narrowed to it."""
MOST_KINDS = 8
"""Kinds of marks that are named at once; more of them stand folded, since the text comes first."""


@dataclass(frozen=True)
class CopyEditPage(ProofPage):
    """The page of the second pass: one kind of mark at a time or all, after the writer's own lapses."""

    template: str = "copy_edit_page.html"

    def picks(self, asked: Asked, finding: Finding, left: Stet | None) -> bool:
        """Whether a finding is of the kind that is shown, and gone through as far."""
        narrowed = self.narrowed(asked)
        return finding.check == narrowed.get("kind", finding.check) and (
            "left" not in narrowed or narrowed["left"] == (left.word if left else "open")
        )

    def narrowed(self, asked: Asked) -> Mapping[str, str]:
        """The one kind that is shown, and how far gone through, where the address or a form names them."""
        kind, left = (asked.form.text(name) or asked.query(name) for name in ("kind", "left"))
        return {
            **({"kind": kind} if any(check.name == kind for check in CHECKS) else {}),
            **({"left": left} if left in LEFT else {}),
        }

    def left(self, asked: Asked, verdict: Verdict) -> Mapping[Finding, Stet]:
        """The findings that were marked and left for afterwards."""
        found = [one for one in verdict.findings if one.in_pass == self.in_pass]
        return read_left(asked.paper.folder, found, verdict.draft)

    def waits(self, asked: Asked, one: Marked) -> bool:
        """Whether a mark is still to be gone through; among those that were marked, each is."""
        return one.is_open or (one.left is not None and self.narrowed(asked).get("left") == one.left.word)

    def offer(self, finding: Finding, draft: str) -> str:
        """What may be put in at once where a finding is, in a few words."""
        return offer_of(finding, draft)

    def step(self, asked: Asked, marked: Sequence[Marked], draft: str) -> str:
        """The page's next step: what is still to be gone through, or what was marked and waits."""
        known = asked.paper.opened.look()
        rule = shut_by(known)
        if rule is not None and draft.strip() and rule.id not in known.paper.answers:
            return "Answer first whether tools that check the language may be used on this paper."
        if rule is not None and draft.strip() and not any(one.is_open for one in marked):
            return "The language is yours alone to look through; of the rest nothing is left that a check could find."
        waiting = sum(one.left is not None for one in marked)
        open_ = sum(one.is_open for one in marked)
        if not waiting:
            return super().step(asked, marked, draft)
        if not open_:
            return "Everything here was gone through; what is marked waits to be mended."
        waits = "one waits" if waiting == 1 else f"{waiting} wait"
        return f"{open_with(open_, 'mark is', 'marks are')} still to be gone through; {waits} for afterwards."

    def values(self, asked: Asked) -> Mapping[str, Any]:
        """The lapses, the kinds of marks, the sheet's rule on tools, and how the draft reads where that is asked."""
        opened = asked.paper.opened
        known, verdict = opened.look(), opened.verdict()
        found = [f for f in verdict.findings if f.in_pass == self.in_pass]
        left = self.left(asked, verdict)
        ways = Counter(left[one].word if one in left else "open" for one in found)
        lapses, _ = survey_lapses(asked.paper.folder, known, verdict.findings)
        shut = shut_by(known)
        return {
            **super().values(asked),
            "of_language": OF_LANGUAGE,
            "kinds": tuple(Counter(f.check for f in found).items()),
            "most_kinds": MOST_KINDS,
            "lefts": [(word, says, ways[word]) for word, says in LEFT.items()] if left else [],
            "lapses": most_frequent(lapses) if not self.narrowed(asked) else (),
            "died_out": [one for one in lapses if one.died_out] if not self.narrowed(asked) else (),
            "rules": _tell_rules(known),
            "shut": shut,
            "used": list_used(known) if asked.query("used") else (),
            "ease": measure_ease(known.own_prose) if asked.query("ease") and not shut else None,
            "text": known.manuscript.text,
            "quote_look": quote_look,
        }

    def mend(self, asked: Asked) -> Response:
        """The passage as the writer mended it; where that took out a slip of the language, it counts as a lapse."""
        form = asked.form
        marked, draft = self.marks_of(asked)
        chosen = next((one.mark.finding for one in marked if str(one.mark.number) == form.text("finding")), None)
        answer = super().mend(asked)
        if answer.status_code == 303 and chosen is not None:
            passage = Passage(form.matter("was"), form.matter("text"))
            learn_from_mending(asked.paper.folder, chosen, draft, passage, asked.papers.now().date())
        return answer

    def mark(self, asked: Asked) -> Response:
        """A mark is left for afterwards, or taken back, or what it offers is put in; then the next mark."""
        do, folder = asked.form.text("do"), asked.paper.folder
        marked, draft = self.marks_of(asked)
        one = _named(asked, marked)
        numbered = Numbered(one.mark.number, one.mark.finding, one.left)
        try:
            if do == "put":
                mend_offered(folder, [one.mark.finding], draft, asked.papers.now().date())
            elif do == "back":
                take_back(folder, numbered)
                return asked.go(
                    asked.to(
                        self.in_pass, at=f"mark-{one.mark.number}", finding=one.mark.number, **self.narrowed(asked)
                    )
                )
            else:
                word: Word = "mend" if do == "mend" else "later"
                leave_for_later(folder, numbered, draft, word, asked.papers.now())
        except DraftChangedOnDisk:
            raise
        except FairhandError as error:
            return self.show(asked, fault=error)
        return self.go_on(asked)

    def learn(self, asked: Asked) -> Response:
        """The word is on the writer's list; then the next mark."""
        return self._keep(asked, lambda one, draft: learn_word(asked.paper.folder, _words(one, draft)))

    def note(self, asked: Asked) -> Response:
        """The finding is one of the writer's lapses; then the next mark."""
        day = asked.papers.now().date()
        return self._keep(
            asked, lambda one, draft: keep_lapse(asked.paper.folder, lapse_of(one.mark.finding, draft, day))
        )

    def rule(self, asked: Asked) -> Response:
        """What the writer says of the sheet's rule on tools, kept with who said it; the page opens, or stays shut."""
        form = asked.form
        words = LEAVE if form.text("do") == "leave" else REFUSAL
        rule = form.text("rule")
        try:
            if rule not in {one.id for one in rules_on_tools(asked.paper.opened.look())}:
                message = f"{rule}: the sheet has no such rule on tools; look at the page again"
                raise DraftChangedOnDisk(message)
            answer_requirement(asked.paper.folder, rule, words=words, by=form.text("by"))
        except FairhandError as error:
            return self.show(asked, fault=error)
        return asked.go(asked.to(self.in_pass))

    def _keep(self, asked: Asked, keep: Callable[[Marked, str], None]) -> Response:
        marked, draft = self.marks_of(asked)
        one = _named(asked, marked)
        try:
            keep(one, draft)
        except DraftChangedOnDisk:
            raise
        except FairhandError as error:
            return self.show(asked, fault=error)
        return self.go_on(asked)

    @property
    def routes(self) -> tuple[Route, ...]:
        """The page's addresses."""
        path = f"/paper/{{slug}}/{self.in_pass}"
        return (
            *super().routes,
            *(get(f"{path}/{act}", self.back) for act in ("word", "lapse", "rule", "mark")),
            post(f"{path}/mark", self.mark),
            post(f"{path}/word", self.learn),
            post(f"{path}/lapse", self.note),
            post(f"{path}/rule", self.rule),
        )


def _tell_rules(known: Analysis) -> list[tuple[Requirement, str, bool]]:
    """The sheet's rules on tools, what was answered, and whether leave is still to be given or refused."""
    answers = known.paper.answers
    return [(one, tell_answer(one, answers.get(one.id)), one.id not in answers) for one in rules_on_tools(known)]


def _named(asked: Asked, marked: Sequence[Marked]) -> Marked:
    """The mark that a form names.

    Raises:
        DraftChangedOnDisk: It is there no more.
    """
    one = next((one for one in marked if one.name == asked.form.text("mark") and one.mark.finding.span), None)
    if one is None:
        message = "draft.md: it was changed meanwhile, and the mark is there no more; look at the page again"
        raise DraftChangedOnDisk(message)
    return one


def _words(one: Marked, draft: str) -> str:
    span = one.mark.finding.span
    return span.of(draft) if span else ""


ROUTES = CopyEditPage(
    "copy-edit",
    "Copy-edit",
    {
        "empty": "There is no draft yet: write it first, revise it, and copy-edit it last.",
        "clear": "Nothing is left to correct that a check could find: read the fair copy once from start to end.",
    },
).routes
