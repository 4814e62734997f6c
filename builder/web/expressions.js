/* Compiled expressions, to the same digits as builder/trade (expressions, functions, bounds,
 * logarithms). Loaded for checks with computed readings.
 *
 * In: compiled expressions as lists, numbers as fractions (exact.js). Out: `baytreeExpressions`. What
 * cannot be worked out is null. No formula and no figure of the trade stands here.
 */
"use strict";
globalThis.baytreeExpressions = (() => {
  const { impossible, fraction, read, less, same, add, subtract, multiply, divide, negative, size } = baytreeExact;
  const ZERO = [0n, 1n], ONE = [1n, 1n], TWO = [2n, 1n];
  const largest = (...all) => all.reduce((a, b) => (less(a, b) ? b : a));
  const smallest = (...all) => all.reduce((a, b) => (less(b, a) ? b : a));

  // Logarithms in whole numbers: a browser's own may differ in the last digit.

  const SCALE = 10n ** 30n;

  function logBelowTwo(value) {
    const ratio = divide(subtract(value, ONE), add(value, ONE));
    let power = ratio[0] * SCALE / ratio[1], total = 0n;
    const square = power * power / SCALE;
    for (let odd = 1n; power; odd += 2n) {
      total += power / odd;
      power = power * square / SCALE;
    }
    return 2n * total;
  }

  const LOG_OF_TWO = logBelowTwo(TWO);

  function scaledLog(value) {
    let doublings = 0n;
    while (!less(value, TWO)) { value = divide(value, TWO); doublings += 1n; }
    while (less(value, ONE)) { value = multiply(value, TWO); doublings -= 1n; }
    return logBelowTwo(value) + doublings * LOG_OF_TWO;
  }

  function exponential(scaled) {
    const doublings = scaled / LOG_OF_TWO, rest = scaled % LOG_OF_TWO;
    let total = 0n;
    for (let term = SCALE, count = 1n; term; count += 1n) {
      total += term;
      term = term * rest / SCALE / count;
    }
    return fraction(total << doublings, SCALE);
  }

  // Tables: rows [x, y] with x rising

  function rowsOf(flat) {
    const rows = [];
    for (let at = 0; at + 1 < flat.length; at += 2) rows.push([flat[at], flat[at + 1]]);
    return rows;
  }

  const rising = (rows) => [...rows].sort((a, b) => (less(a[0], b[0]) ? -1 : 1));
  const turned = (rows) => rising(rows.map(([x, y]) => [y, x]));

  function around(rows, value) {
    const at = rows.findIndex((row, i) => i && !less(value, rows[i - 1][0]) && !less(row[0], value));
    return at < 0 ? impossible() : [rows[at - 1], rows[at]];
  }

  function table(rows, value) {
    const [[x1, y1], [x2, y2]] = around(rows, value);
    return add(y1, divide(multiply(subtract(y2, y1), subtract(value, x1)), subtract(x2, x1)));
  }

  function logTable(rows, value) {
    const [low, high] = around(rows, value).sort((a, b) => (less(a[1], b[1]) ? -1 : 1));
    const share = divide(subtract(value, low[0]), subtract(high[0], low[0]));
    return multiply(low[1], exponential(share[0] * scaledLog(divide(high[1], low[1])) / share[1]));
  }

  function logTableBack(rows, value) {
    const [[y1, x1], [y2, x2]] = around(turned(rows), value);
    const share = fraction(scaledLog(divide(value, y1)), scaledLog(divide(y2, y1)));
    return add(x1, multiply(subtract(x2, x1), share));
  }

  function parallel(...ohms) {
    if (ohms.some((one) => less(one, ZERO))) impossible();
    if (ohms.some((one) => same(one, ZERO))) return ZERO;
    return divide(ONE, ohms.map((one) => divide(ONE, one)).reduce(add));
  }

  function divider(supply, top, bottom) {
    if (less(top, ZERO) || less(bottom, ZERO)) impossible();
    return divide(multiply(supply, bottom), add(top, bottom));
  }

  const OPERATIONS = {
    "+": add, "-": subtract, "*": multiply, "/": divide, negative, parallel, divider,
    largest, smallest,
    average: (...all) => divide(all.reduce(add), [BigInt(all.length), 1n]),
    difference: (a, b) => size(subtract(a, b)),
    table: (value, ...flat) => table(rowsOf(flat), value),
    table_back: (value, ...flat) => table(turned(rowsOf(flat)), value),
    log_table: (value, ...flat) => logTable(rowsOf(flat), value),
    log_table_back: (value, ...flat) => logTableBack(rowsOf(flat), value),
  };

  function attempt(work) {
    try {
      return work();
    } catch (thrown) {
      if (thrown !== null) throw thrown;
      return null;
    }
  }

  function followed([kind, ...parts], values) {
    if (kind === "number") return read(parts[0]);
    if (kind === "reading") return values[parts[0]] || impossible();
    return OPERATIONS[kind](...parts.map((part) => followed(part, values)));
  }

  // The value of a compiled expression; `values` holds a fraction by the name of each reading.
  const run = (form, values) => attempt(() => followed(form, values));

  // The lowest and the highest value that ranges of the readings allow.

  const RISING = new Set(["+", "parallel", "largest", "smallest", "average"]);
  const bounds = (form, ranges) => attempt(() => boundsOf(form, ranges));

  function boundsOf([kind, ...parts], ranges) {
    if (kind === "number") return [read(parts[0]), read(parts[0])];
    if (kind === "reading") return ranges[parts[0]] || impossible();
    const found = parts.map((part) => boundsOf(part, ranges));
    if (kind.includes("table")) return ofTable(kind, found);
    if (kind === "/" && !less(ZERO, found[1][0]) && !less(found[1][1], ZERO)) impossible();
    if (RISING.has(kind)) return extremes(kind, [0, 1].map((end) => found.map((one) => one[end])));
    const [low, high] = extremes(kind, corners(found));
    if (kind !== "difference") return [low, high];
    const apart = less(found[1][1], found[0][0]) || less(found[0][1], found[1][0]);
    return [apart ? low : ZERO, high];
  }

  const corners = (found) => found.reduce(
    (all, one) => all.flatMap((corner) => one.map((end) => [...corner, end])), [[]]);

  function ofTable(kind, found) {
    const flat = found.slice(1).map((one) => one[0]);
    const rows = rowsOf(flat);
    const knots = rising(kind.endsWith("back") ? turned(rows) : rows).map((row) => row[0]);
    const low = largest(found[0][0], knots[0]);
    const high = smallest(found[0][1], knots[knots.length - 1]);
    if (less(high, low)) impossible();
    const inside = knots.filter((knot) => less(low, knot) && less(knot, high));
    return extremes(kind, [low, ...inside, high].map((one) => [one, ...flat]));
  }

  function extremes(kind, all) {
    const values = all.map((corner) => OPERATIONS[kind](...corner));
    return [smallest(...values), largest(...values)];
  }

  return { run, bounds };
})();
