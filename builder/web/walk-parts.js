/* The parts that the screens of a walk are made of: elements, buttons, sheets.
 *
 * In: names, attributes, texts. Out: `baytreeParts`. Text is set as text.
 */
"use strict";
globalThis.baytreeParts = (() => {
  const { element } = baytreeDom;

  // An element; `press` is what a press does, a value of `false` or "" leaves an attribute out.
  function h(name, { press, ...attributes } = {}, ...inside) {
    const kept = Object.entries(attributes).filter(([, value]) => value !== false && value !== undefined);
    const node = element(name, Object.fromEntries(kept.map(([key, value]) => [key, value === true ? "" : value])),
      ...inside.flat().filter((child) => child !== null && child !== undefined && child !== false));
    if (press) node.addEventListener("click", press);
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
    const box = h("input", { type: "checkbox", "data-tick": "" });
    box.checked = isTicked;
    box.addEventListener("change", () => change(box.checked));
    return h("label", { class: "w-tick" }, box, h("span", {}, words));
  }

  // A sheet over the step, which isn't drawn again: what was typed stays. Back closes it.
  function openSheet(title, ...content) {
    const heading = h("h2", { tabindex: "-1" }, title);
    const close = button("Close", () => node.close(), { class: "w-close" });
    const node = h("dialog", { class: "w-sheet", "aria-label": title },
      h("div", { class: "w-sheet-body", tabindex: "0" }, heading, ...content), close);
    node.addEventListener("close", () => {
      node.remove();
      if (history.state?.sheet) history.back();
    });
    history.pushState({ ...history.state, sheet: true }, "");
    document.body.append(node);
    node.showModal();
    heading.focus();
    return node;
  }

  // Closes the open sheet, and then does the rest: going back in history takes a moment.
  function closeSheet(then = () => {}) {
    const node = document.querySelector("dialog.w-sheet[open]");
    if (!node) return then();
    addEventListener("popstate", () => setTimeout(then), { once: true });
    return node.close();
  }

  function save(name, value) {
    const address = URL.createObjectURL(new Blob([JSON.stringify(value, null, 1)], { type: "application/json" }));
    h("a", { href: address, download: name }).click();
    setTimeout(() => URL.revokeObjectURL(address), 60000);
  }

  return { h, button, signal, caution, tickLine, openSheet, closeSheet, save };
})();
