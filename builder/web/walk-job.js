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
  const { stepWords, stepNumber, capital } = baytreeWords;
  const { h } = baytreeParts;
  const store = baytreeStore;
  // What not every step needs is loaded where it comes, in this order.
  const PIECES = {
    readings: ["quantities.js", "follow.js", "walk-measured.js", "walk-readings.js"],
    computed: ["expressions.js"],
    fill: ["quantities.js", "walk-fill.js", "walk-asks.js"],
    paused: ["walk-resumed.js"],
    fix: ["walk-ends.js"],
    sheet: ["walk-ends.js", "walk-sheets.js", "walk-papers.js"],
    pins: ["connector-face.js"],
    correct: ["walk-correct.js"],
    vin: ["quantities.js", "expressions.js", "calculator-data.js", "calculator-answers.js"],
    practice: ["quantities.js", "follow.js", "walk-measured.js", "expressions.js", "walk-fill.js", "walk-practice.js"],
  };
  const OF_RECORD = ["title", "order", "vin", "year", "make", "model", "mileage", "customer", "codes"];
  const SOON = 2000; // milliseconds
  const saveFirst = "Save the record as a file before you close the page.";
  const NOT_KEPT = { full: `This browser can't keep the job: its storage is full. ${saveFirst}`,
    denied: `This browser can't keep the job: storage is blocked. ${saveFirst}`,
    elsewhere: "Another tab went on with this job. Reload to see it; nothing from here is kept." };

  const loads = {}, here = new Set();
  function load(name) {
    return loads[name] ||= new Promise((resolve) => {
      const node = h("script", { src: `${walk.root}${name}` });
      node.async = false; // loaded side by side, run in turn
      node.addEventListener("load", () => { here.add(name); resolve(true); });
      node.addEventListener("error", () => { delete loads[name]; resolve(false); });
      document.head.append(node);
    });
  }

  const filesOf = (pieces) => pieces.flatMap((piece) => PIECES[piece]).map((name) => `assets/${name}`);
  walk.has = (...pieces) => filesOf(pieces).every((name) => here.has(name));
  walk.load = async (...pieces) => {
    const names = filesOf(pieces), isWhole = !(await Promise.all(names.map(load))).includes(false);
    for (const name of isWhole ? [] : names) { delete loads[name]; here.delete(name); } // each needs those before it
    return isWhole;
  };

  // A sheet over the step: they are loaded with the first.
  walk.sheet = async (name, ...more) => {
    if (await walk.load("sheet")) return baytreeSheets[name](walk, ...more);
    return walk.say("That didn’t load. Try again where there is a network.");
  };

  // What a walk may come to need is fetched once its first step is there, while there is a network.
  const loadRest = () => { if (location.protocol !== "file:") setTimeout(() => walk.load(...Object.keys(PIECES)), SOON); };

  async function loadTables() {
    await load("walks/shop.js");
    await load(`walks/${walk.tree}.js`);
    walk.tables = baytreeTables;
  }

  // Plays the events of a job; a tree that they lead to is loaded on the way, and what few steps need.
  walk.played = async (events) => {
    if (events.length > 1) await walk.load("readings", "computed", "fill", "correct");
    for (;;) {
      const state = replay(walk.tables, events);
      if (!state.load || !await load(`walks/${state.load}.js`)) return state;
    }
  };

  // The job

  const now = () => `${new Date().toISOString().slice(0, 19)}Z`;
  const shopName = () => walk.tables.names.shop;

  async function begin(enter = "") {
    const said = await store.wordsFor(shopName(), walk.tree), vehicle = new URLSearchParams(location.search).get("vehicle");
    const id = Date.now().toString(36) + Math.random().toString(36).slice(2, 6);
    walk.job = { id, tree: walk.tree, said, saved: 0 };
    walk.state = await walk.played([{ event: "start", tree: walk.tree, ...(vehicle in walk.tables.shop.vehicles && { vehicle }),
      ...(said && { complaint: said }), ...(enter && { enter }), at: now() }]);
  }

  async function resume(id) {
    const job = await store.read(shopName(), id);
    if (!job) return false;
    const [state] = await Promise.all([walk.played(job.events), walk.load("paused")]);
    walk.job = job;
    walk.state = state.refused ? state.state : state;
    walk.job.misfit = state.refused || "";
    return true;
  }

  walk.rowAt = (place) => {
    const [inside, step] = partsOfPlace(place);
    return tableOf(walk.tables, inside)?.steps[step];
  };

  // Tells a step that was changed since from one that wasn't.
  walk.hashOf = (place) => {
    let hash = 0;
    for (const one of JSON.stringify(walk.rowAt(place)) || "") hash = (Math.imul(hash, 31) + one.charCodeAt(0)) | 0;
    return hash;
  };

  walk.keep = async () => {
    const { job, state } = walk;
    if (walk.practice || (state.events.length < 2 && !job.order)) return;
    const rows = [...state.steps.slice(-1), top(state)].map(placeOf).map((place) => [place, walk.hashOf(place)]);
    Object.assign(job, { saved: job.saved + 1, at: now(), events: state.events, page: walk.tree,
      rows: { ...job.rows, ...Object.fromEntries(rows) }, title: walk.tables.trees[state.tree].title,
      vehicle: walk.tables.shop.vehicles[state.vehicle]?.text || [job.year, job.make, job.model].filter(Boolean).join(" "),
      step: stepNumber(state), where: stepWords(walk.tables, state), over: walk.shown.phase === "end", hash: walk.address() });
    const wrong = job.isElsewhere ? "elsewhere" : await store.write(shopName(), { ...job, record: walk.record() });
    job.isElsewhere = wrong === "elsewhere";
    if (wrong) walk.say(NOT_KEPT[wrong]);
  };

  walk.record = () => {
    const job = OF_RECORD.map((name) => [name, walk.job[name]]).filter(([, value]) => value);
    return { ...recordOf(walk.state), job: Object.fromEntries(job) };
  };

  // A refusal as a sentence.
  walk.inWords = (words) => capital(words.replace(/`([^`]*)`/g, "“$1”"));

  return { now, load, loadRest, loadTables, begin, resume };
};
