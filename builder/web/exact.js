/* Exact numbers, to the same digits as builder/trade/exact.
 *
 * In: numbers as text. Out: `baytreeExact`. A number is a fraction [n, d] of whole numbers in lowest
 * terms; over the range (OL) is [1, 0], that is infinity. What cannot be worked out throws null.
 */
"use strict";
globalThis.baytreeExact = (() => {
  const INFINITY = [1n, 0n];
  const impossible = () => { throw null; };

  function divisor(a, b) {
    while (b) [a, b] = [b, a % b];
    return a < 0n ? -a : a;
  }

  function fraction(n, d) {
    if (d === 0n) impossible();
    const by = divisor(n, d) * (d < 0n ? -1n : 1n);
    return [n / by, d / by];
  }

  function read(text) {
    if (text.endsWith("Infinity")) return [text.startsWith("-") ? -1n : 1n, 0n];
    const [above, below] = text.split("/");
    if (below) return fraction(BigInt(above), BigInt(below));
    const [whole, part = ""] = text.split(".");
    return fraction(BigInt(whole + part), 10n ** BigInt(part.length));
  }

  const finite = (a) => a[1] !== 0n;
  const less = (a, b) => (a[1] || b[1] ? a[0] * b[1] < b[0] * a[1] : a[0] < b[0]);
  const same = (a, b) => a[0] === b[0] && a[1] === b[1];
  const add = (a, b) => fraction(a[0] * b[1] + b[0] * a[1], a[1] * b[1]);
  const negative = (a) => [-a[0], a[1]];
  const subtract = (a, b) => add(a, negative(b));
  const multiply = (a, b) => fraction(a[0] * b[0], a[1] * b[1]);
  const divide = (a, b) => fraction(a[0] * b[1], a[1] * b[0]);
  const size = (a) => (a[0] < 0n ? negative(a) : a);

  // Digits: so many that count, no zeros at the end, half to even, or down, or up.

  function rounded([n, d], digits = 12, towards = "nearest") {
    if (n === 0n) return "0";
    const minus = n < 0n, count = BigInt(digits);
    if (minus) n = -n;
    let place = 0n; // of the last digit that stays, as a power of ten
    while (!less([n, d], shifted(count + place))) place += 1n;
    while (less([n, d], shifted(count - 1n + place))) place -= 1n;
    const above = place < 0n ? n * 10n ** -place : n;
    const below = place > 0n ? d * 10n ** place : d;
    const rest = above % below;
    let whole = above / below;
    const half = 2n * rest > below || (2n * rest === below && whole % 2n === 1n);
    const away = towards === "nearest" ? half : rest > 0n && (towards === "up") !== minus;
    if (away) whole += 1n;
    return (minus ? "-" : "") + digitsOf(whole, place);
  }

  const shifted = (place) => (place < 0n ? [1n, 10n ** -place] : [10n ** place, 1n]);

  function digitsOf(whole, place) {
    if (place >= 0n) return String(whole * 10n ** place);
    const text = String(whole).padStart(Number(-place) + 1, "0");
    return `${text.slice(0, Number(place))}.${text.slice(Number(place))}`.replace(/\.?0+$/, "");
  }

  return { INFINITY, impossible, fraction, read, finite, less, same, add, subtract, multiply, divide, negative,
    size, rounded };
})();
