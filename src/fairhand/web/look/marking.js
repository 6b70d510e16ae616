// On the proof while a pass is under way: words are chosen with the pointer, or with the arrow keys, and marked by a key.
// Without it they are marked by page and line in the form below.
"use strict";

(() => {
  const proof = () => document.querySelector(".numbered[data-marking]");
  const form = () => document.getElementById("choosing");
  const KEYS = { "/": "substitute", d: "delete", s: "substitute", i: "insert", t: "transpose", c: "close up", "#": "space",
    g: "new paragraph", r: "run on", l: "lower case", k: "capitals", e: "italic", b: "bold", u: "upright", ".": "stet",
    "?": "query", q: "query" };
  const types = () => [...proof().querySelectorAll(".type")];
  let words = []; // each word with its line and its places in that line's text
  let at = -1, from = -1; // the word that the keys stand on, and where they began to hold on
  let chosen = null;

  const gather = () => {
    words = types().flatMap((type, line) =>
      [...type.textContent.matchAll(/\S+/g)].map((found) => ({ type, line, start: found.index, end: found.index + found[0].length })));
  };

  // A place within a line's text as a place in the document.
  const locate = (type, offset) => {
    const walker = document.createTreeWalker(type, NodeFilter.SHOW_TEXT);
    let node, last = null;
    while ((node = walker.nextNode())) {
      if (offset <= node.length) return [node, offset];
      offset -= node.length;
      last = node;
    }
    return [last, last ? last.length : 0];
  };

  // How many characters of a line's text stand before a place in the document.
  const measure = (type, node, offset) => {
    const range = document.createRange();
    range.selectNodeContents(type);
    range.setEnd(node, offset);
    return range.toString().length;
  };

  // What the pointer, or the keys, have chosen: from one place of the proof's text to another.
  const read = () => {
    const selection = document.getSelection();
    if (!selection.rangeCount || selection.isCollapsed) return null;
    const range = selection.getRangeAt(0);
    if (!proof().contains(range.commonAncestorContainer)) return null;
    const lines = types().filter((type) => range.intersectsNode(type));
    if (!lines.length) return null;
    const [first, last] = [lines[0], lines.at(-1)];
    const start = first.contains(range.startContainer) ? measure(first, range.startContainer, range.startOffset) : 0;
    const end = last.contains(range.endContainer) ? measure(last, range.endContainer, range.endOffset) : last.textContent.length;
    // More than one word is chosen whole, however the pointer was let go; within one word its letters are.
    const [head, tail] = [first.textContent, last.textContent];
    const several = first !== last || /\S\s+\S/.test(head.slice(start, end));
    const low = several ? start - head.slice(0, start).match(/\S*$/)[0].length * /^\S/.test(head.slice(start)) : start;
    const high = several ? end + tail.slice(end).match(/^\S*/)[0].length * /\S$/.test(tail.slice(0, end)) : end;
    const between = types().slice(types().indexOf(first) + 1, types().indexOf(last)).map((type) => type.textContent);
    const text = first === last ? head.slice(low, high) : [head.slice(low), ...between, tail.slice(0, high)].join(" ");
    const places = { start: +first.dataset.start + low, stop: +last.dataset.start + high, text: text.trim(), line: last.closest(".line") };
    return places.start < places.stop ? places : null;
  };

  const select = () => {
    const [low, high] = at < from ? [words[at], words[from]] : [words[from], words[at]];
    const range = document.createRange();
    range.setStart(...locate(low.type, low.start));
    range.setEnd(...locate(high.type, high.end));
    const selection = document.getSelection();
    selection.removeAllRanges();
    selection.addRange(range);
    words[at].type.scrollIntoView({ block: "nearest" });
    document.getElementById("said").textContent = range.toString();
  };

  const walk = (key, hold) => {
    if (!words.length) gather();
    if (at < 0) { at = from = 0; select(); return; }
    const line = words[at].line;
    if (key === "ArrowRight") at = Math.min(at + 1, words.length - 1);
    else if (key === "ArrowLeft") at = Math.max(at - 1, 0);
    else {
      const wanted = key === "ArrowDown" ? words.findIndex((one) => one.line > line) : words.findLastIndex((one) => one.line < line);
      if (wanted < 0) return;
      const there = words[wanted].line;
      at = words.findIndex((one) => one.line === there);
    }
    if (!hold) from = at;
    select();
  };

  const open = (sign) => {
    chosen = read();
    if (!chosen) return;
    const one = form();
    one.elements.start.value = chosen.start;
    one.elements.stop.value = chosen.stop;
    one.elements.words.value = "";
    if (sign) one.elements.sign.value = sign;
    one.querySelector(".words").textContent = `“${chosen.text}”`;
    chosen.line.after(one);
    one.hidden = false;
    takes();
    const takesMatter = one.elements.sign.selectedOptions[0].dataset.takes;
    if (sign && !takesMatter) one.requestSubmit();
    else (sign ? one.elements.words : one.elements.sign).focus({ preventScroll: true });
  };

  const takes = () => {
    const one = form();
    one.elements.words.closest(".field").hidden = !one.elements.sign.selectedOptions[0].dataset.takes;
  };

  const shut = () => { form().hidden = true; proof().focus({ preventScroll: true }); };

  document.addEventListener("keydown", (event) => {
    if (!proof() || !form()) return;
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === "Escape" && !form().hidden) { shut(); event.preventDefault(); return; }
    if (event.target !== proof() && event.target !== document.body) return;
    if (event.target === proof() && event.key.startsWith("Arrow")) {
      walk(event.key, event.shiftKey);
      event.preventDefault();
    } else if (read() && (event.key === "Enter" || KEYS[event.key])) {
      event.preventDefault();
      event.stopImmediatePropagation();
      open(KEYS[event.key]);
    }
  }, true);
  document.addEventListener("pointerup", (event) => {
    if (!proof() || !form() || event.target.closest("a, form, button")) return;
    setTimeout(() => { if (read()) open(""); }, 0);
  });
  document.addEventListener("change", (event) => { if (event.target.closest("#choosing")) takes(); });
  document.addEventListener("click", (event) => { if (event.target.closest("#choosing .shut")) shut(); });

  // What was chosen is another text once the page is brought up to date.
  const begin = () => {
    words = [];
    at = from = -1;
    const keys = document.getElementById("keys");
    if (keys) keys.hidden = false;
  };
  document.addEventListener("htmx:afterSwap", begin);
  begin();
})();
