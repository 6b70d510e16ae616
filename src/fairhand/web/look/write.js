// What is put in at the cursor: a remark to oneself or matter to come by one key, and what the paper's sheet holds.
// Without it they are typed; the sheet is then a page of its own.
"use strict";

(() => {
  const field = () => document.getElementById("text");

  // Puts words in place of what is chosen; "|" says where the cursor stands then. The browser can undo it.
  const put = (words) => {
    const text = field();
    const at = words.indexOf("|");
    const plain = at < 0 ? words : words.slice(0, at) + words.slice(at + 1);
    text.focus();
    if (!document.execCommand("insertText", false, plain)) {
      text.setRangeText(plain, text.selectionStart, text.selectionEnd, "end");
      text.dispatchEvent(new Event("input", { bubbles: true }));
    }
    if (at >= 0) {
      const back = text.selectionStart - (plain.length - at);
      text.setSelectionRange(back, back);
    }
  };

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
    if (button) put(button.dataset.puts);
  });
  document.addEventListener("keydown", (event) => {
    if (!event.altKey || event.ctrlKey || event.metaKey || event.target !== field()) return;
    const button = document.querySelector(`button[aria-keyshortcuts="Alt+${event.code.replace("Key", "")}"]`);
    if (button) { event.preventDefault(); put(button.dataset.puts); }
  });
})();
