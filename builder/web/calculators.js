/* The forms of the calculators.
 *
 * In: `form[data-calculator]` as the page has them. Out: the answer under each form as you type, and
 * a sentence beside a field that makes no sense. Nothing is sent or kept.
 */
"use strict";
(() => {
  const { answer } = baytreeCalculators;
  const { element, answerAsTyped, showMistake, withUnit } = baytreeDom;

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

  function shownLine({ label, text: words, exact }) {
    const figure = exact && baytreeTrade.mark === "comma" ? words.replace(".", ",") : words;
    return element("p", {}, label && `${label}: `, element("b", {}, figure));
  }

  for (const form of document.querySelectorAll("form[data-calculator]")) {
    form.hidden = false;
    answerAsTyped(form, () => show(form));
  }
})();
