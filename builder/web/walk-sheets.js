/* The sheets over a step: lookups, the trail, the job.
 *
 * In: the walk. Out: `baytreeSheets`, functions that open a sheet; loaded when one is asked for. A
 * sheet hides the step, and closing it shows the step as it was.
 */
"use strict";
globalThis.baytreeSheets = (() => {
  const { h, button, caution, textBox, labeled } = baytreeParts;
  const { capital, asked, answerWords, doneWords, rangeWords } = baytreeWords;
  const { tableOf, planOf, linesOf } = baytreeTold;
  const { withRanges } = baytreeSpecs;
  const { noteFields } = baytreeStep;
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

  const paragraphs = (lines) => lines.map((words) => h("p", {}, words));

  // Lookups

  const CONTENT = {
    Cautions: ({ shown, tables }) => shown.hazards.map(({ id }) => caution(id, tables.shop.hazards[id])),
    Lines: ({ shown }) => paragraphs(shown.lines.map(({ text }) => text)),
    "Good to know": ({ shown }) => paragraphs([shown.note]),
    "Look up": ({ shown }) => paragraphs([`In the vehicle maker's service information: ${shown.look_up}`]),
    Tools: ({ row, tables }) => [h("ul", {}, row.tools.map((id) => h("li", {}, tables.names.tools[id] || id)))],
    "How-to": ({ row, tables, root }) => {
      const [title, path] = tables.names.how_tos[row.how_to] || [row.how_to, ""];
      return path ? [h("iframe", { class: "w-frame", src: root + path, title })] : paragraphs([title]);
    },
    Picture: ({ row, root }) => [h("img", { class: "w-picture", src: `${root}how-to/pictures/${row.picture[0]}`, alt: row.picture[1] }),
      h("p", {}, row.picture[1])],
    Torques: ({ shown }) => paragraphs(shown.torques.map(({ name, text = "look it up for this vehicle", note }) => (
      `${capital(name.replaceAll("-", " "))}: ${text}. ${note || ""}`))),
    Pins: async (walk) => (await walk.load("pins") ? baytreeFace.pinParts(walk) : paragraphs(["The drawing didn't load."])),
    "Write down": (walk) => noteFields(walk),
    Wait: (walk) => [h("p", {}, `This takes ${walk.shown.wait} minutes without you. Pause the job, and go on with another.`),
      button("Pause, start the clock", () => closeSheet(() => pause(walk, Number(walk.shown.wait))), { class: "w-go" })],
  };

  const look = async (walk, name) => openSheet(name, ...await CONTENT[name](walk));

  // The trail

  function trail(walk) {
    const { state } = walk;
    openSheet("What was done", h("ol", { class: "w-done" }, state.steps.map((one, index) => h("li", {},
      entryWords(walk, one), one.kind === "check" && one.event >= 0
        && button("Change", () => closeSheet(() => changeSheet(walk, index)), { class: "w-quiet" })))),
    state.struck.length > 0 && h("h3", {}, "No longer follows"),
    state.struck.length > 0 && h("ul", { class: "w-done" }, state.struck.map((one) => h("li", {}, h("s", {}, entryWords(walk, one))))));
  }

  function entryWords(walk, one) {
    return h("span", {}, asked(one.kind === "verify" ? doneWords(walk, one) : one.seen || doneWords(walk, one)), h("b", {}, answerWords(walk, one)), one.means ? ` (${one.means})` : "",
      Object.values(one.wrote).length ? `: ${Object.values(one.wrote).join("; ")}` : "", notTicked(walk, one));
  }

  // What was to be changed at the vehicle and wasn't ticked when the step was left, for who goes on.
  function notTicked({ tables, state }, { event, stated }) {
    while (state && state.done.length > event) state = state.before;
    if (event < 1 || stated || state?.done.length !== event) return "";
    const lines = linesOf(tables, state, planOf(tables, state)).filter(({ of }, at) => of !== "do" && !state.ticked.includes(at));
    return lines.length > 0 && h("small", {}, `Not ticked: ${lines.map(({ text }) => text).join("; ")}`);
  }

  function changeSheet(walk, index) {
    const { tables, state } = walk, entry = state.steps[index];
    const row = withRanges(tables, { ...state, frames: [{ ...state.frames[0], inside: entry.inside, step: entry.step }] },
      tableOf(tables, entry.inside).steps[entry.step]);
    const typed = {};
    const boxes = row.readings.map(({ name, unit }, at) => {
      const box = textBox(`w-change-${at}`, { placeholder: entry.readings[name]?.typed || unit, typed: ({ value }) => { typed[name] = value.trim(); } });
      return labeled(capital(name || "reading"), box);
    });
    const send = async (event) => {
      if (await walk.load("correct")) closeSheet(() => walk.send({ event: "correct", index, ...event }));
    };
    openSheet(row.text, h("p", {}, `Was: ${answerWords(walk, entry)}`), ...boxes,
      boxes.length > 0 && button("Change the reading", () => send({ readings: typed }), { class: "w-go" }),
      h("div", { class: "w-results rows" }, row.results.map((result, at) => button(
        [h("b", {}, capital(rangeWords(row, result))), boxes.length > 0 && h("span", {}, "stated, not measured")],
        () => send({ result: at, ...(boxes.length || row.by ? { stated: true } : {}) })))));
  }

  // Where the tree has no way on: a line for the person to call; `missing` says why it is needed.

  const none = (walk) => stuckSheet(walk, "none_of_these", ["None of these", "What did you see?", "No answer here fits"],
    "Write one line of what you saw: the next person needs it.");
  const cannot = (walk) => stuckSheet(walk, "cannot_test", ["Can’t test", "What’s in the way? (optional)", "It can’t be tested"]);

  function stuckSheet(walk, event, [title, question, words], missing = "") {
    const box = textBox("w-seen", { maxlength: "200", enter: () => go() });
    const wrong = h("p", { class: "w-wrong", role: "alert" });
    const { stuck } = walk.tables.shop;
    const go = () => {
      const seen = box.value.trim();
      if (missing && !seen) { wrong.textContent = missing; box.focus(); return; }
      closeSheet(() => walk.send({ event, ...(seen ? { seen } : {}) }));
    };
    openSheet(title, labeled(question, box), wrong,
      button([h("b", {}, words), h("span", {}, `Call ${stuck.call || "the foreman"}`)], go, { class: "w-go", "data-do": "confirm" }));
    box.focus();
  }

  // The job

  function pause(walk, minutes) {
    walk.job.until = minutes ? `${new Date(Date.now() + minutes * 60000).toISOString().slice(0, 19)}Z` : "";
    return walk.send({ event: "pause" });
  }

  // The start of a job, with another vehicle or complaint: the same events are played after it.
  async function rewriteStart(walk, change) {
    const [start, ...rest] = walk.state.events;
    const state = await walk.played([{ ...start, ...change }, ...rest]);
    if (state.refused) { walk.say(`That doesn't go with what was done: ${state.refused}`); return false; }
    walk.state = state;
    return true;
  }

  async function describe(walk, more) {
    Object.assign(walk.job, more);
    if ("said" in more) await rewriteStart(walk, { complaint: more.said });
    walk.keep();
    walk.redraw();
  }

  async function setVehicle(walk, vehicle) {
    if (await rewriteStart(walk, { vehicle })) { walk.keep(); walk.redraw(); }
  }

  async function remove({ tables, job, root }) {
    await baytreeStore.remove(tables.names.shop, job.id);
    location.href = `${root}index.html`;
  }

  async function vinWords(walk, text) {
    if (!text.trim() || !await walk.load("vin")) return [];
    const { lines, mistakes } = baytreeCalculators.answer("vin", { vin: text, class: baytreeTrade.calculators.vin.light });
    return [...Object.values(mistakes), ...lines.filter(({ label }) => label !== "VIN").map(({ label, text: words }) => `${label}: ${words}`)];
  }

  function job(walk) {
    const { job: known, state } = walk;
    const text = (name, label, more = {}) => labeled(label, textBox(`w-job-${name}`, { maxlength: "60", value: known[name] || "",
      changed: ({ value }) => describe(walk, { [name]: value.trim().replace(name === "order" ? /^RO\s*#?\s*/i : "", "") }), ...more }));
    const to = textBox("w-to", { maxlength: "60" }), name = () => to.value.trim();
    const vin = text("vin", "VIN", { maxlength: "24", autocapitalize: "characters" });
    const checked = h("p", { class: "w-vin", role: "status" });
    const check = async () => { checked.replaceChildren(...paragraphs(await vinWords(walk, vin.querySelector("input").value))); };
    vin.querySelector("input").addEventListener("change", check);
    openSheet("Job", text("order", "Repair order"), vehicleChoice(walk), h("div", { class: "w-two" }, text("year", "Year", { inputmode: "numeric" }), text("make", "Make")),
      text("model", "Model"), vin, checked,
      h("div", { class: "w-two" }, text("mileage", "Mileage"), text("customer", "Customer")),
      text("codes", "DTCs read, each with its status", { maxlength: "300" }), text("said", "Complaint, in the customer's words"), text("who", "Your name"),
      h("p", { class: "w-for" }, walk.awake ? "The screen stays on." : "The screen may go dark: this browser can't keep it on here."),
      h("div", { class: "w-stack" },
        state.paused ? null : button("Pause", () => closeSheet(() => pause(walk, 0))),
        state.paused ? null : labeled("Hand over to", to),
        state.paused ? null : button("Hand over", () => closeSheet(() => walk.send({ event: "hand_over", ...(name() ? { to: name() } : {}) }))),
        button("Save the record as a file", () => baytreeEnds.saveRecord(walk), { "data-do": "record" }),
        walk.practice ? null : button("Practice this tree", () => closeSheet(() => walk.startPractice())),
        button("Delete this job", () => { if (confirm("Delete this job for good?")) closeSheet(() => remove(walk)); }),
        h("a", { class: "w-link", href: `${walk.root}index.html#jobs` }, "All jobs"),
        button("The whole tree as a list", () => closeSheet(() => walk.leave()))));
    if (known.vin) check();
  }

  function vehicleChoice(walk) {
    const vehicles = Object.entries(walk.tables.shop.vehicles);
    if (!vehicles.length) return null;
    const select = h("select", { id: "w-vehicle", changed: ({ value }) => setVehicle(walk, value) }, h("option", { value: "" }, "Another vehicle"),
      vehicles.map(([id, { text }]) => h("option", { value: id, selected: id === walk.state.vehicle }, text)));
    return labeled("Vehicle with data here", select);
  }

  return { openSheet, closeSheet, look, trail, none, cannot, job };
})();
