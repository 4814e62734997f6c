/* The parts that the screens of a walk are made of: elements, buttons, fields.
 *
 * In: names, attributes, texts. Out: `baytreeParts`. Text is set as text.
 */
"use strict";
globalThis.baytreeParts = (() => {
  const { element } = baytreeDom;

  // An element; a value of `false` leaves an attribute out. `press`, `typed` and `changed` are what
  // happens then, each with the element.
  function h(name, { press, typed, changed, ...attributes } = {}, ...inside) {
    const kept = Object.entries(attributes).filter(([, value]) => value !== false && value !== undefined);
    const node = element(name, Object.fromEntries(kept.map(([key, value]) => [key, value === true ? "" : value])),
      ...inside.flat().filter((child) => child !== null && child !== undefined && child !== false));
    for (const [type, work] of [["click", press], ["input", typed], ["change", changed]]) {
      if (work) node.addEventListener(type, () => work(node));
    }
    return node;
  }

  const button = (words, press, attributes = {}) => h("button", { type: "button", press, ...attributes }, ...[words].flat());
  const signal = (word) => h("strong", { class: "signal" }, word);

  // A caution in full.
  function caution(id, { signal: word, hazard, harm, avoid }) {
    return h("div", { class: `caution caution-${word.toLowerCase()}`, role: "note", "data-hazard": id },
      h("p", {}, signal(word), " ", h("strong", {}, `${hazard}.`), ` ${harm}. ${avoid}.`));
  }

  // A line to do, with its tick.
  function tickLine(words, isTicked, change) {
    const box = h("input", { type: "checkbox", "data-tick": "", checked: isTicked, changed: () => change(box.checked) });
    return h("label", { class: "w-tick" }, box, h("span", {}, words));
  }

  // A line of text to type; `enter` is what the key of that name does.
  function textBox(id, { enter, ...attributes }) {
    const box = h("input", { id, type: "text", autocomplete: "off", ...attributes });
    if (enter) box.addEventListener("keydown", ({ key }) => { if (key === "Enter") enter(); });
    return box;
  }

  const labeled = (words, box) => h("div", { class: "w-note" }, h("label", { for: box.id }, words), box);

  return { h, button, signal, caution, tickLine, textBox, labeled };
})();
