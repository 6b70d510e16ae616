"""Quotations held against the sources that they cite, word by word and page by page.

>>> from fairhand.fidelity.allowed import rules_for
>>> from fairhand.fidelity.prepared import prepare
>>> from fairhand.fidelity.quotation import find_quotation
>>> from fairhand.model.source import Page, SourceText
>>> source = SourceText("quay", (Page("7", "The quay was quietly sold."),), paged=True)
>>> find_quotation("the quay was sold", prepare(source), ("7",), {}, rules_for("apa")).outcome
'gap'
"""
