/* The face of a connector, drawn: builder/pages/connector_face.py, in the page; and its pins.
 *
 * In: a walk whose step names pins; it is loaded then. Out: `baytreeFace`, elements for a sheet.
 */
"use strict";
globalThis.baytreeFace = (() => {
  const { h } = baytreeParts, { capital, colorWords, connectorName } = baytreeWords, { unique } = baytreeTold;
  const CELL = 40, EDGE = 16, TAB = 12, LENGTH = 48;

  function s(name, attributes, ...inside) {
    const node = document.createElementNS("http://www.w3.org/2000/svg", name);
    for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
    node.append(...inside);
    return node;
  }

  const box = (name, [x, y, width, height], rx) => s("rect", { class: name, x, y, width, height, rx });

  // A marked pin is round and dark, pin 1 has a marked corner.
  function face({ face: rows, tab, pins }, marked) {
    if (!rows) return null;
    const most = Math.max(...rows.map((row) => row.length)), width = CELL * most + 2 * EDGE, height = CELL * rows.length + 2 * EDGE;
    const x = (width - LENGTH) / 2, y = (height - LENGTH) / 2;
    const place = { top: [x, 0, LENGTH, TAB], bottom: [x, height - TAB, LENGTH, TAB], left: [0, y, TAB, LENGTH], right: [width - TAB, y, TAB, LENGTH] }[tab];
    return s("svg", { class: "face", viewBox: `0 0 ${width} ${height}`, width, role: "img",
      "aria-label": `Face with ${rows.flat().length} cavities; marked: ${marked.join(", ") || "none"}` },
    ...(place ? [box("face-tab", place, 3)] : []), box("face-shell", [8, 8, width - EDGE, height - EDGE], 8),
    ...rows.flatMap((row, down) => row.map((number, right) => {
      const isOn = marked.includes(number), left = EDGE + CELL * (most - row.length) / 2 + CELL * right, top = EDGE + CELL * down;
      const look = isOn ? " on" : (pins[number]?.role || "not used") === "not used" ? " free" : "";
      return s("g", { class: `face-pin${look}` },
        isOn ? s("circle", { cx: left + 20, cy: top + 20, r: 18 }) : s("rect", { x: left + 3, y: top + 3, width: 34, height: 34, rx: 3 }),
        ...(number === "1" ? [s("path", { class: "face-first", d: `M${left + 3} ${top + 3}h13l-13 13z` })] : []),
        s("text", { x: left + 20, y: top + 28 }, number));
    })));
  }

  // The color of a wire, its stripe in the middle; null where a code isn't known.
  function swatch(wire, colors) {
    const known = wire.split(" ")[0].split("/").map((code) => colors[code]);
    return known.every(Boolean) ? s("svg", { class: "swatch", viewBox: "0 0 36 21", width: 36, "aria-hidden": "true" },
      ...known.map(([, fill], at) => s("rect", { y: 7 * at, width: 36, height: at ? 7 : 21, fill }))) : null;
  }

  function caption({ seen_from, tab }) {
    const side = ["top", "bottom"].includes(tab) ? "at" : "on";
    return [seen_from && `Seen from the ${seen_from}.`, tab && `Tab ${side} the ${tab}.`, "Go by the numbers on the connector."].filter(Boolean).join(" ");
  }

  const more = (words) => h("span", { class: "line-more" }, words);

  function pinRow(tables, { pin, wire = "", role, circuit, to, fuse }) {
    const color = swatch(wire, tables.names.colors);
    return h("tr", { class: "asked" }, h("th", { scope: "row" }, h("span", { class: "pin-number" }, pin)),
      h("td", {}, h("span", { class: "wire" }, color, h("b", {}, colorWords(tables, wire))), color && more(wire.replace("mm2", "mm²"))),
      h("td", {}, h("b", {}, role), circuit && circuit !== role && ` ${circuit}`, to && more(`to ${to}`), fuse && more(`fuse ${fuse}`)));
  }

  function connectorParts(tables, id, connector, rows) {
    return [h("h3", {}, capital(connectorName(tables, id, connector))), connector.where && h("p", {}, connector.where),
      face(connector, rows.map(({ pin }) => pin)), h("p", { class: "line-more" }, caption(connector)),
      h("table", { class: "lines" }, rows.map((row) => pinRow(tables, row)))];
  }

  // What a step names: each connector once, drawn with its pins marked; then the fuses.
  function pinParts({ shown: { at }, tables, state }) {
    const { connectors } = tables.shop.vehicles[state.vehicle], ids = unique(at.map(({ connector }) => connector).filter(Boolean));
    return [...ids.flatMap((id) => connectorParts(tables, id, connectors[id], at.filter(({ connector }) => connector === id))),
      ...at.filter(({ fuse, pin }) => fuse && !pin).flatMap(({ fuse, amps, box, feeds }) => [h("h3", {}, `Fuse ${fuse}`),
        h("p", {}, `${amps} A, ${box}`, feeds && more(feeds))])];
  }

  return { face, pinParts };
})();
