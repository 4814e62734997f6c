/* The search on the first page: its box, its address, its keys.
 *
 * In: an empty `<div id="find">`. Out: the box, and below it the answer. The index, the ranking and
 * what shows the answer are loaded at the first use, by script tags, so that it works from a folder
 * too. Every state has an address (`#q=...`); a vehicle number is kept out of it, and stays in this
 * tab's history only.
 */
"use strict";
(() => {
  const place = document.getElementById("find");
  if (!place) return;
  const folder = document.currentScript.src.replace(/[^/]*$/, "");
  const root = folder.replace(/[^/]*\/$/, "");
  const { element, atRest } = baytreeDom;
  const SCRIPTS = [
    "search-data.js", "search-words.js", "search-index.js", "search-spelling.js",
    "search-query.js", "search-safety.js", "search-coverage.js", "search-rank.js",
    "search-shown.js",
  ];

  // The box

  const box = element("input", {
    id: "find-words", name: "q", type: "search", autocomplete: "off", autocapitalize: "off",
    spellcheck: "false", enterkeyhint: "search", maxlength: "300",
    "aria-describedby": "find-hint",
  });
  const clear = element("button", { type: "button", class: "find-clear" }, "Clear");
  const form = element("form", { role: "search", class: "find-form" },
    element("label", { for: "find-words" }, "Symptom, light, DTC, or vehicle"),
    element("div", { class: "find-box" }, box, clear));
  const { examples } = place.dataset;
  const hint = element("p", { id: "find-hint", class: "find-hint" },
    examples ? `Example: ${examples}` : "");
  const count = element("p", { role: "status", class: "find-count" });
  const safety = element("div", { class: "find-safety", role: "status" });
  const understood = element("div", { class: "find-understood" });
  const hits = element("ol", { class: "find-hits", "aria-label": "Trees and articles found" });
  const instead = element("div", { class: "find-instead" });
  clear.hidden = true;

  // Loading

  let index = null;
  let shown = null; // what makes elements of an answer
  let loading = null;

  function load() {
    loading ??= Promise.all(SCRIPTS.map(loaded)).then(() => {
      index = baytreeSearch.unpackIndex(baytreeSearchData);
      shown = baytreeSearchShown(index, root, box, ask);
      show();
    }).catch(() => {
      loading = null;
      document.documentElement.classList.remove("is-searching");
      say("Search didn't load. Browse below.");
    });
    return loading;
  }

  function loaded(name) {
    return new Promise((done, failed) => {
      const script = element("script", { src: folder + name });
      script.async = false; // in their order
      script.addEventListener("load", done);
      script.addEventListener("error", failed);
      document.head.append(script);
    });
  }

  // What is shown

  function show() {
    const query = box.value;
    const asked = query.trim() !== "";
    clear.hidden = query === "";
    document.documentElement.classList.toggle("is-searching", asked);
    if (!asked) {
      empty();
    } else if (!index) {
      say("Loading…");
      load();
    } else {
      showAnswer(baytreeSearch.answerQuery(index, query));
    }
  }

  function empty() {
    say("");
    for (const part of [safety, understood, hits, instead]) part.replaceChildren();
    browse(false);
  }

  function showAnswer(answer) {
    const lines = answer.safety.map(shown.safetyLine);
    // Only what is new is put in: a line that stays is not spoken again with every letter.
    if (safety.textContent !== lines.map((line) => line.textContent).join(""))
      safety.replaceChildren(...lines);
    understood.replaceChildren(...shown.linesOf(answer));
    hits.replaceChildren(...answer.hits.map(shown.hitItem));
    instead.replaceChildren(...shown.insteadOf(answer));
    browse(!answer.hits.length);
    say(shown.countOf(answer));
  }

  // Without a hit, the ways in without typing come back.
  const browse = (isOpen) => document.documentElement.classList.toggle("is-browsing", isOpen);

  let saying = 0;
  function say(text) {
    // Said once the typing rests, or a screen reader would speak at every letter.
    clearTimeout(saying);
    saying = setTimeout(() => { count.textContent = text; }, text ? 350 : 0);
  }

  // The address of every state; leaving the empty page is one step for the back button

  const asked = () => new URLSearchParams(location.hash.slice(1)).get("q") ?? "";
  const withoutNumber = (query) => query.replace(/\b(?=[a-z]*\d)[a-z0-9]{17}\b/gi, "").trim();

  // Browsers refuse an address that changes with every letter.
  const rememberAtRest = atRest(remember);

  function remember() {
    const query = box.value;
    const was = history.state?.query ?? asked();
    if (query === was) return;
    const named = withoutNumber(query);
    const address = named ? `#q=${encodeURIComponent(named)}` : location.href.split("#")[0];
    const step = Boolean(query.trim()) !== Boolean(was.trim()) ? "pushState" : "replaceState";
    history[step]({ query }, "", address);
  }

  function recall() {
    box.value = history.state?.query ?? asked();
    show();
  }

  function ask(query) {
    box.value = query;
    remember();
    show();
    box.focus();
  }

  // Keys: down from the box to the hits, up and down among them, Enter goes to the first

  function move(event) {
    const links = [box, ...place.querySelectorAll(".find-hits a")];
    const at = links.indexOf(document.activeElement);
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (!step || at < 0 || !links[at + step]) return;
    event.preventDefault();
    links[at + step].focus();
  }

  function start() {
    document.querySelector("form[data-find]")?.remove(); // one box on this page, not two
    document.head.append(element("link", { rel: "stylesheet", href: `${folder}search.css` }));
    place.append(form, hint, safety, count, understood, hits, instead);
    box.addEventListener("focus", load, { once: true });
    box.addEventListener("input", () => { rememberAtRest(); show(); });
    box.addEventListener("blur", remember);
    place.addEventListener("keydown", move);
    clear.addEventListener("click", () => ask(""));
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      hits.querySelector("a")?.focus();
    });
    addEventListener("popstate", recall);
    addEventListener("hashchange", recall);
    recall();
  }

  start();
})();
