// What a page cannot do without a script: notice that a file was changed by another program, and keep what is typed.
// Everything else works by links and forms; htmx makes some of it smoother.
"use strict";

(() => {
  const body = document.body;
  const said = document.getElementById("said");
  let typed = false; // something was typed that has not been sent
  let asked = false; // what was typed is on its way
  let states = null;

  const say = (words) => { if (said.textContent !== words) said.textContent = words; };

  document.addEventListener("input", (event) => {
    if (event.target.form && event.target.form.method === "post") { typed = true; asked = false; }
  });
  document.addEventListener("submit", () => { typed = false; });
  document.addEventListener("htmx:beforeRequest", (event) => {
    if (event.detail.requestConfig.verb !== "get") asked = true;
  });
  document.addEventListener("htmx:afterRequest", (event) => {
    const state = event.detail.xhr.getResponseHeader("fairhand-state");
    if (state) body.dataset.state = state;
    if (event.detail.successful && asked) typed = asked = false;
    if (event.detail.failed && event.detail.xhr.status === 0) lost();
  });
  // What stands against keeping what was typed is said beside it; what was typed stays.
  document.addEventListener("htmx:beforeSwap", (event) => {
    if (event.detail.target.id === "kept" && event.detail.serverResponse.includes('id="kept"')) {
      event.detail.shouldSwap = true;
    }
    // A page that is being brought up to date stays as it is where somebody has begun to type meanwhile.
    if (event.detail.target.id === "matter" && typed) {
      event.detail.shouldSwap = false;
      told();
    }
  });
  window.addEventListener("beforeunload", (event) => {
    if (typed && document.querySelector(".leaf")) event.preventDefault();
  });

  const lost = () => say(
    "Fairhand is not running any more. What you have typed is still on this page: copy it, and start Fairhand again.");

  const told = () => say(
    "Another program has changed a file of this paper. What you have typed is still here; when you save it, you see " +
    "both and choose.");

  const changed = (state) => {
    if (state === body.dataset.state || asked) return; // our own saving is answered first
    if (typed) { told(); return; }
    htmx.ajax("GET", location.href, { target: "#matter", select: "#matter", swap: "outerHTML" });
    say("Another program has changed a file of this paper; the page shows it as it now is.");
  };

  const listen = () => {
    if (states || !body.dataset.changes || document.hidden) return;
    states = new EventSource(body.dataset.changes);
    states.onmessage = (event) => changed(event.data);
    states.onopen = () => { if (said.dataset.lost) { delete said.dataset.lost; say(""); } };
    states.onerror = () => { said.dataset.lost = "yes"; lost(); };
  };
  // Browsers hold few connections to one place: a page that nobody sees gives its own back.
  const rest = () => { if (states) states.close(); states = null; };
  document.addEventListener("visibilitychange", () => { if (document.hidden) rest(); else listen(); });
  window.addEventListener("pagehide", rest);
  window.addEventListener("pageshow", listen);
  listen();
})();
