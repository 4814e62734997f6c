/* The search on the first page.
 *
 * In: an empty `<div id="find">`. Out: a box, the safety line, what was understood, the hits, and
 * where to go if there are none. The index and the ranking are loaded at the first use, by script tags, so that it works
 * from a folder too. Every state has an address (`#q=...`); a vehicle number is kept out of it,
 * and stays in this tab's history only.
 */
"use strict";
(() => {
  const place = document.getElementById("find");
  if (!place) return;
  const folder = document.currentScript.src.replace(/[^/]*$/, "");
  const root = folder.replace(/[^/]*\/$/, "");
  const { element, button, atRest } = baytreeDom;
  const SCRIPTS = [
    "search-data.js", "search-words.js", "search-index.js", "search-spelling.js",
    "search-query.js", "search-safety.js", "search-coverage.js", "search-rank.js",
  ];

  const link = (address, name, className = "chip") =>
    element("a", { href: root + address, class: className }, name);
  function slug(id) { // as `file_slug` in pages/addresses.py
    const name = id.replace(/[^A-Za-z0-9]+/g, "-").replace(/^-|-$/g, "") || "unnamed";
    return /^(index|readme)$/i.test(name) ? `the-${name}` : name;
  }
  const quoted = (text) => element("q", {}, text);

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
  let loading = null;

  function load() {
    loading ??= Promise.all(SCRIPTS.map(loaded)).then(() => {
      index = baytreeSearch.unpackIndex(baytreeSearchData);
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
    const lines = answer.safety.map(safetyLine);
    // Only what is new is put in: a line that stays is not spoken again with every letter.
    if (safety.textContent !== lines.map((line) => line.textContent).join(""))
      safety.replaceChildren(...lines);
    understood.replaceChildren(...linesOf(answer));
    hits.replaceChildren(...answer.hits.map(hitItem));
    instead.replaceChildren(...insteadOf(answer));
    browse(!answer.hits.length);
    say(countOf(answer));
  }

  // Without a hit, the ways in without typing come back.
  const browse = (isOpen) => document.documentElement.classList.toggle("is-browsing", isOpen);

  function safetyLine(text) {
    const [signal, ...words] = text.split(":");
    return element("div", { class: `caution caution-${signal.toLowerCase()}` },
      element("b", { class: "signal" }, signal), ` ${words.join(":").trim()}`);
  }

  let saying = 0;
  function say(text) {
    // Said once the typing rests, or a screen reader would speak at every letter.
    clearTimeout(saying);
    saying = setTimeout(() => { count.textContent = text; }, text ? 350 : 0);
  }

  function countOf({ understood: { vehicle }, hits: found, trees }) {
    const shown = found.filter((hit) => hit.kind === "tree").length;
    const articles = found.length - shown;
    const many = (number, one) => `${number} ${one}${number === 1 ? "" : "s"}`;
    if (!trees) return "We have no tree for this.";
    const named = vehicleName(vehicle);
    const ofVehicle = many(trees, "tree") + (named ? ` for ${named}` : "");
    const first = trees > shown ? `${ofVehicle}, the first ${shown} shown` : ofVehicle;
    return [first, articles && many(articles, "article")].filter(Boolean).join(", ");
  }

  // What was understood

  function linesOf({ understood: said }) {
    const lines = [
      ...said.codes.map(codeLine),
      ...said.corrected.map(([typed, taken]) =>
        ["Showing results for ", quoted(taken), " (you typed ", quoted(typed), ")"]),
      ...said.slang.map(slangLine),
      said.unknown.length ? ["Not in any tree: ", ...between(said.unknown.map(quoted), ", ")] : null,
      vehicleLine(said),
    ];
    return lines.filter(Boolean).map((line) => element("p", {}, ...line));
  }

  const between = (parts, sign) => parts.flatMap((part, at) => (at ? [sign, part] : [part]));

  function codeLine([code, says]) {
    const short = code.split("-")[0];
    const listed = index.codes.has(short);
    const known = listed || index.codeMeanings.has(short);
    const name = known ? link(`codes/${slug(short)}.html`, code, "find-code") : code;
    const words = says ? `: ${says}.` : "";
    return [name, words, listed ? "" : " No tree for this DTC yet."];
  }

  function slangLine([phrase, terms]) {
    if (terms.length === 1) return [quoted(phrase), ": ", terms[0]];
    const choose = (term) => button(term, () => ask(replaced(box.value, phrase, term)));
    return [quoted(phrase), " can mean: ", ...terms.map(choose)];
  }

  function replaced(query, phrase, term) {
    const at = query.toLowerCase().indexOf(phrase.toLowerCase());
    if (at < 0) return `${query} ${term}`;
    return query.slice(0, at) + term + query.slice(at + phrase.length);
  }

  function vehicleLine({ vehicle, otherVehicles }) {
    if (!baytreeSearch.isVehicle(vehicle)) return null;
    const name = vehicleName(vehicle) || "model year unknown";
    const left = otherVehicles ? ` ${otherVehicles} for other vehicles not shown.` : "";
    return ["Vehicle: ", element("b", {}, name), ".", numberWords(vehicle), left];
  }

  function vehicleName(vehicle) {
    const years = vehicle.years.join(" or ");
    return `${nameOf(vehicle) || (years && "model year")} ${years}`.trim();
  }

  function nameOf({ make, model }) {
    const fitting = index.vehicles.filter((vehicle) =>
      baytreeSearch.vehicleFits({ make, model, years: [] }, vehicle));
    const pick = (part, asked) => {
      const names = new Set(fitting.map((vehicle) => vehicle[part]));
      return names.size === 1 && (make.length || model.length) ? [...names][0] : asked.join(" ");
    };
    return `${pick("make", make)} ${model.length ? pick("model", model) : ""}`.trim();
  }

  function numberWords({ number, numberCheck, years }) {
    if (!number) return "";
    const says = {
      right: "check digit matches",
      "wrong check digit": "check digit doesn't match. Reread the VIN. (Some non-US VINs don't use one.)",
      "wrong characters": "a VIN never has I, O, or Q. Is it 1 or 0?",
    }[numberCheck];
    const year = years.length ? "" : " Model year unknown.";
    return ` VIN ${number}: ${says}${/[.?)]$/.test(says) ? "" : "."}${year}`;
  }

  // Hits, and what is instead of them

  function hitItem(hit) {
    const address = hit.kind === "tree" ? `trees/${hit.id}.html` : `how-to/${slug(hit.id)}.html`;
    const more = hit.kind === "article" ? "How-to" : aboutTree(hit);
    const mark = hit.draft ? element("span", { class: "mark" }, "draft") : null;
    const name = element("span", {}, element("b", {}, hit.title), mark ? " " : "", mark);
    return element("li", {}, element("a", { href: encodeURI(root + address), class: "row" },
      name, element("span", { class: "row-more" }, more)));
  }

  function modelYears(first, last) {
    if (!first) return "";
    return first === last ? ` ${first}` : ` ${first} to ${last}`;
  }

  // The customer's words that fit best, the system, and the vehicles if it is not about any.
  function aboutTree({ id, phrase }) {
    const entry = index.entries.find((one) => one.id === id);
    const scopes = entry.vehicles.map((at) => index.vehicles[at])
      .map(({ make, model, first, last }) => `${make} ${model}${modelYears(first, last)}`);
    const words = baytreeSearch.symptomsOf(index, entry).includes(phrase) ? `“${phrase}”` : "";
    return [words, entry.system, scopes.join(", ")].filter(Boolean).join(" · ");
  }

  function insteadOf({ trees, nearest }) {
    if (trees) return [];
    const start = element("p", {}, "To start one, type ",
      element("code", {}, "baytree new tree SYSTEM/NAME"), " in the shop folder.");
    if (!nearest.length) return [start];
    const near = element("ul", { class: "find-hits" }, ...nearest.map(hitItem));
    return [start, element("h2", {}, "Same subject, another fault"), near];
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
    const shown = withoutNumber(query);
    const address = shown ? `#q=${encodeURIComponent(shown)}` : location.href.split("#")[0];
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
