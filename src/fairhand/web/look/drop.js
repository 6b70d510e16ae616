// A file dropped anywhere on the page is chosen in its field, as if it had been dropped on the field itself.
// Without it the field takes what is dropped on it, and what is chosen.
"use strict";

(() => {
  const field = () => document.querySelector("input[type=file][data-drop]");
  const carries = (event) => event.dataTransfer && [...event.dataTransfer.types].includes("Files");

  document.addEventListener("dragover", (event) => {
    if (!field() || !carries(event)) return;
    event.preventDefault();
    event.dataTransfer.dropEffect = "copy";
  });
  document.addEventListener("drop", (event) => {
    const chosen = field();
    if (!chosen || !carries(event)) return;
    event.preventDefault(); // or the browser would leave the page for the file
    const taken = new DataTransfer();
    for (const file of [...event.dataTransfer.files].slice(0, chosen.multiple ? undefined : 1)) taken.items.add(file);
    if (!taken.files.length) return;
    chosen.files = taken.files;
    for (const kind of ["input", "change"]) chosen.dispatchEvent(new Event(kind, { bubbles: true }));
    const names = [...taken.files].map((file) => file.name).join(", ");
    const button = chosen.form.querySelector("button:not([type=button])");
    document.getElementById("said").textContent = `Chosen: ${names}. Nothing is done before “${button.textContent}”.`;
    button.focus({ preventScroll: true });
    button.scrollIntoView({ block: "center" });
  });
})();
