/* A walk in the page: one step, one screen. It starts the job, takes events, keeps it.
 *
 * In: the button `data-do="start"` of a tree's page, the address (`#walk`, `#walk/<step>/<job>`). Out:
 * the screen in `<main id="walk">`, over the page. Without scripts the page is the list of steps.
 */
"use strict";
(() => {
  const { BEGINNING, reduce } = baytreeReduce;
  const { top } = baytreeTold;
  const { h } = baytreeParts;
  const startButton = document.querySelector('[data-do="start"]');
  if (!startButton) return;
  const { tree, root } = startButton.dataset, looks = document.documentElement.classList;
  const main = h("main", { id: "walk", hidden: true });
  const PRACTICE = "practice"; // in the address, in the place of a job
  const walk = { tree, root, state: BEGINNING, staysLow: true };
  const { now, load, loadRest, loadTables, begin, resume } = baytreeJob(walk);
  const { come, turnTo, show, settle, firstFace, focusHeading } = baytreeDraw(walk, main);
  const depthOf = (state) => { let depth = 0; for (; state.before; state = state.before) depth += 1; return depth; };

  // Events

  const after = (event) => reduce(walk.tables, walk.state, { ...event, at: now(), ...(walk.job.who && { who: walk.job.who }) });

  // Lines that were done with the screen: no screen of their own, and Back undoes them with it.
  walk.tick = (lines) => { for (const line of lines) walk.state = after({ event: "tick", line }); if (lines.length) walk.keep(); };

  walk.send = async (event) => {
    const following = after(event);
    if (following.load && await load(`walks/${following.load}.js`)) return walk.send(event);
    if (following.refused) return walk.say(following.load ? "That tree isn't here: open it from the list of trees." : walk.inWords(following.refused));
    walk.practice?.note(walk, event);
    if (walk.state.events.length === 1) baytreeStore.keep();
    if (event.event === "resume") walk.job.until = "";
    walk.state = following;
    const stays = ["tick", "write_up"].includes(event.event) || (event.event === "acknowledge" && walk.view.face === "together");
    await arrive(stays);
    if (stays && event.event === "acknowledge") focusHeading();
    return walk.keep();
  };

  walk.confirm = () => {
    const { shown } = walk;
    if (shown.phase === "fill") return walk.send(baytreeAsks.fillEvent(walk));
    if (shown.kind === "check") { const event = baytreeCheck.answerOf(walk); return event && walk.send(event); }
    return walk.send({ event: "done", ...baytreeStep.written(walk) });
  };

  // One step back in the history; the screen follows in `popstate`.
  walk.back = () => {
    if (history.state?.pushed) return history.back();
    if (!walk.state.before) return walk.leave();
    return undoTo(depthOf(walk.state) - 1);
  };

  async function undoTo(depth) {
    while (depthOf(walk.state) > depth && walk.state.before) walk.state = reduce(walk.tables, walk.state, { event: "back", at: now() });
    await arrive(false, history.state?.face);
    walk.keep();
  }

  walk.leave = () => { history.pushState(null, "", `${location.pathname}${location.search}`); hide(); };

  // The address of each step, and the history

  walk.address = () => {
    const { inside, step: id } = top(walk.state);
    const place = inside === tree ? id : [inside.replace("/", ":"), id].join(":");
    return `#walk/${place}/${walk.practice ? PRACTICE : walk.job.id}`;
  };

  function remember(replaces, face) {
    const entry = { walk: depthOf(walk.state), face, pushed: (history.state?.pushed || 0) + (replaces ? 0 : 1) };
    history[replaces ? "replaceState" : "pushState"](entry, "", walk.address());
  }

  addEventListener("popstate", ({ state }) => {
    const sheet = document.querySelector("dialog.w-sheet[open]");
    if (sheet && !state?.sheet) { sheet.close(); return; }
    if (!location.hash.startsWith("#walk")) { hide(); return; }
    if (!walk.job || main.hidden) { open(); return; }
    const depth = depthOf(walk.state), place = state?.walk;
    if (place === undefined || (place === depth && state.face === walk.view.face)) return;
    if (place < depth) undoTo(place);
    else if (place === depth) turnTo(state.face);
    else arrive(false, firstFace()); // what was undone isn't done again
  });

  // Comes to a screen, a new one unless only a line was ticked.
  async function arrive(stays, face) {
    const isFirst = walk.shown === undefined;
    await come(stays, face);
    remember(isFirst || stays || face, walk.view.face);
  }

  walk.go = (face) => { remember(false, face); turnTo(face); };

  // A vehicle with a hidden fault, in a job that isn't kept.
  async function hideFault() {
    await walk.load("practice");
    walk.practice = new baytreePractice.Practice(walk.tables, tree, baytreePractice.drawn(walk.tables, tree));
    await begin();
  }

  walk.startPractice = async () => { await hideFault(); await arrive(false); };

  // Opening and closing

  async function open() {
    const [, place = "", id = ""] = location.hash.slice(1).split("/").map(decodeURIComponent);
    if (!walk.tables) await loadTables();
    let words = "";
    walk.practice = null;
    if (id === PRACTICE) await hideFault();
    else if (!id || !await resume(id)) {
      if (id) words = "This job is no longer in this browser. ";
      await begin(place.includes(":") ? "" : place);
      if (walk.state.refused) await begin();
      else if (place) words += "You start in the middle: what comes before counts as stated, not measured.";
    } else words = globalThis.baytreeResumed?.changedWords(walk) || "";
    looks.add("walking");
    main.hidden = false;
    if (!main.isConnected) document.body.append(main);
    const typed = history.state?.typed;
    walk.shown = undefined;
    await arrive(false, history.state?.walk === depthOf(walk.state) ? history.state.face : "");
    if (typed) { walk.view.typed = typed; show(); }
    if (words) walk.say(words);
    loadRest();
    stayAwake();
  }

  function hide() {
    looks.remove("walking");
    main.hidden = true;
  }

  async function stayAwake() {
    try { walk.awake = Boolean(await navigator.wakeLock?.request("screen")); } catch { walk.awake = false; }
  }

  const opensAt = (link, address) => link.addEventListener("click", (event) => {
    event.preventDefault();
    history.pushState({ pushed: 1 }, "", address);
    open();
  });
  opensAt(startButton, "#walk");
  looks.add("walks");
  document.querySelectorAll("[data-enter]").forEach((link) => opensAt(link, `#walk/${link.dataset.enter}`));
  document.addEventListener("visibilitychange", () => { if (!document.hidden && !main.hidden) stayAwake(); });
  addEventListener("resize", () => { if (!main.hidden && walk.view) settle(); });
  if (location.hash.startsWith("#walk")) open();
})();
