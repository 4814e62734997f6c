/* Practice: a vehicle with a hidden fault answers what is measured. Loaded when it is asked for.
 *
 * In: the walk, the fault as a step of its tree. Out: `baytreePractice`: what is seen at a step, and at
 * the end the minutes used against the least. builder/walk/simulated_vehicle and shortest_way do
 * the same for `baytree drill`: the vehicle answers so that the shortest way to the fault is taken.
 */
"use strict";
globalThis.baytreePractice = (() => {
  const { top, rowOf, placeOf, isOver, provedElsewhere } = baytreeTold;
  const { leave, cannotTest, withResult, verifyNext, judgeTest, intoProcedure } = baytreeTargets;
  const { answered } = baytreeAnswers;
  const { NOTHING_SHOWN } = baytreeMeasured;
  const { withRanges } = baytreeSpecs;
  const { BEGINNING, reduce, toolsOf } = baytreeReduce;
  const { screen } = baytreeRecord;
  const MOST_STATES = 4000, LONGEST = 300, TRIES = 300;
  const TAKES_TIME = ["answer", "done", "cannot_test", "none_of_these"]; // events that end a step which was done

  // A fault by its weight.
  function drawn(tables, tree) {
    const { weights } = tables.more[tree], sum = Object.values(weights).reduce((one, other) => one + other, 0);
    if (!sum) return Object.keys(weights)[Math.floor(Math.random() * Object.keys(weights).length)];
    let left = Math.random() * sum;
    return Object.keys(weights).find((fault) => (left -= weights[fault]) < 0);
  }

  // The shortest way

  // Every way to leave a step: a choice, and the state it comes to.
  function choices(tables, state) {
    const row = rowOf(tables, top(state)), bare = { ...state, passed: [], steps: [] };
    if (isOver(state)) return [];
    if (row.kind === "fix") {
      return [state.verifying === null ? ["done", verifyNext(tables, bare, 0)] : ["pass", judgeTest(tables, bare, true)]];
    }
    if (row.kind === "action") return [["done", leave(tables, bare, "done", row.then || "")]];
    const proof = row.by && provedElsewhere(state, row); // the same procedure shows the same again
    const ways = row.by ? [proof ? ["take", withResult(tables, bare, ...proof)] : ["run", intoProcedure(tables, bare, row)]]
      : row.results.map((result, at) => [at, leave(tables, bare, result.text, result.to, result.answers)]);
    return [...ways, ["cannot test", cannotTest(tables, bare)]];
  }

  // What tells two places of a walk apart; counts only where nothing simpler leads there.
  function placeKey(state, counts) {
    const frames = state.frames.map((one) => [placeOf(one), one.came_from[one.step], one.waits, one.items, counts && one.counts]);
    return JSON.stringify([frames, state.end, state.verifying, counts && state.proved]);
  }

  function wayTo(tables, begin, isGoal, counts = false) {
    const queue = [[begin, null]], seen = new Set([placeKey(begin, counts)]);
    for (let at = 0; at < queue.length && seen.size < MOST_STATES; at += 1) {
      const [here, first] = queue[at];
      if (isGoal(here)) return first;
      if (Boolean(here.end) !== Boolean(begin.end)) continue;
      for (const [choice, there] of choices(tables, here)) {
        if (there.refused || there.frames[0].inside !== begin.frames[0].inside) continue;
        const key = placeKey(there, counts);
        if (!seen.has(key)) { seen.add(key); queue.push([there, first ?? choice]); }
      }
    }
    return counts ? null : wayTo(tables, begin, isGoal, true);
  }

  // The vehicle

  class Practice {
    constructor(tables, tree, fault) {
      Object.assign(this, { tables, tree, fault, shown: {}, missed: [] });
    }

    // How the step turns out; what was shown once at a visit stays.
    choiceAt(state) {
      const key = JSON.stringify([placeKey(state, true), state.steps.length]);
      return this.shown[key] ??= this.goals(state).reduce((way, goal) => way ?? wayTo(this.tables, state, goal), null) ?? "cannot test";
    }

    goals(state) {
      if (state.end) return [({ end }) => end?.verified === true, isOver]; // the right repair passes its tests
      const atFault = ({ end }) => end?.kind !== "stuck" && end?.step === this.fault && end.inside === this.tree;
      return [atFault, ({ end }) => Boolean(end) && !["stuck", "fix"].includes(end.kind), ({ end }) => Boolean(end)];
    }

    // What eyes or instruments show at the step, without what it means.
    seen({ state, row, tools, shown }) {
      if (shown.phase === "verify") return "It passes now."; // the right repair does
      if (shown.kind !== "check" || shown.phase !== "step") return "";
      const choice = this.choiceAt(state);
      if (choice === "take") return "The same as before.";
      if (choice === "run") return "Go through the tests: they will show it.";
      if (choice === "cannot test") return "It can't be tested on this vehicle.";
      const readings = this.readingsFor(row, tools, choice, placeKey(state, true));
      return readings ? Object.entries(readings).map(([name, text]) => `${name} ${text}`.trim()).join(", ")
        : shown.results[choice].text;
    }

    readingsFor(row, tools, result, key) {
      if (!row.readings?.length) return null;
      if (Object.values(row.results[result].places || {}).includes("none")) return { [row.readings[0].name]: NOTHING_SHOWN };
      const known = this.shown[`readings ${key}`];
      if (known) return known;
      for (let tries = 0; tries < TRIES; tries += 1) {
        const readings = Object.fromEntries(row.readings.map((one) => [one.name, drawnReading(one, row.results[result].ranges[one.name])]));
        const given = answered(row, tools, { result, readings });
        if (!given.refused && !given.too_close) return this.shown[`readings ${key}`] = readings;
      }
      return null;
    }

    // Notes an answer that isn't what the vehicle showed.
    note({ state, shown, row }, event) {
      if (event.event === "verify" && !event.passed) this.missed.push(shown.verify.text);
      if (shown.kind !== "check" || shown.phase !== "step" || !TAKES_TIME.includes(event.event)) return;
      const given = event.event === "answer" ? answered(row, toolsOf(this.tables, row), event).result : event.event.replace("_", " ");
      if (given !== this.choiceAt(state)) this.missed.push(shown.text);
    }

    // The minutes of a walk by its events, each from the state and the screen before it.
    minutesOf(nextEvent) {
      let state = BEGINNING, minutes = 0;
      for (let number = 0; !state.refused; number += 1) {
        const shown = number ? screen(this.tables, state) : {}, event = nextEvent(state, shown, number);
        if (!event) break;
        if (TAKES_TIME.includes(event.event)) minutes += Number(shown.minutes || 0);
        state = reduce(this.tables, this.allTicked(state, shown), this.measured(state, event));
      }
      return Math.round(minutes);
    }

    // Nothing is known before on this vehicle: an answer that was only stated was seen, after the
    // lines of its step; else what it needs would count again at the next.
    allTicked(state, { lines = [] }) { return { ...state, ticked: [...lines.keys()] }; }

    measured(state, event) {
      const { result, readings, stated, ...more } = event;
      if (!stated) return event;
      const row = this.rowAt(state), all = this.readingsFor(row, toolsOf(this.tables, row), result, placeKey(state, true));
      return all ? { ...more, result, readings: all } : event;
    }

    // The least: the walk of an attentive tech, who takes what is shown; what was looked up is as in the job.
    least({ events }) {
      return this.minutesOf((state, shown, number) => {
        if (!number) return events[0];
        return number < LONGEST && !isOver(state) ? this.rightEvent(state, shown, events) : null;
      });
    }

    rightEvent(state, { asks: [ask] = [], unread }, events) {
      if (ask) {
        const own = events.findLast(({ event, name }) => event === "fill" && name === ask.name);
        return own || { event: "fill", name: ask.name, value: this.filling(ask) };
      }
      if (unread) return { event: "acknowledge", hazards: unread };
      const choice = this.choiceAt(state);
      if (typeof choice === "string") return { event: { pass: "verify", "cannot test": "cannot_test" }[choice] || choice, passed: true };
      return { event: "answer", result: choice, ...(this.rowAt(state).readings.length ? { stated: true } : {}) };
    }

    rowAt(state) { return withRanges(this.tables, state, rowOf(this.tables, top(state))); }

    filling({ name, limits, list, one_of }) {
      if (!limits) return list ? ["first", "second"] : one_of[0] || "per the diagram";
      const values = this.limitsWithin(this.tables.shop.specs[name.slice("spec ".length)], limits.length + 1);
      return list ? values : values[0];
    }

    // 5, 10; where the span ends before that, parts of it, so that a reading can be good.
    limitsWithin({ low, high }, parts) {
      const from = Number(low), to = Number(high), numbers = Array.from({ length: parts - 1 }, (_, at) => at + 1);
      if ((from < 5 && to > 5 * (parts - 1)) || !Number.isFinite(to - from)) return numbers.map((at) => String(5 * at));
      return numbers.map((at) => (from + (to - from) * at / parts).toFixed(2));
    }

    // What the vehicle maker's information says: a value for each box.
    lookedUp(ask) {
      const values = [this.filling(ask)].flat();
      return Object.fromEntries(ask.limits ? ask.limits.map((name, at) => [name, values[at]]) : [["", values.join(", ")]]);
    }

    // Who answered otherwise went another way, which the least doesn't measure.
    endWords(state) {
      const found = state.end.step === this.fault && state.end.inside === this.tree;
      const { text } = this.tables.trees[this.tree].steps[this.fault], { events } = state, least = this.least(state);
      const used = this.minutesOf((_, shown, number) => events[number]), isSame = found && !this.missed.length;
      return [`${found ? "You found it" : "The fault was"}: ${text}.`, `You used ${used} min; ${isSame ? "the least is" : "by what the vehicle shows it takes"} ${least}.`,
        this.missed.length ? `Answered otherwise than shown: ${this.missed.join("; ")}.`.replace("?.", "?") : ""].filter(Boolean).join(" ");
    }
  }

  function drawnReading({ low, high, unit, phrases }, cuts = [[low, 0], [high, 1]]) {
    const [from, to] = cuts.map(([value]) => Number(value));
    if (phrases) return phrases[Math.round(Math.random() * (Math.min(to, phrases.length - 1) - Math.max(from, 0)) + Math.max(from, 0))];
    if (from === Infinity) return "OL";
    const least = Math.max(from, Number(low), -1000), most = Math.min(to, Number(high), Math.max(Math.abs(least) * 3, 1000));
    // Near what is good, as faults mostly are: not 2 V at the posts of a running engine.
    const near = 0.02 + 0.3 * Math.random(), share = from <= Number(low) ? 1 - near : near;
    const value = least + (most - least) * (from > Number(low) && to < Number(high) ? Math.random() : share);
    return `${value.toFixed(Math.abs(most - least) < 10 ? 2 : 1)} ${unit}`;
  }

  return { Practice, drawn };
})();
