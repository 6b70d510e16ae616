// On the proof: each note moves to the nearer margin, on the line of its place; n and p lead from mark to mark.
// Without it, and in print, the notes of a line stand together beside it, and the links lead the same way.
"use strict";

(() => {
  const SAME_LINE = 14; // places whose middles are no further apart are on one line; lines are 32 apart
  const APART = 5; // between two notes on one row
  const MOST_DOWN = 96; // that the notes of one line reach down with their labels
  const wide = window.matchMedia("screen and (min-width: 821px)");
  const sheet = new CSSStyleSheet(); // the policy of the page lets no element have a style of its own
  document.adoptedStyleSheets.push(sheet);
  const proof = () => document.querySelector(".proof");
  const notes = () => [...document.querySelectorAll("#matter .noted, #matter .noted-whole")];

  // The notes by margin and line, down the page, each with where its place stands.
  const gather = (page, box) => {
    const lines = [];
    const outlined = page.classList.contains("outlined"); // the left margin has the outline
    const found = [...page.querySelectorAll(".noted")].map((note, index) => {
      note.id ||= `noted-${index}`;
      const at = page.querySelector(`[data-at="${CSS.escape(note.dataset.of)}"]`);
      const place = (at && at.getClientRects()[0]) || note.getBoundingClientRect();
      const left = !outlined && place.left + place.width / 2 < box.left + box.width / 2;
      return { note, left, x: place.left, y: place.top + place.height / 2 - box.top };
    });
    for (const one of found.sort((a, b) => a.y - b.y || a.x - b.x)) {
      const last = lines.findLast((line) => line.left === one.left);
      if (last && one.y - last.y < SAME_LINE) last.notes.push(one);
      else lines.push({ left: one.left, y: one.y, notes: [one] });
    }
    return lines;
  };

  // How large each note is, whole or as its sign alone; all are measured at once, so that the page is laid out once.
  const measure = (lines, bare) => {
    const all = lines.flatMap((line) => line.notes.map(({ note }) => note));
    for (const note of all) note.classList.toggle("bare", bare);
    return new Map(all.map((note) => [note, note.getBoundingClientRect()]));
  };

  // Where each note of a line stands in a margin that is so wide: one below the other, or side by side as signs alone.
  const arrange = (line, sizes, width, bare) => {
    let x = 0, top = 0, row = 0;
    return line.notes.sort((a, b) => a.x - b.x).map(({ note }) => {
      const size = sizes.get(note);
      if (x && (!bare || x + size.width > width)) { x = 0; top += row; row = 0; }
      const at = { note, x, top, bottom: top + size.height, bare };
      x += size.width + APART;
      row = Math.max(row, size.height);
      return at;
    });
  };

  const place = () => {
    const page = proof();
    if (!page) return;
    page.classList.toggle("placed", wide.matches);
    const box = page.getBoundingClientRect();
    const lines = gather(page, box);
    const leaning = new Set(lines.filter((line) => line.left).flatMap((line) => line.notes.map(({ note }) => note)));
    for (const one of page.querySelectorAll(".notes")) {
      one.classList.toggle("left", leaning.has(one.firstElementChild)); // for print
    }
    if (!wide.matches) return;
    const margin = parseFloat(getComputedStyle(document.body).paddingLeft);
    const width = margin - 28;
    const [signs, whole] = [measure(lines, true), measure(lines, false)];
    const places = [];
    for (const left of [true, false]) {
      const column = lines.filter((line) => line.left === left);
      let free = 0; // above it the margin is taken
      column.forEach((line, index) => {
        const top = Math.max(line.y - 8, free);
        const room = Math.min(MOST_DOWN, index + 1 < column.length ? column[index + 1].y - 8 - top : MOST_DOWN);
        let set = arrange(line, whole, width, false);
        if (set.length > 1 && set.at(-1).bottom > room) set = arrange(line, signs, width, true);
        for (const { note, x, top: down, bare } of set) {
          note.classList.toggle("bare", bare);
          const across = left ? x - margin + 19 : box.width + 19 + x;
          places.push(`#${CSS.escape(note.id)} { left: ${across}px; top: ${top + down}px; }`);
        }
        free = top + Math.max(...set.map((one) => one.bottom));
      });
    }
    sheet.replaceSync(places.join("\n"));
  };

  const step = (by) => {
    const all = notes();
    let at = all.indexOf(document.activeElement);
    if (at < 0) at = all.findIndex((note) => note.getAttribute("aria-current"));
    const next = all[at < 0 ? (by > 0 ? 0 : all.length - 1) : at + by];
    if (next) { next.focus({ preventScroll: true }); next.scrollIntoView({ block: "center" }); }
  };

  // What can be done with the mark that is told of, each by the key that its element names.
  const acts = () => [...document.querySelectorAll(".told [aria-keyshortcuts]")];
  const name = (act) => act.textContent.trim().replace(/^[A-Z](?=[a-z])/, (first) => first.toLowerCase());
  const tell = () => {
    for (const line of document.querySelectorAll(".told .keys")) {
      line.textContent = `By key: ${acts().map((act) => `${act.getAttribute("aria-keyshortcuts")} ${name(act)}`).join(", ")}.`;
      line.hidden = false;
    }
  };

  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target.matches("input, textarea, select")) return;
    const act = acts().find((one) => one.getAttribute("aria-keyshortcuts") === event.key);
    if (act) { event.preventDefault(); act.click(); }
    else if (event.key === "n") step(1);
    else if (event.key === "p") step(-1);
  });
  document.addEventListener("click", (event) => {
    const at = event.target.closest("[data-at]");
    if (at && !event.target.closest("a, form, details")) {
      document.querySelector(`.noted[data-of="${CSS.escape(at.dataset.at)}"]`)?.click();
    }
  });
  document.addEventListener("toggle", (event) => {
    if (event.target.open) event.target.querySelector("textarea, input:not([type=hidden])")?.focus();
  }, true);

  document.addEventListener("htmx:afterSwap", () => { tell(); watch(); place(); });
  window.addEventListener("resize", place);
  // A passage that is being mended grows, and pushes what follows down.
  const sizes = new ResizeObserver(place);
  const watch = () => { sizes.disconnect(); if (proof()) sizes.observe(proof()); };

  document.fonts.ready.then(() => {
    tell();
    watch();
    place();
    const told = document.querySelector(".told");
    const busy = told && told.contains(document.activeElement); // somebody was quicker than the faces of the type
    if (told && !busy && location.hash === `#${told.id}`) told.focus({ preventScroll: true });
  });
})();
