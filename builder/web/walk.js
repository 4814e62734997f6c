/* A walk in the page: one step, one screen. It starts the job, takes events, keeps it, draws.
 *
 * In: the button `data-do="start"` of a tree's page, the address (`#walk`, `#walk/<step>/<job>`). Out:
 * the screen in `<main id="walk">`, over the page. Without scripts the page is the list of steps.
 */
"use strict";
(() => {
  const { BEGINNING, reduce, toolsOf } = baytreeReduce;
  const { screen } = baytreeRecord;
  const { top, rowOf } = baytreeTold;
  const { withRanges } = baytreeSpecs;
  const { h } = baytreeParts;
  const step = baytreeStep, store = baytreeStore;
  const startButton = document.querySelector('[data-do="start"]');
  const { tree, root } = startButton?.dataset || {};
  const main = h("main", { id: "walk", hidden: true });
  const notice = h("p", { id: "walk-notice", role: "alert" });
  const PRACTICE = "practice"; // in the address, in the place of a job
  const walk = { tree, root, tables: null, job: null, state: BEGINNING, view: null, staysLow: true, awake: false };
  const { now, load, loadRest, loadTables, begin, resume, shopName } = baytreeJob(walk);
  const { fit, settle } = baytreeFit(walk, main, draw);
  const depthOf = (state) => { let depth = 0; for (; state.before; state = state.before) depth += 1; return depth; };

  // Events

  const after = (event) => reduce(walk.tables, walk.state, { ...event, at: now(), ...(walk.job.who ? { who: walk.job.who } : {}) });

  // Lines that were done with the screen: no screen of their own, and Back undoes them with it.
  walk.tick = (lines) => { for (const line of lines) walk.state = after({ event: "tick", line }); if (lines.length) walk.keep(); };

  walk.send = async (event) => {
    const following = after(event);
    if (following.load && await load(`walks/${following.load}.js`)) return walk.send(event);
    if (!following.refused) walk.practice?.count(walk, event);
    if (following.refused) return walk.say(following.load ? "That tree isn't here: open it from the list of trees." : walk.inWords(following.refused));
    if (walk.state.events.length === 1) store.keep();
    if (event.event === "resume") walk.job.until = "";
    walk.state = following;
    const stays = ["tick", "write_up"].includes(event.event) || (event.event === "acknowledge" && walk.view.face === "together");
    await arrive(stays);
    if (stays && event.event === "acknowledge") focusHeading();
    return walk.keep();
  };

  walk.confirm = () => {
    const { shown, view } = walk;
    if (shown.phase === "fill") return walk.send(baytreeAsks.fillEvent(walk));
    if (shown.kind === "check") { const event = step.answerOf(walk); return event && walk.send(event); }
    const wrote = step.written(view);
    return walk.send({ event: "done", ...(Object.keys(wrote).length ? { wrote } : {}) });
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
    const before = history.state || {}, entry = { walk: depthOf(walk.state), face, pushed: (before.pushed || 0) + (replaces ? 0 : 1) };
    history[replaces ? "replaceState" : "pushState"](entry, "", walk.address());
  }

  addEventListener("popstate", ({ state }) => {
    const sheet = document.querySelector("dialog.w-sheet[open]");
    if (sheet && !state?.sheet) { sheet.close(); return; }
    if (!location.hash.startsWith("#walk")) { hide(); return; }
    if (!walk.job || main.hidden) { open(); return; }
    if (state?.walk === undefined || (state.walk === depthOf(walk.state) && state.face === walk.view.face)) return;
    if (state.walk < depthOf(walk.state)) undoTo(state.walk);
    else if (state.walk === depthOf(walk.state)) turnTo(state.face);
    else arrive(false, firstFace()); // what was undone isn't done again
  });

  // Drawing

  walk.go = (face) => { remember(false, face); turnTo(face); };
  walk.redraw = () => { look(); keepFocus(show); };
  walk.pick = (at) => { walk.view.pick = walk.view.pick === at ? null : at; walk.pad(null, false); walk.verdict(); };
  walk.unpick = () => {
    const { view } = walk, again = view.pick === null ? "[data-reading]" : `[data-result="${view.pick}"]`;
    if (view.pick === null) view.typed = {};
    view.pick = null;
    show();
    main.querySelector(again)?.focus();
  };

  function turnTo(face) { walk.view.face = face; show(); focusHeading(); }

  // Comes to a screen: a new view, unless only a line was ticked.
  async function arrive(stays, face) {
    const place = walk.shown && `${walk.shown.in}#${walk.shown.step} ${walk.shown.phase}`;
    look();
    await loadWanted();
    if (!stays) main.classList.remove("typing");
    if (!stays) walk.view = { typed: {}, units: {}, pick: null, wrote: {}, face: face || firstFace(), moved: false, columns: false, pad: false };
    walk.say("");
    if (stays) keepFocus(show);
    else { draw(); fit(face); settle(); }
    document.title = `${walk.shown.text || walk.tables.trees[tree].title} - ${shopName()}`;
    if (place === undefined || stays || face) remember(true, walk.view.face);
    else remember(false, walk.view.face);
    if (!stays) focusHeading();
  }

  // What few steps need is loaded where they come; until it is there, nothing on the old screen works.
  async function loadWanted() {
    const { shown: { phase, kind }, row } = walk, wanted = [
      ["fill", "paused"].includes(phase) && phase, (phase === "end" || kind === "fix") && "fix",
      row.readings?.length && "readings", row.computed?.length && "computed"].filter(Boolean);
    walk.lacks = false;
    if (walk.has(...wanted)) return;
    main.inert = true;
    walk.lacks = !await walk.load(...wanted);
    main.inert = false;
  }

  // Cautions hold up a step and a test after the repair; at an end nothing is done any more.
  const mustRead = ({ unread, phase }) => unread && phase !== "end";
  const firstFace = () => (mustRead(walk.shown) ? "ready" : "step");

  function faceNow() {
    const { shown: { phase, kind }, view } = walk;
    if (walk.lacks) return step.lackingFace(walk);
    if (phase === "paused") return baytreeResumed.pausedFace(walk);
    if (phase === "fill") return baytreeAsks.fillFace(walk);
    if (phase === "end") return baytreeEnds.overFace(walk);
    if (view.face === "ready") return step.readyFace(walk);
    if (phase === "verify") return baytreeEnds.verifyFace(walk);
    if (view.face === "first") return step.firstFace(walk);
    if (kind === "fix") return baytreeEnds.fixFace(walk);
    return kind === "check" ? step.checkFace(walk) : step.actionFace(walk);
  }

  // What is to be shown at the step: computed once, drawn as often as looks are tried.
  function look() {
    const { tables, state } = walk;
    walk.shown = screen(tables, state);
    walk.row = withRanges(tables, state, rowOf(tables, top(state)));
    walk.tools = toolsOf(tables, walk.row);
  }

  const show = () => { draw(); settle(); };

  // What was ticked or chosen is drawn anew, and the keys stay on it.
  function keepFocus(draws) {
    const controls = () => [...main.querySelectorAll("button, input, select")], at = controls().indexOf(document.activeElement);
    draws();
    controls()[at]?.focus({ preventScroll: true });
  }

  // The answers come once the cautions are read: until then the bar is there for that alone.
  function draw() {
    const { state, shown, view } = walk, frame = top(state), face = faceNow();
    const { step: parts, answers, bar, end } = mustRead(shown) && !view.isRead && face.bar ? { ...face, answers: [], bar: step.readBar(walk) } : face;
    const filled = (list = []) => list.flat(3).filter(Boolean);
    main.replaceChildren(step.head(walk), h("div", { class: "w-body", "data-step": frame.step, "data-in": frame.inside,
      "data-end": end && (state.end.kind === "stuck" ? "stuck" : state.end.step) },
    h("div", { class: "w-step" }, ...filled(parts)),
    bar && h("section", { class: `w-answers${walk.staysLow ? " stays" : ""}`, "aria-label": "Answers" }, ...filled(answers), h("div", { class: "w-bar", "aria-live": "polite" }, ...filled(bar)))));
  }

  // Only what the reading changes is drawn again: the field keeps its place.
  walk.verdict = () => {
    const verifies = walk.shown.phase === "verify";
    if (!verifies) step.judge(walk);
    main.querySelectorAll("[data-result]").forEach((node) => {
      const state = step.resultState(walk, Number(node.dataset.result));
      node.className = state.class;
      node.setAttribute("aria-pressed", state["aria-pressed"]);
    });
    main.querySelector(".w-bar").replaceChildren(...(verifies ? baytreeEnds.verifyBar : step.checkBar)(walk).filter(Boolean));
    history.replaceState({ ...history.state, typed: walk.view.typed }, "");
  };

  // Opens the pad for a field, or closes it.
  walk.pad = (box, draws = true) => {
    walk.view.pad = Boolean(box);
    main.classList.toggle("typing", Boolean(box));
    main.querySelector(".w-pad")?.remove();
    if (box) main.querySelector(".w-bar").before(baytreeReadings.pad(walk, box));
    if (draws) settle();
  };

  function focusHeading() {
    scrollTo(0, 0);
    main.querySelector("h1")?.focus({ preventScroll: true });
  }

  walk.say = (words) => {
    notice.textContent = words;
    if (words) main.querySelector(".w-head")?.after(notice);
    else notice.remove();
  };

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
    if (id === PRACTICE) await hideFault();
    else if (!id || !await resume(id)) {
      await begin(place.includes(":") ? "" : place);
      if (walk.state.refused) await begin();
      else if (place) words = "You start in the middle: what comes before counts as stated, not measured.";
    } else words = globalThis.baytreeResumed?.changedWords(walk) || "";
    document.documentElement.classList.add("walking");
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
    document.documentElement.classList.remove("walking");
    main.hidden = true;
  }

  async function stayAwake() {
    try { walk.awake = Boolean(await navigator.wakeLock?.request("screen")); } catch { walk.awake = false; }
  }

  if (!startButton) return;
  const opensAt = (link, address) => link.addEventListener("click", (event) => {
    event.preventDefault();
    history.pushState({ pushed: 1 }, "", address);
    open();
  });
  opensAt(startButton, "#walk");
  document.documentElement.classList.add("walks");
  document.querySelectorAll("[data-enter]").forEach((link) => opensAt(link, `#walk/${link.dataset.enter}`));
  document.addEventListener("visibilitychange", () => { if (!document.hidden && !main.hidden) stayAwake(); });
  addEventListener("resize", () => { if (!main.hidden && walk.view) settle(); });
  if (location.hash.startsWith("#walk")) open();
})();
