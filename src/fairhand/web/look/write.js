// What is put in at the cursor: a remark to oneself or matter to come by one key, and what the paper's sheet holds.
// Without it they are typed; the sheet is then a page of its own.
"use strict";

(() => {
  const field = () => document.getElementById("text");

  // Puts words in place of what is chosen, the cursor so many letters before their end. The browser can undo it.
  const put = (words, back = 0) => {
    const text = field();
    text.focus();
    if (!document.execCommand("insertText", false, words)) {
      text.setRangeText(words, text.selectionStart, text.selectionEnd, "end");
      text.dispatchEvent(new Event("input", { bubbles: true }));
    }
    const at = text.selectionStart - back;
    text.setSelectionRange(at, at);
  };
  // What a key puts in says by "|" where the cursor stands then.
  const putKey = (words) => put(words.replace("|", ""), words.length - 1 - words.indexOf("|"));

  for (const button of document.querySelectorAll("[data-puts][hidden], [data-cuts][hidden]")) button.hidden = false;

  // What is chosen is cut: its place counts letters, and not the halves that a script counts.
  document.addEventListener("click", (event) => {
    const button = event.target.closest("button[data-cuts]");
    if (!button) return;
    const { selectionStart, selectionEnd, value } = field();
    if (selectionStart === selectionEnd) {
      event.preventDefault();
      document.getElementById("said").textContent = "Choose the words that are to be cut first.";
      field().focus();
      return;
    }
    const place = (at) => [...value.slice(0, at)].length;
    button.form.elements.place.value = `${place(selectionStart)}-${place(selectionEnd)}`;
  });

  document.addEventListener("click", (event) => {
    const button = event.target.closest("button[data-puts]");
    if (button) putKey(button.dataset.puts);
  });

  // The sheet opens over the page, and closes again; what is chosen on it goes to where the cursor stood.
  document.addEventListener("click", (event) => {
    const opens = event.target.closest("a[data-sheet]");
    const sheet = document.getElementById("sheet");
    if (opens && sheet) {
      event.preventDefault();
      htmx.ajax("GET", opens.href, { target: "#sheet-matter", swap: "innerHTML" }).then(() => sheet.showModal());
    }
    if (event.target.closest("button[data-shuts]")) sheet.close();
    const chosen = event.target.closest("button[data-words]");
    if (!chosen) return;
    event.preventDefault(); // without a script it is put at the end of the text
    sheet.close();
    const { selectionStart, selectionEnd, value } = field();
    const apart = (letter) => (letter && !/\s/.test(letter) ? " " : "");
    const after = value[selectionEnd];
    put(apart(value[selectionStart - 1]) + chosen.dataset.words + (after && /\w/.test(after) ? " " : ""));
  });
  document.addEventListener("keydown", (event) => {
    if (!event.altKey || event.ctrlKey || event.metaKey || event.target !== field()) return;
    const button = document.querySelector(`button[aria-keyshortcuts="Alt+${event.code.replace("Key", "")}"]`);
    if (button) { event.preventDefault(); putKey(button.dataset.puts); }
  });
})();
