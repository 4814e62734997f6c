/* Which result a check gives, from what was typed: builder/walk/readings and follow in the page.
 *
 * In: the walk table (builder/walk/rows says what stands in it), a step, what was typed by the name
 * of the reading. Out: `baytreeFollow`, an outcome as in Python. Numbers are fractions (exact.js);
 * a cut lies just before its value or just after it.
 */
"use strict";
globalThis.baytreeFollow = (() => {
  const { INFINITY, read, finite, less, same, add, subtract, multiply, divide, negative, size, run,
    bounds, rounded } = baytreeExact;
  const { typed: typedQuantity, convert, sameKind, unit } = baytreeQuantities;
  const MINUS = negative(INFINITY);
  const ZERO = read("0");
  const digits = (value) => (finite(value) ? rounded(value) : "Infinity");
  const exact = (value, towards) => read(rounded(value, 12, towards));
  const outcome = (state, rest = {}) => ({
    state, fits: [], reads_as: null, values: {}, errors: {}, mistakes: {}, ...rest });

  function follow(table, id, typed) {
    const row = table.steps[id];
    const filled = Object.fromEntries(Object.entries(typed)
      .map(([name, text]) => [name, text.trim()]).filter(([, text]) => text));
    if (!Object.keys(filled).length) return outcome("nothing typed");
    const tools = row.tools.filter((one) => table.tools[one]).map((one) => table.tools[one]);
    const { taken, mistakes } = allRead(row, tools, filled);
    if (Object.keys(mistakes).length) return outcome("typed wrongly", { mistakes });
    if ((row.figure || []).some((name) => !taken[name])) {
      return outcome("more to be typed", { fits: row.results.map((_, at) => at) });
    }
    return found(row, taken);
  }

  // Readings

  function allRead(row, tools, filled) {
    const taken = {}, mistakes = {};
    const keep = (name, one) => { (one.mistake ? mistakes : taken)[name] = one.mistake || one; };
    for (const name of row.figure || []) {
      if (filled[name]) keep(name, figure(row.readings[0].unit, filled[name]));
    }
    for (const one of row.readings) {
      if (filled[one.name]) keep(one.name, reading(one, tools, filled[one.name]));
    }
    if (row.figure && taken.from && taken.to && less(taken.to.value, taken.from.value)) {
      mistakes.to = "the band ends below its beginning";
    }
    return { taken, mistakes };
  }

  function figure(wanted, text) {
    const one = typedQuantity(text, wanted);
    if (one.mistake) return one;
    if (one.over) return { mistake: "the maker's figure is a number" };
    return { value: exact(convert(one.value, one.unit, wanted)), error: ZERO };
  }

  function reading(row, tools, text) {
    if (row.phrases) {
      const at = row.phrases.indexOf(text);
      return at < 0 ? { mistake: `${text} is none of: ${row.phrases.join(", ")}` }
        : { value: read(String(at)), error: ZERO };
    }
    const one = typedQuantity(text, row.unit);
    if (one.mistake) return one;
    if (one.over) {
      return row.high === "Infinity" ? { value: INFINITY, error: ZERO }
        : { mistake: "OL is no reading of this check: look at the leads and the range, then read again" };
    }
    const value = exact(convert(one.value, one.unit, row.unit));
    if (less(value, read(row.low)) || less(read(row.high), value)) {
      const high = row.high === "Infinity" ? "OL" : row.high;
      return { mistake: `${digits(value)} ${row.unit} is outside ${row.low} to ${high} ${row.unit}: `
        + "look at the unit and the leads; if it stays, none of these results fits" };
    }
    return { value, ...errorOf(row.unit, tools, one) };
  }

  // The tool that reads this, and how far it may be off; the unit that was typed comes first.
  function errorOf(wanted, tools, one) {
    const all = tools.flatMap((tool) => tool.reads.map((reads) => ({ tool: tool.name, reads })))
      .filter(({ reads }) => sameKind(reads[0], wanted));
    const ordered = [...all.filter(({ reads }) => reads[0] === one.unit),
      ...all.filter(({ reads }) => reads[0] !== one.unit)];
    for (const { tool, reads: [symbol, ...figures] } of ordered) {
      const value = exact(convert(one.value, one.unit, symbol));
      const [low, high, step, percent, last, fixed] = figures.map(read);
      if (!less(value, low) && !less(high, value)) {
        const share = divide(multiply(size(value), percent), read("100"));
        const off = add(add(share, multiply(last, step)), fixed);
        const factor = divide(unit(symbol).factor, unit(wanted).factor);
        return { tool, error: exact(multiply(off, factor)) };
      }
    }
    return { error: ZERO };
  }

  // Spans: between which values the truth lies

  function found(row, taken) {
    const names = row.readings.map((one) => one.name);
    const complete = names.every((name) => taken[name]);
    const spans = Object.fromEntries(row.readings.map((one) => [one.name, span(one, taken[one.name])]));
    const values = Object.fromEntries(
      names.filter((name) => taken[name]).map((name) => [name, taken[name].value]));
    computed(row, spans, values);
    const fits = fitting(row.results, spans, taken);
    const at = complete ? readsAs(row.results, values, taken) : null;
    const ways = new Set(fits.map((one) => row.results[one].to));
    let state = complete ? "too close to say" : "more to be typed";
    if (!fits.length || (complete && at === null)) state = "no result";
    else if (ways.size === 1) state = "decided";
    return outcome(state, {
      fits: state === "decided" && at !== null ? [at] : fits,
      reads_as: at,
      values: Object.fromEntries(Object.entries(values).map(
        ([name, value]) => [name, value === null ? "" : digits(value)])),
      errors: Object.fromEntries(Object.entries(taken).filter(([, one]) => !same(one.error, ZERO))
        .map(([name, one]) => [name, [one.tool, digits(one.error)]])),
    });
  }

  function span(row, one) {
    if (!one) return [read(row.low), read(row.high)];
    if (same(one.error, ZERO)) return [one.value, one.value];
    return [exact(subtract(one.value, one.error), "down"), exact(add(one.value, one.error), "up")];
  }

  // Adds the span and, where all is known, the value of each computed reading.
  function computed(row, spans, values) {
    for (const { name, form } of row.computed) {
      const used = [...namesIn(form)];
      spans[name] = spanOf(form, spans, used);
      if (!used.every((one) => one in values)) continue;
      const value = used.some((one) => values[one] === null || !finite(values[one])) ? null
        : run(form, values);
      values[name] = value && exact(value);
      if (!value) spans[name] = [INFINITY, MINUS]; // nothing: no result that names it fits
      else if (used.every((one) => same(...spans[one]))) spans[name] = [values[name], values[name]];
    }
  }

  function namesIn([kind, ...parts]) {
    if (kind === "reading") return new Set(parts);
    if (kind === "number") return new Set();
    return new Set(parts.flatMap((part) => [...namesIn(part)]));
  }

  function spanOf(form, spans, used) {
    if (!used.every((one) => spans[one].every(finite))) return [MINUS, INFINITY];
    const ends = bounds(form, spans);
    return ends ? [exact(ends[0], "down"), exact(ends[1], "up")] : [MINUS, INFINITY];
  }

  // Results

  function fitting(results, spans, taken) {
    const fits = [];
    for (const [at, one] of results.entries()) {
      const pairs = Object.entries(one.ranges).map(([name, side]) => [cuts(side, taken), spans[name]]);
      if (!one.otherwise && !pairs.every(reaches)) continue;
      fits.push(at);
      if (one.otherwise || pairs.every(isSure)) break;
    }
    return fits;
  }

  // The figures that were looked up stand in the place of their names.
  const cuts = (side, taken) => side.map(
    ([value, after]) => [taken[value] ? taken[value].value : read(value), after]);
  const takes = ([[low, lowAfter], [high, highAfter]], value) =>
    (less(low, value) || (same(low, value) && !lowAfter))
    && (less(value, high) || (same(value, high) && Boolean(highAfter)));

  function reaches([side, [low, high]]) {
    if (same(low, high)) return takes(side, low);
    return !less(high, side[0][0]) && !less(side[1][0], low);
  }

  function isSure([side, [low, high]]) {
    if (same(low, high)) return takes(side, low);
    return less(side[0][0], low) && less(high, side[1][0]);
  }

  function readsAs(results, values, taken) {
    const at = results.findIndex((one) => one.otherwise || Object.entries(one.ranges).every(
      ([name, side]) => values[name] !== null && takes(cuts(side, taken), values[name])));
    return at < 0 ? null : at;
  }

  return { follow };
})();
