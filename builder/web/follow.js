/* Which result a check gives, from the typed readings: builder/walk/readings and follow, in the page.
 *
 * In: the row of a check (described in builder/walk/rows), its tools, the typed text by the name of
 * the reading. Out: `baytreeFollow`, an outcome as in Python. Numbers are fractions (exact.js); a cut
 * is just before its value or just after it.
 */
"use strict";
globalThis.baytreeFollow = (() => {
  const { INFINITY, read, finite, less, same, add, subtract, multiply, divide, negative, size,
    rounded } = baytreeExact;
  const { typed: typedQuantity, convert, sameKind, unit } = baytreeQuantities;
  const MINUS_INFINITY = negative(INFINITY);
  const ZERO = read("0");
  const digits = (value) => (finite(value) ? rounded(value) : "Infinity");
  const exact = (value, towards) => read(rounded(value, 12, towards));
  const outcome = (state, rest = {}) => ({
    state, fits: [], reads_as: null, values: {}, errors: {}, mistakes: {}, ...rest });

  // The result of a check that its readings match, taken with these tools.
  function readAs(row, tools, typed) {
    const filled = Object.fromEntries(Object.entries(typed)
      .map(([name, text]) => [name, text.trim()]).filter(([, text]) => text));
    if (!Object.keys(filled).length) return outcome("empty");
    const { readings, mistakes } = parseReadings(row, tools, filled);
    if (Object.keys(mistakes).length) return outcome("invalid", { mistakes });
    if ((row.figure || []).some((name) => !readings[name])) {
      return outcome("incomplete", { fits: row.results.map((_, at) => at) });
    }
    return outcomeOf(row, readings);
  }

  // Readings

  function parseReadings(row, tools, filled) {
    const readings = {}, mistakes = {};
    const store = (name, value) => {
      (value.mistake ? mistakes : readings)[name] = value.mistake || value;
    };
    for (const name of row.figure || []) {
      if (filled[name]) store(name, parseSpec(filled[name], row.readings[0].unit));
    }
    for (const reading of row.readings) {
      const text = filled[reading.name];
      if (text) store(reading.name, parseReading(text, reading, tools));
    }
    if (row.figure && readings.from && readings.to && less(readings.to.value, readings.from.value)) {
      mistakes.to = "the high spec is below the low spec";
    }
    return { readings, mistakes };
  }

  function parseSpec(text, symbol) {
    const quantity = typedQuantity(text, symbol);
    if (quantity.mistake) return quantity;
    if (quantity.over) return { mistake: "the spec must be a number" };
    return { value: exact(convert(quantity.value, quantity.unit, symbol)), error: ZERO };
  }

  function parseReading(text, row, tools) {
    if (row.phrases) {
      const at = row.phrases.indexOf(text);
      return at < 0 ? { mistake: `${text} isn't one of: ${row.phrases.join(", ")}` }
        : { value: read(String(at)), error: ZERO };
    }
    const quantity = typedQuantity(text, row.unit);
    if (quantity.mistake) return quantity;
    if (quantity.over) {
      return row.high === "Infinity" ? { value: INFINITY, error: ZERO }
        : { mistake: "OL isn't a valid reading here: check the leads and the range, then reread" };
    }
    const value = exact(convert(quantity.value, quantity.unit, row.unit));
    if (less(value, read(row.low)) || less(read(row.high), value)) {
      const high = row.high === "Infinity" ? "OL" : row.high;
      return { mistake: `${digits(value)} ${row.unit} is outside ${row.low} to ${high} ${row.unit}: `
        + "check the unit and the leads; if it stays, no result matches" };
    }
    return { value, ...toolError(quantity, row.unit, tools) };
  }

  // The tool that reads this, and its possible error; the typed unit comes first.
  function toolError(quantity, wanted, tools) {
    const ranges = tools.flatMap((tool) => tool.reads.map((range) => ({ tool: tool.name, range })))
      .filter(({ range }) => sameKind(range[0], wanted));
    const ordered = [...ranges.filter(({ range }) => range[0] === quantity.unit),
      ...ranges.filter(({ range }) => range[0] !== quantity.unit)];
    for (const { tool, range: [symbol, ...figures] } of ordered) {
      const value = exact(convert(quantity.value, quantity.unit, symbol));
      const [low, high, resolution, percent, last, fixed] = figures.map(read);
      if (!less(value, low) && !less(high, value)) {
        const share = divide(multiply(size(value), percent), read("100"));
        const error = add(add(share, multiply(last, resolution)), fixed);
        const factor = divide(unit(symbol).factor, unit(wanted).factor);
        return { tool, error: exact(multiply(error, factor)) };
      }
    }
    return { error: ZERO };
  }

  // Spans: the true value is between the two ends

  function outcomeOf(row, readings) {
    const names = row.readings.map((reading) => reading.name);
    const complete = names.every((name) => readings[name]);
    const spans = Object.fromEntries(
      row.readings.map((reading) => [reading.name, spanOf(reading, readings[reading.name])]));
    const values = Object.fromEntries(
      names.filter((name) => readings[name]).map((name) => [name, readings[name].value]));
    addComputed(row, spans, values);
    const fits = possibleResults(row.results, spans, readings);
    const at = complete ? exactResult(row.results, values, readings) : null;
    const targets = new Set(fits.map((place) => row.results[place].to));
    let state = complete ? "too close to call" : "incomplete";
    if (!fits.length || (complete && at === null)) state = "no result";
    else if (targets.size === 1) state = "decided";
    return outcome(state, {
      fits: state === "decided" && at !== null ? [at] : fits,
      reads_as: at,
      values: Object.fromEntries(Object.entries(values).map(
        ([name, value]) => [name, value === null ? "" : digits(value)])),
      errors: Object.fromEntries(Object.entries(readings)
        .filter(([, { error }]) => !same(error, ZERO))
        .map(([name, { tool, error }]) => [name, [tool, digits(error)]])),
    });
  }

  function spanOf(row, reading) {
    if (!reading) return [read(row.low), read(row.high)];
    const { value, error } = reading;
    if (same(error, ZERO)) return [value, value];
    return [exact(subtract(value, error), "down"), exact(add(value, error), "up")];
  }

  // Adds the span and, if all its readings are known, the value of each computed reading.
  function addComputed(row, spans, values) {
    for (const { name, form } of row.computed) {
      const used = [...namesIn(form)];
      spans[name] = computedSpan(form, spans, used);
      if (!used.every((use) => use in values)) continue;
      const value = used.some((use) => values[use] === null || !finite(values[use])) ? null
        : baytreeExpressions.run(form, values);
      values[name] = value && exact(value);
      if (!value) spans[name] = [INFINITY, MINUS_INFINITY]; // empty: no result that names it matches
      else if (used.every((use) => same(...spans[use]))) spans[name] = [values[name], values[name]];
    }
  }

  function namesIn([kind, ...parts]) {
    if (kind === "reading") return new Set(parts);
    if (kind === "number") return new Set();
    return new Set(parts.flatMap((part) => [...namesIn(part)]));
  }

  function computedSpan(form, spans, used) {
    if (!used.every((use) => spans[use].every(finite))) return [MINUS_INFINITY, INFINITY];
    const ends = baytreeExpressions.bounds(form, spans);
    return ends ? [exact(ends[0], "down"), exact(ends[1], "up")] : [MINUS_INFINITY, INFINITY];
  }

  // Results

  function possibleResults(results, spans, readings) {
    const possible = [];
    for (const [at, result] of results.entries()) {
      const pairs = Object.entries(result.ranges)
        .map(([name, cuts]) => [rangeOf(cuts, readings), spans[name]]);
      if (!result.otherwise && !pairs.every(overlaps)) continue;
      possible.push(at);
      if (result.otherwise || pairs.every(contains)) break;
    }
    return possible;
  }

  // The cuts with the specs that were looked up filled in.
  const rangeOf = (cuts, readings) => cuts.map(
    ([value, after]) => [readings[value] ? readings[value].value : read(value), after]);
  const takes = ([[low, lowAfter], [high, highAfter]], value) =>
    (less(low, value) || (same(low, value) && !lowAfter))
    && (less(value, high) || (same(value, high) && Boolean(highAfter)));

  function overlaps([range, [low, high]]) {
    if (same(low, high)) return takes(range, low);
    return !less(high, range[0][0]) && !less(range[1][0], low);
  }

  function contains([range, [low, high]]) {
    if (same(low, high)) return takes(range, low);
    return less(range[0][0], low) && less(high, range[1][0]);
  }

  function exactResult(results, values, readings) {
    const at = results.findIndex((result) => result.otherwise || Object.entries(result.ranges).every(
      ([name, cuts]) => values[name] !== null && takes(rangeOf(cuts, readings), values[name])));
    return at < 0 ? null : at;
  }

  return { readAs };
})();
