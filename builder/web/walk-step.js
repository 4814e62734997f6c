/* The screen of a step: what changes, the cautions, the lines to do, and the bar below them.
 *
 * In: the walk. Out: `baytreeStep`: the faces, each as `{ step, answers, bar, end }`, lists of
 * elements. `walk.shown` is what `baytreeRecord.screen` says.
 */
"use strict";
globalThis.baytreeStep = (() => {
  const { h, button, signal, caution, tickLine, textBox, labeled } = baytreeParts;
  const { capital, leadsTo, stepNumber, doneWords, answerWords, minutesLeft, colorWords, connectorName } = baytreeWords;
  const PINS = 3; // named on the step; the sheet has all
  const { isRepairing } = baytreeTold;
  const { reduce } = baytreeReduce;

  // The head: place and trail

  function head(walk) {
    const { tables, state, job } = walk, title = tables.trees[state.frames[0].inside].title;
    const trail = h("nav", { class: "w-trail", "aria-label": "What was done" },
      state.steps.slice(-12).map((one) => button([h("span", {}, doneWords(walk, one)), h("b", {}, answerWords(walk, one))], () => walk.sheet("trail"), { "data-done": one.step })),
      h("b", {}, `Step ${stepNumber(state)}`));
    return h("header", { class: "w-head" },
      h("p", { class: "w-place" }, h("b", {}, title), h("span", {},
        [walk.practice ? "Practice" : job.order && `RO ${job.order}`, minutesLeft(tables, state)].filter(Boolean).join(" · "))),
      h("div", { class: "w-row" }, trail, button("Job", () => walk.sheet("job"), { class: "w-job" })));
  }

  // Parts of the step

  const line = (name, words) => words && h("p", { class: name }, words);

  function context({ shown, state }) {
    const inside = shown.inside.filter((title, at) => at && title !== shown.text && title !== shown.inside[0]);
    const { now = [], when = [] } = shown, verifies = state.frames.some((frame) => frame.verifies);
    return [
      line("w-inside", [...(verifies ? ["After the repair"] : []), ...inside].join(" › ")),
      line("w-item", shown.item && capital(shown.item)),
      shown.passed && line("w-visit", `Passed, done as often as it may be: ${shown.passed.join(", ")}`),
      shown.visit && shown.visit[0] > 1 && line("w-visit",
        `Time ${shown.visit[0]} of at most ${shown.visit[1]}`),
      line("w-now", [...now, ...when].join(", ") && `${now.length ? "Now" : "With"}: ${[...now, ...when].join(", ")}`),
    ];
  }

  // Every caution by its short name, the worst first, each signal word once; in full a tap away.
  function cautionLine(walk) {
    const { hazards = [] } = walk.shown, known = walk.tables.shop.hazards;
    const short = ({ id }, at) => {
      const word = known[id].signal, isNew = !at || known[hazards[at - 1].id].signal !== word;
      return h("span", { class: `caution-${word.toLowerCase()}`, "data-hazard": id },
        at ? (isNew ? " " : " · ") : "", isNew && [signal(word), " "], known[id].short);
    };
    return hazards.length > 0 && button(hazards.map(short), () => walk.sheet("look", "Cautions"), { class: "w-caution" });
  }

  // Those to acknowledge in full, the others by their short names; all of them as one line once read.
  function cautions(walk) {
    const { shown: { hazards = [], unread = [] }, view, tables } = walk;
    if (!unread.length || view.isRead) return [cautionLine(walk)];
    const others = hazards.filter(({ id }) => !unread.includes(id));
    return [...unread.map((id) => caution(id, tables.shop.hazards[id])), ...others.map(({ id }) => h(
      "p", { class: "w-short", "data-hazard": id }, `${tables.shop.hazards[id].signal}: ${tables.shop.hazards[id].short}`))];
  }

  const linesOf = ({ shown }, kinds) => (shown.lines || []).map((one, at) => ({ ...one, at }))
    .filter(({ of }) => kinds.includes(of));

  const linesOpen = (walk, kinds) => linesOf(walk, kinds).filter(({ ticked }) => !ticked);

  // Where a step is left it says how many of its changes aren't ticked: that is never needed to go on.
  function notTicked(walk, words) {
    const { length } = linesOpen(walk, ["put back", "change", "after"]);
    return [words, length && `${length} not ticked`].filter(Boolean).join(" · ");
  }

  // Who says that the screen's lines are done has ticked them: the vehicle is changed, whatever is answered.
  const tickAll = (walk, kinds) => walk.tick(linesOpen(walk, kinds).map(({ at }) => at));

  function ticks(walk, kinds) {
    const lines = linesOf(walk, kinds);
    return lines.length > 0 && h("div", { class: "w-ticks" }, lines.map(({ text, ticked, at }) => tickLine(text, ticked,
      (on) => walk.send({ event: "tick", line: at, ...(on ? {} : { on }) }))));
  }

  // The lines to tick beside the step: those of the screen before it aren't repeated.
  const linesLeft = (walk) => [...(wasReady(walk) ? [] : changesFirst(walk)), "do", "after"];
  const wasReady = ({ state, view }) => view.face !== "together" && (state.read.length > 0 || view.isRead);

  // What changes before the step. At a fix it is put back at the end, before it is verified.
  const changesFirst = ({ state }) => (isRepairing(state) && !state.to_normal ? ["change"] : ["put back", "change"]);

  // Pins and fuses of the vehicle's file open the drawing of their connector.
  function where(walk) {
    const { at = [] } = walk.shown, drawn = at.filter((one) => one.pin || one.fuse), more = drawn.length - PINS;
    const words = drawn.slice(0, PINS).map((one) => h("span", {}, placeWords(walk, one)));
    return [...at.filter((one) => !drawn.includes(one)).map((one) => line("w-where", placeWords(walk, one))),
      drawn[0] && button([...words, more > 0 && `and ${more} more`], () => walk.sheet("look", "Pins"), { class: "w-pins" })];
  }

  function placeWords({ tables, state }, { phrase, connector, pin, wire, fuse, amps, box, name, noted }) {
    if (phrase) return capital(phrase);
    if (connector) {
      const { connectors } = tables.shop.vehicles[state.vehicle];
      return `${capital(connectorName(tables, connector, connectors[connector]))} pin ${pin}` + (wire ? `: ${colorWords(tables, wire)}` : "");
    }
    if (fuse) return [`Fuse ${fuse}`, amps && `${amps} A`, box].filter(Boolean).join(", ");
    return `${capital(baytreeSpecs.wordsOfPlace(tables, name))}: ${noted}`;
  }

  // On a practice vehicle: what eyes or instruments show here.
  function shows(walk) {
    const words = walk.practice?.seen(walk);
    return words && line("w-shows", `The vehicle shows: ${words}`);
  }

  // Lookups, each in a sheet over the step.
  function links(walk, moved) {
    const { shown, row } = walk;
    const all = [
      moved && [moved === 1 ? "1 line done" : `${moved} lines done`, "Lines"], shown.note && ["Good to know"],
      row.tools?.length && [`Tools (${row.tools.length})`, "Tools"], row.how_to && ["How-to"],
      row.picture && ["Picture"],
      shown.look_up && ["Look up"], shown.torques && ["Torques"],
      shown.wait && [`Wait ${shown.wait} min`, "Wait"], shown.kind === "check" && shown.write_down && ["Write down"],
    ].filter(Boolean);
    return all.length > 0 && h("p", { class: "w-links" }, all.map(([words, name = words]) => button(words, () => walk.sheet("look", name))));
  }

  const heading = (words, label) => h("h1", { tabindex: "-1" }, label && h("small", {}, label), words);

  function stepParts(walk, label) {
    const { shown, view } = walk, moved = view.face === "step" && view.moved ? (shown.lines || []).length : 0;
    return [...context(walk), ...cautions(walk), heading(shown.text, label), shows(walk), ...where(walk),
      !moved && ticks(walk, linesLeft(walk)), links(walk, moved)];
  }

  // Before the step

  function readyFace(walk) {
    const { shown, view } = walk, kinds = view.isJoined ? linesLeft(walk) : changesFirst(walk);
    const words = linesOf(walk, kinds).length ? "Read and done, go on" : "Read, go on";
    const press = () => { tickAll(walk, kinds); return acknowledge(walk); };
    return { step: [heading("Get ready"), line("w-for", `For: ${shown.verify?.text || shown.text}`), ...cautions(walk),
      ticks(walk, kinds), h("div", { class: "w-pass" }, backButton(walk), goButton([words], press, "acknowledge"))] };
  }

  const acknowledge = (walk) => walk.send({ event: "acknowledge", hazards: walk.shown.unread });
  // The bar as long as cautions stand on the step to be acknowledged.
  const readBar = (walk) => [backButton(walk), goButton(["Read, go on"], () => acknowledge(walk), "acknowledge")];

  function firstFace(walk) {
    const press = () => { tickAll(walk, linesLeft(walk)); walk.go("step"); };
    return { step: [heading("Do this first"), line("w-for", `For: ${walk.shown.text}`),
      ticks(walk, linesLeft(walk))],
      bar: [backButton(walk), goButton(["Done, go on"], press, "acknowledge")] };
  }

  // The bar

  const backButton = (walk) => button("Back", () => walk.back(), { "data-do": "back" });

  function goButton([words, more], press, name = "confirm") {
    return button([h("b", {}, words), more && h("span", {}, more)], press, { class: "w-go", "data-do": name });
  }

  const undoButton = (walk) => button("Undo", () => walk.unpick(), { class: "w-undo" });

  // Where nothing else leads on, the person to call gets a line of what is in the way.
  function giveUp(walk) {
    const { end } = reduce(walk.tables, walk.state, { event: "cannot_test" });
    return end?.kind === "stuck" ? walk.sheet("cannot") : walk.send({ event: "cannot_test" });
  }

  const cannotButton = (walk, words, press = () => giveUp(walk)) => button(words, press, { "data-do": "cannot-test" });

  function restBar(walk) {
    return [backButton(walk),
      cannotButton(walk, "Can’t test"),
      button("None of these", () => walk.sheet("none"), { "data-do": "none" })];
  }

  // What the step wants written down, kept until it is left; `written` is its part of an event.
  const noteFields = ({ shown, view }, before = "") => (shown.write_down || []).map((name, at) => {
    const box = textBox(`w-note-${at}`, { maxlength: "300", value: view.wrote[name] || "", typed: ({ value }) => { view.wrote[name] = value; } });
    return labeled(before ? `${before}${name}` : capital(name), box);
  });

  function written({ view }) {
    const wrote = Object.entries(view.wrote).filter(([, text]) => text.trim());
    return wrote.length ? { wrote: Object.fromEntries(wrote) } : {};
  }

  // Where a script that few steps need didn't load: the job is kept.
  const lackingFace = (walk) => ({ step: [heading("A part of this page didn’t load"),
    line("w-for", "Reload it where there is a network. What you did so far is kept.")], bar: [backButton(walk)] });

  // Actions

  function actionFace(walk) {
    return { step: [...stepParts(walk), ...noteFields(walk, "Write down: ")],
      bar: [backButton(walk), cannotButton(walk, "Can’t do it"),
        goButton(["Done", notTicked(walk, leadsTo(walk, { event: "done" }))], () => walk.confirm())] };
  }

  return { head, heading, line, ticks, linesLeft, notTicked, wasReady, changesFirst, shows, links, context, cautions, stepParts, readBar, readyFace, firstFace, lackingFace,
    actionFace, giveUp, noteFields, written, backButton, goButton, undoButton, cannotButton, restBar };
})();
