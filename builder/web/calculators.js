/* The forms of the calculators.
 *
 * In: `form[data-calculator]` as the page has them. Out: the answer under each form as you type, and
 * a sentence beside a field that makes no sense. Nothing is sent or kept.
 */
"use strict";
(() => {
  const { answer } = baytreeCalculators;
  const { element, atRest } = baytreeDom;
  const { withUnit } = baytreeQuantities;

  const text = (form, field) => withUnit(field.value, form.elements[`${field.name}:unit`]?.value);

  const fields = (form) => [...form.elements].filter((one) => one.id);
  const typedIn = (form) => Object.fromEntries(fields(form).map((one) => [one.name, text(form, one)]));

  function show(form) {
    const found = answer(form.dataset.calculator, typedIn(form));
    for (const field of fields(form)) showMistake(field, found.mistakes[field.name]);
    const whole = found.mistakes[""];
    form.querySelector("output").replaceChildren(
      ...(whole ? [element("p", { class: "wrong" }, whole)] : found.lines.map(shownLine)));
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

  function shownLine({ label, text: words, exact }) {
    const figure = exact && baytreeTrade.mark === "comma" ? words.replace(".", ",") : words;
    return element("p", {}, label && `${label}: `, element("b", {}, figure));
  }

  for (const form of document.querySelectorAll("form[data-calculator]")) {
    form.hidden = false;
    answerAsTyped(form, () => show(form));
  }
})();
