/* The drawing of a walk: its screen, the pad, what is said above it.
 *
 * In: the walk, its element. Out: `baytreeDraw`: `come` draws the screen where the walk stands, others
 * draw it again. What is drawn is in `walk.view`, what is to be shown in `walk.shown`.
 */
"use strict";
globalThis.baytreeDraw = (walk, main) => {
  const { top, rowOf } = baytreeTold;
  const { h } = baytreeParts;
  const step = baytreeStep, check = baytreeCheck;
  const notice = h("p", { id: "walk-notice", role: "alert" });
  const { fit, settle } = baytreeFit(walk, main, draw);

  // Comes to a screen: a new view, unless only a line was ticked.
  async function come(stays, face) {
    look();
    await loadWanted();
    walk.say("");
    if (stays) { keepFocus(); return; }
    main.classList.remove("typing");
    walk.view = { typed: {}, units: {}, pick: null, wrote: {}, face: face || firstFace() };
    document.title = `${walk.shown.text || walk.tables.trees[walk.tree].title} - ${walk.tables.names.shop}`;
    layOut(face);
  }

  function turnTo(face) {
    Object.assign(walk.view, { face, columns: false });
    layOut(face);
  }

  function layOut(face) { draw(); fit(face); settle(); focusHeading(); }

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
    return kind === "check" ? check.checkFace(walk) : step.actionFace(walk);
  }

  // What is to be shown at the step: computed once, drawn again for each layout.
  function look() {
    const { tables, state } = walk;
    walk.shown = baytreeRecord.screen(tables, state);
    walk.row = baytreeSpecs.withRanges(tables, state, rowOf(tables, top(state)));
    walk.tools = baytreeReduce.toolsOf(tables, walk.row);
  }

  const show = () => { draw(); settle(); };

  // What was ticked or chosen is drawn anew, and the keys stay on it.
  function keepFocus() {
    const controls = () => [...main.querySelectorAll("button, input, select")], at = controls().indexOf(document.activeElement);
    show();
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
    if (!verifies) check.judge(walk);
    main.querySelectorAll("[data-result]").forEach((node) => {
      for (const [name, value] of Object.entries(check.resultState(walk, Number(node.dataset.result)))) node.setAttribute(name, value);
    });
    main.querySelector(".w-bar").replaceChildren(...(verifies ? baytreeEnds.verifyBar : check.checkBar)(walk).filter(Boolean));
    history.replaceState({ ...history.state, typed: walk.view.typed }, "");
  };

  // Opens the pad for a field, or closes it.
  walk.pad = (box, draws = true) => {
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

  walk.redraw = () => { look(); keepFocus(); };
  walk.pick = (at) => { walk.view.pick = walk.view.pick === at ? null : at; walk.pad(null, false); walk.verdict(); };
  walk.unpick = () => {
    const { view } = walk, again = view.pick === null ? "[data-reading]" : `[data-result="${view.pick}"]`;
    if (view.pick === null) view.typed = {};
    view.pick = null;
    show();
    main.querySelector(again)?.focus();
  };

  return { come, turnTo, show, settle, firstFace, focusHeading };
};
