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

  return { element, button, atRest };
})();
