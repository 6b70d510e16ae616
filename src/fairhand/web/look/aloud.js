// The paper read aloud by the browser's own voices, a sentence at a time, the place kept; only voices of this machine.
// Without a voice, or with one's own, the place moves on at the pace.
"use strict";

(() => {
  const voice = window.speechSynthesis;
  const text = () => document.querySelector(".spoken");
  const says = () => [...document.querySelectorAll(".spoken .says")];
  const button = (what) => document.querySelector(`#reading [data-do="${what}"]`);
  let at = 0;            // the sentence that is read, or comes next
  let turn = 0;          // counts up, so that what was begun before is not gone on with
  let reading = false;
  let rate = 1;          // of the voice, set right after each sentence so that the pace is kept
  let timer = 0;

  const pace = () => {
    const field = document.querySelector('#how [name="pace"]');
    const wanted = parseInt(field.value, 10) || 183;
    return Math.min(+field.dataset.most, Math.max(+field.dataset.least, wanted));
  };
  const isRead = (one) => document.getElementById(one.dataset.kind)?.checked ?? true;
  const words = (one) => (document.getElementById("citations").checked ? one.textContent : one.dataset.bare).trim();
  const count = (said) => said.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
  const chosen = () => voice?.getVoices().find((one) => one.localService && one.voiceURI === document.getElementById("voice").value);

  const show = () => {
    text()?.toggleAttribute("data-reading", reading);
    for (const one of says()) one.toggleAttribute("data-now", false);
    const now = says()[at];
    if (!now) return;
    now.setAttribute("data-now", "");
    const box = now.getBoundingClientRect();
    if (box.top < 80 || box.bottom > innerHeight - 80) now.scrollIntoView({ block: "center" });
    const last = document.getElementById("last-heard");
    if (last) last.value = at;
  };

  const silence = () => { turn += 1; clearTimeout(timer); voice?.cancel(); };

  const wait = () => {
    reading = false;
    silence();
    button("read").textContent = "Read";
    show();
  };

  const next = () => {
    const all = says();
    while (at < all.length && !isRead(all[at])) at += 1;
    if (at >= all.length) { at = all.length - 1; wait(); return; }
    show();
    const said = words(all[at]), mine = ++turn, many = count(said);
    const go = () => { if (mine === turn && reading) { if (at + 1 < all.length) { at += 1; next(); } else wait(); } };
    const one = chosen();
    if (!one) { timer = setTimeout(go, (many * 60000) / pace()); return; }
    const utterance = new SpeechSynthesisUtterance(said);
    utterance.voice = one;
    utterance.lang = one.lang;
    utterance.rate = rate;
    const begun = performance.now();
    utterance.onend = () => {
      const took = performance.now() - begun;
      if (many > 7 && took > 0) rate = Math.min(3, Math.max(0.4, rate * (0.5 + (0.5 * pace()) / ((many * 60000) / took))));
      go();
    };
    utterance.onerror = (event) => { if (event.error !== "canceled" && event.error !== "interrupted") go(); };
    voice.speak(utterance);
  };

  const act = {
    read: () => { if (reading) { wait(); return; } reading = true; button("read").textContent = "Wait"; next(); },
    back: () => step(-1),
    on: () => step(1),
    mark: () => mark(),
  };

  const step = (by) => {
    const all = says();
    let to = at + by;
    while (all[to] && !isRead(all[to])) to += by;
    if (!all[to]) return;
    silence();
    at = to;
    if (reading) next(); else show();
  };

  // The place is marked while the reading goes on.
  const mark = async () => {
    if (!text()?.dataset.marking) return;
    const one = says()[at], number = at;
    const sent = new URLSearchParams({ number, said: one.textContent });
    const answer = await fetch(text().dataset.mark, { method: "POST", body: sent, headers: { "hx-request": "true" } });
    const state = answer.headers.get("fairhand-state");
    if (state) document.body.dataset.state = state;
    const said = document.getElementById("said");
    said.textContent = answer.ok ? "Marked." : await answer.text();
    if (!answer.ok) return;
    document.getElementById(`s-${number}`)?.classList.add("query");
    const many = document.getElementById("many");
    if (many) many.textContent = +many.textContent + 1;
  };

  const list = () => {
    const field = document.getElementById("voice");
    if (!field) return;
    const own = (voice?.getVoices() || []).filter((one) => one.localService);
    const language = (one) => (one.lang.startsWith("en") ? 0 : 1);
    own.sort((a, b) => language(a) - language(b) || a.name.localeCompare(b.name));
    const former = field.value;
    field.replaceChildren(...own.map((one) => new Option(`${one.name} (${one.lang})`, one.voiceURI)), new Option("your own, at this pace", ""));
    if (own.some((one) => one.voiceURI === former)) field.value = former;
    document.getElementById("voices").hidden = false;
  };

  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !text()) return;
    if (event.target !== text() && event.target !== document.body) return;
    const what = { " ": "read", ArrowLeft: "back", ArrowRight: "on", m: "mark" }[event.key];
    if (!what) return;
    event.preventDefault();
    act[what]();
  });
  document.addEventListener("click", (event) => {
    const what = event.target.closest("#reading [data-do]")?.dataset.do;
    if (what) { act[what](); return; }
    const one = event.target.closest(".spoken .says");
    if (one && document.getSelection().isCollapsed) { silence(); at = says().indexOf(one); if (reading) next(); else show(); }
  });
  window.addEventListener("pagehide", silence);

  const begin = () => {
    if (!text()) return;
    for (const id of ["reading", "keys"]) document.getElementById(id).hidden = false;
    if (reading) button("read").textContent = "Wait";
    list();
    show();
  };
  document.addEventListener("htmx:afterSwap", begin);
  voice?.addEventListener?.("voiceschanged", list);
  begin();
})();
