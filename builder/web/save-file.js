/* Saves a value as a JSON file of the browser's downloads.
 *
 * In: a file name, a value. Out: `baytreeSave`.
 */
"use strict";
globalThis.baytreeSave = (name, value) => {
  const address = URL.createObjectURL(new Blob([JSON.stringify(value, null, 1)], { type: "application/json" }));
  baytreeParts.h("a", { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), 60000);
};
