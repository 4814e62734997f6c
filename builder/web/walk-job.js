/* The job of a walk: begun, kept, taken up again; the tables that its events need.
 *
 * In: the walk, with its tree and the way to the site's root. Out: `baytreeJob`, functions on it. Each
 * table is a script of its own, because a page opened from a folder can load no data.
 */
"use strict";
globalThis.baytreeJob = (walk) => {
  const { replay } = baytreeReduce;
  const { recordOf } = baytreeRecord;
  const { top, tableOf, placeOf, partsOfPlace } = baytreeTold;
  const { stepWords, capital } = baytreeWords;
  const { h } = baytreeParts;
  const store = baytreeStore;

  const loads = {};
  function load(name) {
    return loads[name] ||= new Promise((resolve) => {
      const node = h("script", { src: `${walk.root}${name}` });
      node.addEventListener("load", () => resolve(true));
      node.addEventListener("error", () => { delete loads[name]; resolve(false); });
      document.head.append(node);
    });
  }

  walk.load = load;

  async function loadTables() {
    await load("walks/shop.js");
    await load(`walks/${walk.tree}.js`);
    walk.tables = baytreeTables;
  }

  // Plays the events of a job; a tree that they lead to is loaded on the way.
  async function played(events) {
    for (;;) {
      const state = replay(walk.tables, events);
      if (!state.load || !await load(`walks/${state.load}.js`)) return state;
    }
  }

  // The job

  const now = () => `${new Date().toISOString().slice(0, 19)}Z`;
  const shopName = () => walk.tables.names.shop;

  async function begin(enter = "") {
    const said = await store.wordsFor(shopName(), walk.tree), vehicle = new URLSearchParams(location.search).get("vehicle");
    const id = Date.now().toString(36) + Math.random().toString(36).slice(2, 6);
    walk.job = { id, tree: walk.tree, said, saved: 0 };
    walk.state = await played([{ event: "start", tree: walk.tree, ...(vehicle in walk.tables.shop.vehicles ? { vehicle } : {}),
      ...(said ? { complaint: said } : {}), ...(enter ? { enter } : {}), at: now() }]);
  }

  async function resume(id) {
    const job = await store.read(shopName(), id);
    if (!job) return false;
    const state = await played(job.events);
    walk.job = job;
    walk.state = state.refused ? state.state : state;
    walk.job.misfit = state.refused || "";
    return true;
  }

  // What is different in the tree since this job went through it.
  function changedWords() {
    const { rows = {}, misfit, record: { revision } = {} } = walk.job;
    const changed = Object.entries(rows).filter(([place, hash]) => hashOf(place) !== hash);
    const texts = changed.map(([place]) => rowAt(place)?.text || partsOfPlace(place)[1]);
    if (misfit) return `This tree changed since: the job goes on where it still fits. ${walk.inWords(misfit)}`;
    if (texts.length) return `This tree changed since you began. Different now: ${texts.join("; ")}.`;
    return revision && revision !== walk.tables.trees[walk.state.tree].revision
      ? "This tree changed since this job was last saved, but not in the steps that you did." : "";
  }

  function rowAt(place) {
    const [inside, step] = partsOfPlace(place);
    return tableOf(walk.tables, inside)?.steps[step];
  }

  function hashOf(place) {
    let hash = 0;
    for (const one of JSON.stringify(rowAt(place)) || "") hash = (Math.imul(hash, 31) + one.charCodeAt(0)) | 0;
    return hash;
  }

  async function keep() {
    const { job, state } = walk;
    if (walk.practice || (state.events.length < 2 && !job.order)) return;
    const place = placeOf(top(state)), other = await store.read(shopName(), job.id);
    if (other && other.saved > job.saved) { walk.say("Another tab went on with this job. Reload to see it; nothing from here is kept."); return; }
    Object.assign(job, { saved: job.saved + 1, at: now(), events: state.events, page: walk.tree,
      rows: { ...job.rows, [place]: hashOf(place) }, title: walk.tables.trees[state.tree].title,
      vehicle: walk.tables.shop.vehicles[state.vehicle]?.text || [job.year, job.make, job.model].filter(Boolean).join(" "),
      step: state.steps.length + 1, where: stepWords(walk.tables, state), over: Boolean(walk.shown?.phase === "end"), hash: walk.address() });
    const wrong = await store.write(shopName(), { ...job, record: walk.record() });
    if (wrong) walk.say(`This browser can't keep the job (${wrong === "full" ? "its store is full" : "storing is blocked"}). Save the record as a file before you close the page.`);
  }

  walk.record = () => {
    const { order, vin, year, make, model, mileage, customer, codes, title } = walk.job;
    const job = Object.fromEntries(Object.entries({ title, order, vin, year, make, model, mileage, customer, codes }).filter(([, value]) => value));
    return { ...recordOf(walk.state), job };
  };

  // The start of a job, with another vehicle or complaint: the same events are played after it.
  async function rewriteStart(change) {
    const [start, ...rest] = walk.state.events;
    const state = await played([{ ...start, ...change }, ...rest]);
    if (state.refused) { walk.say(`That doesn't go with what was done: ${state.refused}`); return false; }
    walk.state = state;
    return true;
  }

  walk.vinWords = async (text) => {
    if (!text.trim()) return [];
    await load("assets/calculator-data.js");
    await load("assets/calculator-answers.js");
    const { lines, mistakes } = baytreeCalculators.answer("vin", { vin: text, class: baytreeTrade.calculators.vin.light });
    return [...Object.values(mistakes), ...lines.filter(({ label }) => label !== "VIN").map(({ label, text: words }) => `${label}: ${words}`)];
  };

  // A refusal as a sentence.
  walk.inWords = (words) => capital(words.replace(/`([^`]*)`/g, "“$1”"));

  return { now, load, loadTables, begin, resume, changedWords, keep, rewriteStart, shopName };
};
