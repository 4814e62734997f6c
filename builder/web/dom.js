/* What the scripts of all pages do with elements.
 *
 * In: names, attributes, texts. Out: `baytreeDom`. Text is set as text, so nothing that an author
 * wrote is read as markup.
 */
"use strict";
globalThis.baytreeDom = (() => {
  const PAUSE = 300; // milliseconds: what is typed is looked at when the typing rests

  function element(name, attributes = {}, ...inside) {
    const node = document.createElement(name);
    for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
    node.append(...inside.filter((child) => child !== null && child !== ""));
    return node;
  }

  function button(name, press) {
    const node = element("button", { type: "button", class: "chip" }, name);
    node.addEventListener("click", press);
    return node;
  }

  // A function that works once nothing has called it for a while; `now` does not wait.
  function atRest(work, pause = PAUSE) {
    let waiting = 0;
    const later = () => { clearTimeout(waiting); waiting = setTimeout(work, pause); };
    later.now = () => { clearTimeout(waiting); work(); };
    return later;
  }

  // A form that answers as one types, and at once on Enter or when a field is left.
  function answerAsTyped(form, show) {
    const later = atRest(show);
    form.addEventListener("submit", (event) => { event.preventDefault(); later.now(); });
    form.addEventListener("change", later.now);
    form.addEventListener("input", later);
  }

  // A sentence beside a field that makes no sense, in the element `<id>-wrong`; "" takes it away.
  function showMistake(field, words = "") {
    const place = document.getElementById(`${field.id}-wrong`);
    place.textContent = words;
    place.hidden = !words;
    if (words) field.setAttribute("aria-invalid", "true");
    else field.removeAttribute("aria-invalid");
  }

  // A figure alone takes the unit chosen beside it; a unit that was typed counts.
  function withUnit(typed, unit) {
    const text = typed.trim();
    return unit && /[0-9.,]$/.test(text) ? `${text} ${unit}` : typed;
  }

  return { element, button, atRest, answerAsTyped, showMistake, withUnit };
})();
