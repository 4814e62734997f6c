/* What a walk asks before a step: questions of the tree, specs, pins, lists. Loaded where it asks.
 *
 * In: the walk. Out: `baytreeAsks`: a face as in walk-step.js, and the event that its button sends.
 */
"use strict";
globalThis.baytreeAsks = (() => {
  const { h, button, textBox } = baytreeParts;
  const { capital } = baytreeWords;
  const { heading, line, backButton, goButton, cannotButton, giveUp } = baytreeStep;

  // What is looked up of a place, by the first word of its name.
  const WANTED = { pin: "Pin number and wire color, from the wiring diagram", fuse: "Fuse number and rating, from the wiring diagram" };

  function fillFace(walk) {
    const [ask] = walk.shown.asks, names = ask.limits || [""], { view } = walk;
    const label = { from: "Lowest", to: "Highest" };
    const field = (name, at) => {
      const box = textBox(`w-fill-${at}`, { "data-reading": name, "aria-label": label[name] || ask.ask,
        value: view.typed[name] || "", typed: ({ value }) => { view.typed[name] = value; }, enter: walk.confirm });
      return h("div", { class: "w-field" }, label[name] && h("label", { for: box.id }, label[name]),
        h("div", { class: "w-value" }, box, ask.unit && h("span", { class: "w-unit" }, ask.unit)));
    };
    const nameOf = (words) => capital(walk.tables.more[walk.state.frames[0].inside]?.names[words] || words);
    if (view.typed[""] === undefined && ask.offered?.length === 1) [view.typed[""]] = ask.offered;
    if (walk.practice && !ask.one_of.length && !Object.keys(view.typed).length) view.typed = walk.practice.lookedUp(ask);
    const choice = (words, at) => button([h("b", {}, nameOf(words)), ask.offered?.includes(words) && h("small", {}, " by a DTC that was read")], () => { view.typed[""] = words; walk.redraw(); },
      { "data-reading": "", "data-choice": String(at), "aria-pressed": String(view.typed[""] === words) });
    const [kind] = /^(pin|fuse)(?= )/.exec(ask.name) || [], looksUp = ask.limits || WANTED[kind];
    // Without its spec a check can't be judged; a pin can still be found by its wire.
    const press = () => (ask.limits ? giveUp(walk) : walk.send({ event: "fill", name: ask.name, value: "not looked up" }));
    return {
      step: [line("w-inside", looksUp ? "Look it up for this vehicle" : "Before it starts"), heading(capital(ask.ask)),
        walk.practice && !ask.one_of.length && line("w-for", "Filled in for practice, as if you had looked it up"),
        WANTED[kind] && line("w-for", WANTED[kind]),
        ask.list && !ask.limits && line("w-for", "Several: put commas between them")],
      answers: [ask.one_of.length ? h("div", { class: `w-results ${view.columns ? "columns" : "rows"}`, role: "group", "aria-label": "Answers" },
        ask.one_of.map(choice)) : h("div", { class: "w-fields" }, names.map(field)),
      ask.one_of.includes("other") && view.typed[""] === "other" && nameField(walk, ask), ask.codes && codeField(walk, ask)],
      bar: [backButton(walk), looksUp && cannotButton(walk, "Can’t find it", press),
        goButton(["Go on"], () => walk.confirm())],
    };
  }

  const fieldOf = (words, box) => h("div", { class: "w-field" }, h("label", { for: box.id }, words), h("div", { class: "w-value" }, box));

  // What the shop has no entry for goes by its own name, on the papers too.
  function nameField({ view }, ask) {
    return fieldOf(`Name of the ${ask.name.replaceAll("-", " ")}`, textBox("w-other", { maxlength: "40",
      value: view.typed.other || "", typed: ({ value }) => { view.typed.other = value; } }));
  }

  // A DTC instead of an answer: the one that it stands for is chosen.
  function codeField(walk, ask) {
    const take = ({ value }) => {
      const [answer, ...others] = baytreeSpecs.answersOfCodes(ask.codes, value);
      if (answer && !others.length) { walk.view.typed[""] = answer; walk.redraw(); }
    };
    return fieldOf("Or a DTC", textBox("w-code", { autocapitalize: "characters", changed: take }));
  }

  function fillEvent({ shown: { asks: [ask] }, view: { typed } }) {
    const own = typed[""] === "other" ? typed.other : "", text = (own || typed[""] || "").trim();
    if (ask.limits) {
      const values = ask.limits.map((name) => (typed[name] || "").trim());
      return { event: "fill", name: ask.name, value: ask.list ? values : values[0] };
    }
    return { event: "fill", name: ask.name, value: ask.list ? text.split(",").map((one) => one.trim()).filter(Boolean) : text };
  }

  return { fillFace, fillEvent };
})();
