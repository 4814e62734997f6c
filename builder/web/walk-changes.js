/* What is changed at the vehicle between two steps: builder/graph/state_changes, in the page.
 *
 * In: a vehicle, the states that hold, the states that a step needs. Out: `baytreeChanges`: changes
 * in their order, and the states that hold then. The order is told in Python.
 */
"use strict";
globalThis.baytreeChanges = (() => {
  const { words, stateOf, parts, unique } = baytreeVehicle;

  function changes(vehicle, now, needed) {
    const work = new Work(vehicle, now, unique(needed));
    return work.carriedOut(work.others().filter((one) => work.isUnwanted(one)));
  }

  // What is kept holds before and after.
  function backToNormal(vehicle, now, kept = []) {
    const power = vehicle.power(kept);
    const work = new Work(vehicle, now, unique(power ? [...kept, power] : kept));
    return work.carriedOut(work.others().filter((one) => !kept.includes(one)));
  }

  // Without what a change before it told on entering the state that is left now.
  function toldOnce(change, before) {
    const lines = before.filter(({ entered }) => entered && entered === change.left)
      .flatMap(({ told }) => told.map((line) => words(line)));
    return { ...change, told: change.told.filter((line) => !lines.includes(words(line))) };
  }

  // The changes so far, and what holds after them.
  class Work {
    constructor(vehicle, now, wanted) {
      Object.assign(this, { vehicle, now, wanted, done: [], late: [], leaving: [] });
    }

    others() { return [...this.now].reverse().filter((one) => !this.vehicle.isPower(one)); }

    toEnter() {
      return this.wanted.filter((one) => !this.vehicle.holds(this.now, one)
        && !this.late.includes(one) && !this.vehicle.isPower(one));
    }

    isUnwanted(state) {
      return this.wanted.some((one) => !this.late.includes(one) && this.vehicle.excludes(state, one));
    }

    carriedOut(all) {
      const enter = this.toEnter();
      this.late = enter.filter((one) => this.blocks(one, all, enter));
      this.powerOffFirst(all);
      const leave = all.filter((one) => this.now.includes(one));
      this.keyFor(this.lists(leave));
      leave.forEach((one) => this.leave(one));
      this.leavePower();
      this.enterInTurn(this.toEnter());
      this.keyAsWanted();
      this.late = [];
      this.leavePower();
      this.enterInTurn(this.toEnter()).forEach((one) => this.enter(one));
      this.keyAsWanted();
      return [this.done, this.now];
    }

    // Takes the power off before the changes, and makes those it was taken off for in time.
    powerOffFirst(leave) {
      const now = this.vehicle.power(this.now), wanted = this.wanted.find((one) => this.vehicle.isPower(one));
      const isOff = (state) => state && this.vehicle.of(state).counts_as === "power off";
      if (wanted !== now && isOff(wanted)) {
        this.change(leave, (listed) => listed.length && !listed.includes(parts(wanted)[0]));
        this.enterInTurn(this.toEnter().filter((one) => this.replacesOneThatExcludes(one, wanted)));
        this.keyTo(wanted);
      } else if (isOff(now) && this.lists(leave).some((listed) => !listed.includes(parts(now)[0]))) {
        this.change(leave, (listed) => listed.includes(parts(now)[0]));
      }
    }

    replacesOneThatExcludes(state, power) {
      const [before] = this.ends(state, true);
      return before && this.vehicle.excludes(before, power);
    }

    // Leaves and enters those that can be changed in chosen power states.
    change(leave, chosen) {
      const first = leave.filter((one) => chosen(this.allowed(one, false)));
      const then = this.toEnter().filter((one) => chosen(this.allowed(one, true)));
      this.keyFor([...first, ...then].map((one) => this.allowed(one, then.includes(one))));
      first.forEach((one) => this.leave(one));
      this.enterInTurn(then);
    }

    lists(leave) {
      return [...leave, ...this.toEnter()].map((one) => this.allowed(one, !leave.includes(one)))
        .filter((listed) => listed.length);
    }

    // Whether a state excludes every power state in which some other change can be made.
    blocks(state, leave, enter) {
      return [...leave, ...enter].filter((one) => one !== state)
        .map((one) => this.allowed(one, !leave.includes(one)))
        .some((listed) => listed.length
          && listed.every((key) => this.vehicle.excludes(state, stateOf(key))));
    }

    // The power states in which a state can be entered or left; [] for any.
    allowed(state, entering) {
      const [before, after] = this.ends(state, entering);
      const lists = [after, before].filter(Boolean)
        .map((one) => this.vehicle.of(one).changed_with || []).filter((listed) => listed.length);
      if (!lists.length) return [];
      const common = lists[0].filter((key) => lists.every((listed) => listed.includes(key)));
      return common.length ? common : lists[0];
    }

    ends(state, entering) {
      const normal = this.vehicle.normalOf(state);
      if (!entering) return [state, normal];
      const place = this.vehicle.place(state);
      return [this.now.find((one) => this.vehicle.place(one) === place) || normal, state];
    }

    keyFor(changing) {
      const power = this.vehicle.power(this.now);
      const wrong = power && changing.find((listed) => !listed.includes(parts(power)[0]));
      if (wrong) this.keyTo(stateOf(this.best(wrong, changing)));
    }

    best(listed, changing) {
      const free = listed.filter((key) => !this.isUnwanted(stateOf(key)));
      const suits = (key) => changing.filter((other) => other.includes(key)).length;
      return (free.length ? free : listed).reduce((one, key) => (suits(key) > suits(one) ? key : one));
    }

    keyTo(power) {
      for (const one of this.others()) {
        if (this.vehicle.excludes(one, power)) {
          this.late.push(one);
          this.leave(one);
        }
      }
      this.put(this.vehicle.power(this.now), power);
    }

    leavePower() {
      const power = this.vehicle.power(this.now), normal = this.vehicle.power([]);
      if (power && normal && this.isUnwanted(power) && !this.isUnwanted(normal)) this.keyTo(normal);
    }

    keyAsWanted() {
      for (const power of this.wanted.filter((one) => this.vehicle.isPower(one))) {
        if (!this.vehicle.holds(this.now, power)) this.keyTo(power);
      }
    }

    leave(state) {
      if (!this.now.includes(state) || this.leaving.includes(state)) return;
      this.leaving.push(state);
      const [before, after] = this.ends(state, false);
      if (after) this.vehicle.inTheWay(this.now, after).forEach((one) => this.leave(one));
      const listed = this.allowed(state, false);
      this.keyFor(listed.length ? [listed] : []);
      this.put(before, after);
      this.leaving.splice(this.leaving.indexOf(state), 1);
    }

    enterInTurn(waiting) {
      for (;;) {
        const at = waiting.findIndex((one) => !this.vehicle.inTheWay(this.now, one).length);
        if (at < 0) return waiting;
        this.enter(...waiting.splice(at, 1));
      }
    }

    enter(state) {
      if (this.vehicle.holds(this.now, state)) return;
      const listed = this.allowed(state, true);
      this.keyFor(listed.length ? [listed] : []);
      this.put(...this.ends(state, true));
    }

    put(before, after) {
      this.done.push(toldOnce(this.vehicle.change(before, after), this.done));
      const stays = after && !this.vehicle.of(after).normal ? [after] : [];
      const at = this.now.indexOf(before);
      this.now = at < 0 ? [...this.now, ...stays]
        : [...this.now.slice(0, at), ...stays, ...this.now.slice(at + 1)];
    }
  }

  return { changes, backToNormal };
})();
