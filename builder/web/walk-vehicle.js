/* The states of a vehicle, and one change of them: builder/graph/vehicle_states and change, in the
 * page.
 *
 * In: the conditions of the shop's table. Out: `baytreeVehicle`. A state is one text: its condition,
 * its part and its current, with line ends between.
 */
"use strict";
globalThis.baytreeVehicle = (() => {
  const { read, add } = baytreeExact;
  const POWER = "power", ZERO = read("0");
  const stateOf = (condition, part = "", current = "") => [condition, part, current].join("\n");
  const parts = (state) => state.split("\n");
  const unique = (list) => [...new Set(list)];
  // A line that is told: with the ID of its part, or with the name where there is one.
  const lineOf = (line, [, part, current]) => ({ line, part, current });
  const words = ({ line, part, current }, names = {}) => line
    .replaceAll("<part>", () => names[part] ?? part).replaceAll("<current>", () => current);

  class Vehicle {
    constructor(conditions) {
      this.conditions = conditions;
      this.normals = Object.keys(conditions).filter((id) => conditions[id].normal);
    }

    of(state) { return this.conditions[parts(state)[0]]; }

    isPower(state) { return this.of(state).group === POWER; }

    place(state) {
      const [id, part] = parts(state), { group, takes } = this.of(state);
      if (group) return `group\n${group}\n${part}`;
      return takes === "current" ? `load\n\n${part}` : `alone\n${id}\n${part}`;
    }

    holds(now, state) {
      if (!this.of(state).normal) return now.includes(state);
      return now.every((one) => this.place(one) !== this.place(state));
    }

    normalOf(state) {
      const { group } = this.of(state);
      const id = group && this.normals.find((one) => this.conditions[one].group === group);
      return id ? stateOf(id, parts(state)[1]) : null;
    }

    power(now) {
      const normal = this.normals.find((id) => this.conditions[id].group === POWER);
      return now.find((one) => this.isPower(one)) || (normal ? stateOf(normal) : null);
    }

    excludes(one, other) {
      const [id, part] = parts(one), [otherId, otherPart] = parts(other);
      const first = this.of(one), second = this.of(other);
      if (!first.excludes?.includes(otherId) && !second.excludes?.includes(id)) return false;
      return !(first.takes && second.takes) || part === otherPart;
    }

    normalsExcluded(state) {
      const [id, part] = parts(state), own = this.of(state);
      return this.normals
        .filter((one) => own.excludes?.includes(one) || this.conditions[one].excludes?.includes(id))
        .map((one) => stateOf(one, this.conditions[one].takes ? part : ""));
    }

    inTheWay(now, state) {
      return [...now.filter((one) => this.excludes(state, one)),
        ...this.normalsExcluded(state).filter((one) => this.holds(now, one))];
    }

    change(left, entered) {
      const before = left ? this.of(left) : {}, after = entered ? this.of(entered) : {};
      const undo = (before.undo || []).map((line) => lineOf(line, parts(left)));
      const enter = after.normal && undo.length ? []
        : (after.enter || []).map((line) => lineOf(line, parts(entered)));
      const undone = undo.length ? before : {}, lines = [...undo, ...enter];
      return {
        left, entered, told: lines, minutes: lines.length ? minutesOf(before, entered ? after : null, undone) : ZERO,
        wait: read(after.wait || "0"),
        hazards: unique([...(undone.hazards || []), ...(after.hazards || [])]),
      };
    }

    // Whether no state excludes a normal one of a group from which no other is there.
    canStay(states) {
      const places = states.map((one) => this.place(one));
      return states.every((one) => this.normalsExcluded(one).every((normal) => places.includes(this.place(normal))));
    }
  }

  function minutesOf(before, after, undone) {
    if (!after || after.normal) return read(after?.minutes || before.minutes || "0");
    return add(read(after.minutes || "0"), read(undone.minutes || "0"));
  }

  return { Vehicle, lineOf, words, stateOf, parts, unique };
})();
