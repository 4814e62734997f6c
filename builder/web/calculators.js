/* The forms of the calculators.
 *
 * In: `form[data-calculator]` as the page has them. Out: the answer under each form as you type, and
 * a sentence beside a field that makes no sense. Nothing is sent or kept.
 */
"use strict";
(() => {
  const { answer } = baytreeCalculators;
  const PAUSE = 300; // milliseconds: the answer is announced when typing pauses

  // A bare number takes the unit beside it; a unit that was typed wins.
  function text(form, field) {
    const beside = form.elements[`${field.name}:unit`];
    const typed = field.value.trim();
    return beside && /[0-9.,]$/.test(typed) ? `${typed} ${beside.value}` : field.value;
  }

  const fields = (form) => [...form.elements].filter((one) => one.id);
  const typedIn = (form) => Object.fromEntries(fields(form).map((one) => [one.name, text(form, one)]));

  function show(form) {
    const found = answer(form.dataset.calculator, typedIn(form));
    for (const field of fields(form)) {
      const words = found.mistakes[field.name] || "";
      const place = document.getElementById(`${field.id}-wrong`);
      place.textContent = words;
      place.hidden = !words;
      if (words) field.setAttribute("aria-invalid", "true");
      else field.removeAttribute("aria-invalid");
    }
    const whole = found.mistakes[""];
    form.querySelector("output").replaceChildren(
      ...(whole ? [paragraph("wrong", whole)] : found.lines.map(shownLine)));
  }

  function shownLine({ label, text: words, exact }) {
    const figure = document.createElement("b");
    figure.textContent = exact && baytreeTrade.mark === "comma" ? words.replace(".", ",") : words;
    const made = paragraph("", label && `${label}: `);
    made.append(figure);
    return made;
  }

  function paragraph(name, words) {
    const made = document.createElement("p");
    made.className = name;
    made.textContent = words;
    return made;
  }

  for (const form of document.querySelectorAll("form[data-calculator]")) {
    let waiting = 0;
    form.hidden = false;
    form.addEventListener("submit", (event) => { event.preventDefault(); show(form); });
    form.addEventListener("change", () => show(form));
    form.addEventListener("input", () => {
      clearTimeout(waiting);
      waiting = setTimeout(() => show(form), PAUSE);
    });
  }
})();
