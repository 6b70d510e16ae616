// Words chosen on a page of a source go into the note below it. Without this they are copied into it by hand.
"use strict";

(() => {
  const offer = () => document.querySelector(".chosen");
  let words = "";

  document.addEventListener("selectionchange", () => {
    const selection = document.getSelection();
    const place = selection.rangeCount ? selection.getRangeAt(0).commonAncestorContainer : null;
    const element = place && (place.nodeType === Node.ELEMENT_NODE ? place : place.parentElement);
    if (!offer() || !element || !element.closest(".read, .as-printed")) {
      if (offer() && !offer().contains(document.activeElement)) offer().hidden = true;
      return;
    }
    // Each line of a printed page is a text of its own: between two of them stands a blank.
    const lines = [...element.closest(".read, .as-printed").querySelectorAll("svg text")];
    const chosen = lines.length
      ? lines.filter((line) => selection.containsNode(line, true)).map((line) => cut(selection, line)).join(" ")
      : selection.toString();
    const said = chosen.replace(/\s+/g, " ").trim();
    if (said) words = said;
    offer().hidden = !said;
  });

  // The part of one line that is chosen.
  const cut = (selection, line) => {
    const range = selection.getRangeAt(0).cloneRange();
    const whole = document.createRange();
    whole.selectNodeContents(line);
    if (range.compareBoundaryPoints(Range.START_TO_START, whole) < 0) range.setStart(whole.startContainer, whole.startOffset);
    if (range.compareBoundaryPoints(Range.END_TO_END, whole) > 0) range.setEnd(whole.endContainer, whole.endOffset);
    return range.toString();
  };

  document.addEventListener("click", (event) => {
    if (!event.target.closest(".chosen button")) return;
    const field = document.getElementById("quotation");
    field.value = words;
    field.dispatchEvent(new Event("input", { bubbles: true }));
    offer().hidden = true;
    const remark = document.getElementById("remark");
    remark.focus({ preventScroll: true });
    document.getElementById("note").scrollIntoView({ block: "center" });
  });
})();
