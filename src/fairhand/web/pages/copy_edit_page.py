"""The copy-edit: the second pass over the draft, for its quotations, its citations and its language."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from starlette.responses import Response
from starlette.routing import Route

from fairhand.copyedit.rhythm import measure_ease
from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.model.finding import Finding
from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.language_tools import LEAVE, REFUSAL, rules_on_tools, shut_by, tell_answer
from fairhand.readiness.table import CHECKS
from fairhand.readiness.used import list_used
from fairhand.session.assignment.answering import answer_requirement
from fairhand.session.correction.lapses import keep_lapse, lapse_of, most_frequent, survey_lapses
from fairhand.session.correction.words import learn_word
from fairhand.web.asked import Asked, get, post
from fairhand.web.marked_text import Marked, ProofPage

OF_LANGUAGE = frozenset(check.name for check in CHECKS if check.of_language)
"""The checks whose findings may be lapses."""


@dataclass(frozen=True)
class CopyEditPage(ProofPage):
    """The page of the second pass: one kind of mark at a time or all, after the writer's own lapses."""

    template: str = "copy_edit_page.html"

    def picks(self, asked: Asked, finding: Finding) -> bool:
        """Whether a finding is of the kind that is shown."""
        kind = self.narrowed(asked).get("kind")
        return kind is None or finding.check == kind

    def narrowed(self, asked: Asked) -> Mapping[str, str]:
        """The one kind that is shown, where the address or a form names one that there is."""
        kind = asked.form.text("kind") or asked.query("kind")
        return {"kind": kind} if any(check.name == kind for check in CHECKS) else {}

    def values(self, asked: Asked) -> Mapping[str, Any]:
        """The lapses, the kinds of marks, the sheet's rule on tools, and how the draft reads where that is asked."""
        opened = asked.paper.opened
        known, verdict = opened.look(), opened.verdict()
        found = [f for f in verdict.findings if f.in_pass == self.in_pass]
        lapses, _ = survey_lapses(asked.paper.folder, known, verdict.findings)
        shut = shut_by(known)
        return {
            **super().values(asked),
            "of_language": OF_LANGUAGE,
            "kinds": tuple(Counter(f.check for f in found).items()),
            "lapses": most_frequent(lapses) if not self.narrowed(asked) else (),
            "died_out": [one for one in lapses if one.died_out] if not self.narrowed(asked) else (),
            "rules": _tell_rules(known),
            "shut": shut,
            "used": list_used(known) if asked.query("used") else (),
            "ease": measure_ease(known.own_prose) if asked.query("ease") and not shut else None,
            "text": known.manuscript.text,
        }

    def mend(self, asked: Asked) -> Response:
        """The passage as the writer mended it; where that took out a slip of the language, it counts as a lapse."""
        number = asked.form.text("finding")
        marked, draft = self.marks_of(asked)
        chosen = next((one.mark.finding for one in marked if str(one.mark.number) == number), None)
        answer = super().mend(asked)
        if answer.status_code == 303 and chosen is not None and chosen.check in OF_LANGUAGE and chosen.span is not None:
            words = chosen.span.of(draft)
            if asked.form.matter("text").count(words) < asked.form.matter("was").count(words):
                keep_lapse(asked.paper.folder, lapse_of(chosen, draft, asked.papers.now().date()))
        return answer

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
        one = next((one for one in marked if one.name == asked.form.text("mark") and one.mark.finding.span), None)
        if one is None:
            message = "draft.md: it was changed meanwhile, and the mark is there no more; look at the page again"
            raise DraftChangedOnDisk(message)
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
            *(get(f"{path}/{act}", self.back) for act in ("word", "lapse", "rule")),
            post(f"{path}/word", self.learn),
            post(f"{path}/lapse", self.note),
            post(f"{path}/rule", self.rule),
        )


def _tell_rules(known: Analysis) -> list[tuple[Requirement, str, bool]]:
    """The sheet's rules on tools, what was answered, and whether leave is still to be given or refused."""
    answers = known.paper.answers
    return [(one, tell_answer(one, answers.get(one.id)), one.id not in answers) for one in rules_on_tools(known)]


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
