/* The screen of a step: what changes, the check, its results, and the bar below them.
 *
 * In: the walk. Out: `baytreeStep`: the faces, each as `{ step, answers, bar, after }`, lists of
 * elements. `walk.shown` is what `baytreeRecord.screen` says.
 */
"use strict";
globalThis.baytreeStep = (() => {
  const { h, button, signal, caution, tickLine } = baytreeParts;
  const { capital, limitsOf, leadsTo, answerWords, minutesLeft, nth, colorWords, connectorName } = baytreeWords;
  const PINS = 3; // named on the step; the sheet has all
  const { fieldsOf, field, pad, verdict } = baytreeReadings;
  const { isEmpty } = baytreeAnswers;
  const { isRepairing } = baytreeTold;
  const { sheetOf, trailSheet, jobSheet, noneSheet, noteFields, written } = baytreeSheets;

  // The head: place and trail

  function head(walk) {
    const { tables, state, job } = walk, title = tables.trees[state.frames[0].inside].title;
    const trail = h("nav", { class: "w-trail", "aria-label": "What was done" },
      state.steps.slice(-12).map((one) => h("span", {},
        button(`${one.step}: ${answerWords(walk, one)}`, () => trailSheet(walk)), h("span", { "aria-hidden": "true" }, "›"))),
      h("b", {}, `Step ${state.steps.length + 1}`));
    return h("header", { class: "w-head" },
      h("p", { class: "w-place" }, h("b", {}, title), h("span", {},
        [walk.practice ? "Practice" : job.order && `RO ${job.order}`, minutesLeft(tables, state)].filter(Boolean).join(" · "))),
      h("div", { class: "w-row" }, trail, button("Job", () => jobSheet(walk), { class: "w-job" })));
  }

  // Parts of the step

  const line = (name, words) => words && h("p", { class: name }, words);

  function context({ shown, state }) {
    const inside = shown.inside.filter((title, at) => at && title !== shown.text && title !== shown.inside[0]);
    const verifies = state.frames.some((frame) => frame.verifies) ? "After the repair" : "";
    return [
      line("w-inside", [verifies, ...inside].filter(Boolean).join(" › ")),
      line("w-item", shown.item && capital(shown.item)),
      shown.passed && line("w-visit", `Passed, done as often as it may be: ${shown.passed.join(", ")}`),
      shown.visit && shown.visit[0] > 1 && line("w-visit",
        `${capital(nth(shown.visit[0]))} time, of at most ${shown.visit[1]}`),
      shown.now && line("w-now", `Now: ${[...shown.now, ...(shown.when || [])].join(", ")}`),
      !shown.now && shown.when && line("w-now", `With: ${shown.when.join(", ")}`),
    ];
  }

  // Every caution by its short name, the worst first, each signal word once; in full a tap away.
  function cautionLine(walk) {
    const { hazards = [] } = walk.shown, known = walk.tables.shop.hazards;
    if (!hazards.length) return null;
    const short = ({ id }, at) => {
      const word = known[id].signal, isNew = !at || known[hazards[at - 1].id].signal !== word;
      return h("span", { class: `caution-${word.toLowerCase()}`, "data-hazard": id },
        at ? (isNew ? " " : "; ") : "", isNew && [signal(word), " "], known[id].short);
    };
    return button(hazards.map(short), () => sheetOf(walk, "Cautions"), { class: "w-caution" });
  }

  const linesOf = ({ shown }, kinds) => (shown.lines || []).map((one, at) => ({ ...one, at }))
    .filter(({ of }) => kinds.includes(of));

  // Who says that the screen's lines are done has ticked them: the vehicle is changed, whatever is answered.
  const tickAll = (walk, kinds) => walk.tick(linesOf(walk, kinds).filter(({ ticked }) => !ticked).map(({ at }) => at));

  function ticks(walk, kinds) {
    const lines = linesOf(walk, kinds);
    return lines.length > 0 && h("div", { class: "w-ticks" }, lines.map(({ text, ticked, at }) => tickLine(text, ticked,
      (on) => walk.send({ event: "tick", line: at, ...(on ? {} : { on }) }))));
  }

  // The lines to tick beside the step: those of the screen before it aren't repeated.
  const linesLeft = (walk) => [...(walk.state.read.length ? [] : changesFirst(walk)), "do", "after"];

  // What changes before the step. At a fix it is put back at the end, before it is verified.
  const changesFirst = ({ state }) => (isRepairing(state) && !state.to_normal ? ["change"] : ["put back", "change"]);

  // Pins and fuses of the vehicle's file open the drawing of their connector.
  function where(walk) {
    const { at = [] } = walk.shown, drawn = at.filter((one) => one.pin || one.fuse), more = drawn.length - PINS;
    const words = drawn.slice(0, PINS).map((one) => h("span", {}, placeWords(walk, one)));
    return [...at.filter((one) => !drawn.includes(one)).map((one) => line("w-where", placeWords(walk, one))),
      drawn[0] && button([...words, more > 0 && `and ${more} more`], () => sheetOf(walk, "Pins"), { class: "w-pins" })];
  }

  function placeWords({ tables, state }, { phrase, connector, pin, wire, fuse, amps, box, name, noted }) {
    if (phrase) return capital(phrase);
    if (connector) {
      const { connectors } = tables.shop.vehicles[state.vehicle];
      return `${capital(connectorName(tables, connector, connectors[connector]))} pin ${pin}` + (wire ? `: ${colorWords(tables, wire)}` : "");
    }
    if (fuse) return [`Fuse ${fuse}`, amps && `${amps} A`, box].filter(Boolean).join(", ");
    return `${baytreeSpecs.wordsOfPlace(tables, name)}: ${noted}`;
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
      moved && [moved === 1 ? "1 line done" : `${moved} lines done`, "Lines"], shown.note && ["Good to know", "Good to know"],
      row.tools?.length && [`Tools (${row.tools.length})`, "Tools"], row.how_to && ["How-to", "How-to"],
      row.picture && ["Picture", "Picture"],
      shown.look_up && ["Look up", "Look up"], shown.torques && ["Torques", "Torques"],
      shown.wait && [`Wait ${shown.wait} min`, "Wait"], shown.kind === "check" && shown.write_down && ["Write down", "Write down"],
    ].filter(Boolean);
    return all.length > 0 && h("p", { class: "w-links" }, all.map(([words, name]) => button(words, () => sheetOf(walk, name))));
  }

  const heading = (words, label) => h("h1", { tabindex: "-1" }, label && h("small", {}, label), words);

  function stepParts(walk, label) {
    const { shown, view } = walk, moved = view.face === "step" && view.moved ? (shown.lines || []).length : 0;
    return [...context(walk), cautionLine(walk), heading(shown.text, label), shows(walk), ...where(walk),
      !moved && ticks(walk, linesLeft(walk)), links(walk, moved)];
  }

  // Before the step

  function readyFace(walk) {
    const { shown, tables } = walk, unread = shown.unread || [];
    const others = (shown.hazards || []).filter(({ id }) => !unread.includes(id));
    const kinds = changesFirst(walk), words = linesOf(walk, kinds).length ? "Read and done, go on" : "Read, go on";
    const press = () => { tickAll(walk, kinds); return walk.send({ event: "acknowledge", hazards: unread }); };
    return { step: [heading("Get ready"), line("w-for", `For: ${shown.verify?.text || shown.text}`),
      ...unread.map((id) => caution(id, tables.shop.hazards[id])),
      ...others.map(({ id }) => h("p", { class: "w-short", "data-hazard": id },
        `${tables.shop.hazards[id].signal}: ${tables.shop.hazards[id].short}`)),
      ticks(walk, kinds), button(words, press, { class: "w-go", "data-do": "acknowledge" }), backButton(walk, "w-quiet")] };
  }

  function firstFace(walk) {
    const press = () => { tickAll(walk, linesLeft(walk)); walk.go("step"); };
    return { step: [heading("Do this first"), line("w-for", `For: ${walk.shown.text}`),
      ticks(walk, linesLeft(walk))],
      bar: [backButton(walk), goButton(["Done, go on"], press, "acknowledge")] };
  }

  // The bar

  const backButton = (walk, name = "") => button("Back", () => walk.back(), { class: name, "data-do": "back" });

  function goButton([words, more], press, name = "confirm") {
    return button([h("b", {}, words), more && h("span", {}, more)], press, { class: "w-go", "data-do": name });
  }

  const undoButton = (walk) => button("Undo", () => walk.unpick(), { class: "w-undo" });

  function restBar(walk) {
    return [backButton(walk),
      button("Can’t test", () => walk.send({ event: "cannot_test" }), { "data-do": "cannot-test" }),
      button("None of these", () => noneSheet(walk), { "data-do": "none" })];
  }

  // Checks

  function checkFace(walk) {
    const { row } = walk;
    judge(walk);
    const results = resultList(walk);
    return {
      step: stepParts(walk),
      answers: [row.by && procedureParts(walk),
        row.readings.length > 0 && h("div", { class: "w-fields" }, fieldsOf(row).map((one, at) => field(walk, one, at))), results],
      bar: checkBar(walk),
    };
  }

  // A check that a procedure answers: run it, or take what it proved earlier in the job.
  function procedureParts(walk) {
    const { shown } = walk, title = shown.procedure === shown.text ? "" : shown.procedure;
    if (!shown.earlier) return [goButton(["Go through the tests", title], () => walk.confirm()), line("w-for", "Or, if you know it already:")];
    return [goButton([`Proved earlier: ${shown.earlier.word}`, "Take it"], () => walk.confirm()),
      button("Test it again", () => walk.send({ event: "run" }), { class: "w-again" })];
  }

  const isStrip = ({ readings, results, by }) => !by && readings.length === 1 && !readings[0].phrases && results.length <= 3;

  function resultList(walk) {
    const { row, view } = walk;
    return h("div", { class: `w-results ${isStrip(row) ? "strip" : view.columns ? "columns" : "rows"}`, role: "group",
      "aria-label": row.by ? "Known already" : "Results" },
      row.results.map((result, at) => button(resultWords(walk, result, at), () => walk.pick(at),
        { "data-result": String(at), ...resultState(walk, at) })));
  }

  function resultWords({ row, shown }, result, at) {
    const { text, means } = shown.results[at], limits = limitsOf(row, result);
    return [h("b", {}, isStrip(row) ? "" : h("span", { class: "w-number", "aria-hidden": "true" }, String(at + 1)),
      capital(limits || text)), (means || limits) && h("span", {}, means || text)];
  }

  // Results ruled out by a reading are struck through softly, and stay to be pressed.
  function resultState({ judged, view, row }, at) {
    const isDecided = row.readings.length > 0 && ["decided", "too close to call", "incomplete"].includes(judged.state);
    const name = isDecided && !judged.fits.includes(at) ? "out" : isDecided && judged.state !== "incomplete" ? "fits" : "";
    return { class: name, "aria-pressed": String(view.pick === at) };
  }

  function judge(walk) {
    walk.judged = walk.row.readings?.length ? verdict(walk, walk.row, walk.tools) : { state: "empty", fits: [] };
  }

  // The event that the confirm sends; null as long as nothing is decided.
  function answerOf({ row, view, judged, shown }) {
    const { pick } = view, wrote = written(view), answer = { event: "answer", ...(Object.keys(wrote).length ? { wrote } : {}) };
    if (pick === null) {
      if (row.by) return { event: shown.earlier ? "take" : "run" };
      return judged.state === "decided" ? { ...answer, readings: judged.typed } : null;
    }
    if (!row.readings.length) return { ...answer, result: pick, ...(row.by ? { stated: true } : {}) };
    if (judged.typed && ["decided", "too close to call"].includes(judged.state) && judged.fits.includes(pick)) {
      return { ...answer, result: pick, readings: judged.typed };
    }
    return { ...answer, result: pick, ...(isEmpty(row, pick) ? {} : { stated: true }) };
  }

  function checkBar(walk) {
    const event = answerOf(walk), { judged, row, view, shown } = walk;
    if (!event && judged.line) {
      return [h("p", { class: `w-verdict ${judged.state.split(" ")[0]}` }, judged.line),
        judged.state === "no result" ? button("None of these", () => noneSheet(walk), { "data-do": "none" }) : null];
    }
    if (!event || ["run", "take"].includes(event.event)) return restBar(walk);
    const next = leadsTo(walk, event), go = (words, more) => goButton([words, more], () => walk.confirm());
    if (view.pick === null) return [undoButton(walk), go(judged.line, next)];
    return [undoButton(walk), go(pickedWords(row, shown, view.pick, event, judged), next)];
  }

  function pickedWords(row, shown, at, event, judged) {
    const words = capital(limitsOf(row, row.results[at]) || shown.results[at].text);
    if (!event.stated) return words;
    return judged.typed ? `${words}, against the reading: stated` : `${words}: stated, not measured`;
  }

  // Actions, and what is asked before a step

  function actionFace(walk) {
    const { shown } = walk;
    return { step: [...stepParts(walk), ...noteFields(walk, "Write down: ")],
      bar: [backButton(walk), button("Can’t do it", () => walk.send({ event: "cannot_test" }), { "data-do": "cannot-test" }),
        goButton(["Done", leadsTo(walk, { event: "done" })], () => walk.confirm())] };
  }

  function fillFace(walk) {
    const [ask] = walk.shown.asks, names = ask.limits || [""], { view } = walk;
    const label = { from: "Lowest", to: "Highest" };
    const field = (name, at) => {
      const box = h("input", { id: `w-fill-${at}`, type: "text", autocomplete: "off", "data-reading": name,
        "aria-label": label[name] || ask.ask, value: view.typed[name] || "" });
      box.addEventListener("input", () => { view.typed[name] = box.value; });
      box.addEventListener("keydown", (event) => { if (event.key === "Enter") walk.confirm(); });
      return h("div", { class: "w-field" }, label[name] && h("label", { for: box.id }, label[name]),
        h("div", { class: "w-value" }, box, ask.unit && h("span", { class: "w-unit" }, ask.unit)));
    };
    const nameOf = (words) => capital(walk.tables.more[walk.state.frames[0].inside]?.names[words] || words);
    if (view.typed[""] === undefined && ask.offered?.length === 1) [view.typed[""]] = ask.offered;
    if (walk.practice && !ask.one_of.length && !Object.keys(view.typed).length) view.typed = walk.practice.lookedUp(ask);
    const choice = (words, at) => button([h("b", {}, nameOf(words)), ask.offered?.includes(words) && h("small", {}, " by a DTC that was read")], () => { view.typed[""] = words; walk.redraw(); },
      { "data-reading": "", "data-choice": String(at), "aria-pressed": String(view.typed[""] === words) });
    const looksUp = ask.limits || /^(pin|fuse) /.test(ask.name);
    // Without its spec a check can't be judged; a pin can still be found by its wire.
    const giveUp = () => walk.send(ask.limits ? { event: "cannot_test" } : { event: "fill", name: ask.name, value: "not looked up" });
    return {
      step: [line("w-inside", looksUp ? "Look it up for this vehicle" : "Before it starts"), heading(capital(ask.ask)),
        walk.practice && !ask.one_of.length && line("w-for", "Filled in for practice, as if you had looked it up"),
        ask.list && !ask.limits && line("w-for", "Several: put commas between them")],
      answers: [ask.one_of.length ? h("div", { class: `w-results ${view.columns ? "columns" : "rows"}`, role: "group", "aria-label": "Answers" },
        ask.one_of.map(choice)) : h("div", { class: "w-fields" }, names.map(field)),
      ask.one_of.includes("other") && view.typed[""] === "other" && nameField(walk, ask), ask.codes && codeField(walk, ask)],
      bar: [backButton(walk), looksUp && button("Can’t look it up", giveUp, { "data-do": "cannot-test" }),
        goButton(["Go on"], () => walk.confirm())],
    };
  }

  // What the shop has no entry for goes by its own name, on the papers too.
  function nameField({ view }, ask) {
    const box = h("input", { id: "w-other", type: "text", autocomplete: "off", maxlength: "40", value: view.typed.other || "" });
    box.addEventListener("input", () => { view.typed.other = box.value; });
    return h("div", { class: "w-field" }, h("label", { for: box.id }, `Name of the ${ask.name.replaceAll("-", " ")}`), h("div", { class: "w-value" }, box));
  }

  // A DTC instead of an answer: the one that it stands for is chosen.
  function codeField(walk, ask) {
    const box = h("input", { id: "w-code", type: "text", autocomplete: "off", autocapitalize: "characters" });
    box.addEventListener("change", () => {
      const [answer, ...others] = baytreeSpecs.answersOfCodes(ask.codes, box.value);
      if (answer && !others.length) { walk.view.typed[""] = answer; walk.redraw(); }
    });
    return h("div", { class: "w-field" }, h("label", { for: box.id }, "Or a DTC"), h("div", { class: "w-value" }, box));
  }

  function fillEvent({ shown: { asks: [ask] }, view: { typed } }) {
    const own = typed[""] === "other" ? typed.other : "", text = (own || typed[""] || "").trim();
    if (ask.limits) {
      const values = ask.limits.map((name) => (typed[name] || "").trim());
      return { event: "fill", name: ask.name, value: ask.list ? values : values[0] };
    }
    return { event: "fill", name: ask.name, value: ask.list ? text.split(",").map((one) => one.trim()).filter(Boolean) : text };
  }

  function pausedFace(walk) {
    const left = walk.job.until ? Math.ceil((Date.parse(walk.job.until) - Date.now()) / 60000) : 0;
    return { step: [heading(left > 0 ? `Waiting: ${left} min left` : "Paused"),
      line("w-for", `At: ${baytreeWords.stepWords(walk.tables, walk.state)}`),
      h("p", {}, h("a", { class: "w-link", href: `${walk.root}index.html#jobs` }, "Go on with another job"))],
      bar: [goButton(["Resume"], () => walk.send({ event: "resume" }), "resume")] };
  }

  return { head, heading, line, ticks, linesLeft, changesFirst, links, context, cautionLine, readyFace, firstFace, checkFace, actionFace, fillFace,
    pausedFace, fillEvent, answerOf, checkBar, resultState, judge, backButton, goButton, undoButton, pad };
})();
