// On the proof: each note moves to the margin that is nearer to its place, and n and p lead from mark to mark.
// Without it the notes stand in the right margin, and the links lead the same way.
"use strict";

(() => {
  const proof = () => document.querySelector(".proof");
  const notes = () => [...document.querySelectorAll("#matter .noted, #matter .noted-whole")];

  const place = () => {
    const page = proof();
    if (!page) return;
    const box = page.getBoundingClientRect();
    for (const note of page.querySelectorAll(".noted")) {
      const at = page.querySelector(`[data-at="${note.dataset.of}"]`);
      const first = at && at.getClientRects()[0];
      note.classList.toggle("left", Boolean(first) && first.left + first.width / 2 < box.left + box.width / 2);
    }
  };

  const step = (by) => {
    const all = notes();
    let at = all.indexOf(document.activeElement);
    if (at < 0) at = all.findIndex((note) => note.getAttribute("aria-current"));
    const next = all[at < 0 ? (by > 0 ? 0 : all.length - 1) : at + by];
    if (next) { next.focus({ preventScroll: true }); next.scrollIntoView({ block: "center" }); }
  };

  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target.matches("input, textarea, select")) return;
    if (event.key === "n") step(1);
    else if (event.key === "p") step(-1);
    else if (event.key === "Escape") document.querySelector(".told .shut")?.click();
  });
  document.addEventListener("click", (event) => {
    const at = event.target.closest("[data-at]");
    if (at && !event.target.closest("a, form, details")) {
      document.querySelector(`.noted[data-of="${at.dataset.at}"]`)?.click();
    }
  });
  document.addEventListener("toggle", (event) => {
    if (event.target.open) event.target.querySelector("textarea, input:not([type=hidden])")?.focus();
  }, true);

  document.addEventListener("htmx:afterSwap", place);
  window.addEventListener("resize", place);
  document.fonts.ready.then(() => {
    place();
    const told = document.querySelector(".told");
    if (told && location.hash === `#${told.id}`) told.focus({ preventScroll: true });
  });
})();
