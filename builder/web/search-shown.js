/* What the search shows of an answer: the safety lines, what was understood, the hits, and where to go
 * if there are none. Loaded with the index.
 *
 * In: the index, the way to the site's root, the box, how to ask anew. Out: `baytreeSearchShown`,
 * functions that make elements.
 */
"use strict";
globalThis.baytreeSearchShown = (index, root, box, ask) => {
  const { element, button } = baytreeDom;

  function slug(id) { // as `file_slug` in pages/addresses.py
    const name = id.replace(/[^A-Za-z0-9]+/g, "-").replace(/^-|-$/g, "") || "unnamed";
    return /^(index|readme)$/i.test(name) ? `the-${name}` : name;
  }

  const quoted = (text) => element("q", {}, text);

  function safetyLine(text) {
    const [signal, ...words] = text.split(":");
    return element("div", { class: `caution caution-${signal.toLowerCase()}` },
      element("b", { class: "signal" }, signal), ` ${words.join(":").trim()}`);
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
    const name = known ? element("a", { href: `${root}codes/${slug(short)}.html`, class: "find-code" }, code) : code;
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

  return { safetyLine, countOf, linesOf, hitItem, insteadOf };
};
