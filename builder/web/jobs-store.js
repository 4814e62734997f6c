/* The jobs of this browser: read, written and removed here and nowhere else; nothing is sent.
 *
 * In: the name of the shop, jobs as maps with an `id`. Out: `baytreeStore`, whose answers are
 * promises. Pages opened from a folder may each have a store of their own: they ask `store.html` in a
 * hidden frame, which runs this script too and has one store for all. A job that can't be kept stays
 * in memory, and `write` says why.
 */
"use strict";
globalThis.baytreeStore = (() => {
  const WAIT = 1500; // milliseconds for the frame to answer
  const here = document.currentScript.src;
  const memory = new Map();
  const FRESH = 15 * 60000; // milliseconds for which words of the search belong to the tree opened then
  const prefix = (shop) => `baytree 1 ${shop} `;
  const wordsKey = (shop) => `baytree 1 words ${shop}`;

  const LOCAL = {
    all(shop) {
      return Object.keys(localStorage).filter((key) => key.startsWith(prefix(shop)))
        .map((key) => JSON.parse(localStorage.getItem(key)));
    },
    read: (shop, id) => JSON.parse(localStorage.getItem(prefix(shop) + id)),
    write(shop, job) {
      if (LOCAL.read(shop, job.id)?.saved >= job.saved) return "elsewhere"; // another tab went on with it
      localStorage.setItem(prefix(shop) + job.id, JSON.stringify(job));
      return "";
    },
    remove: (shop, id) => localStorage.removeItem(prefix(shop) + id),
    note: (shop, words) => localStorage.setItem(wordsKey(shop), JSON.stringify(words)),
    noted: (shop) => JSON.parse(localStorage.getItem(wordsKey(shop))),
  };

  function attempt(name, args) {
    try {
      return { value: LOCAL[name](...args) };
    } catch (error) {
      return { wrong: error.name === "QuotaExceededError" ? "full" : "denied" };
    }
  }

  // The frame

  if (document.documentElement.dataset.store !== undefined) {
    addEventListener("message", ({ source, data }) => {
      if (source !== parent || !Object.hasOwn(LOCAL, data?.name)) return;
      source.postMessage({ baytree: data.number, ...attempt(data.name, data.args) }, "*");
    });
    return null;
  }

  const waiting = new Map();
  let frame = null;

  function openFrame() {
    const node = document.createElement("iframe");
    node.src = new URL("store.html", here);
    node.hidden = true;
    node.title = "Store of jobs";
    addEventListener("message", ({ source, data }) => {
      if (source === node.contentWindow) waiting.get(data?.baytree)?.(data);
    });
    document.body.append(node);
    return new Promise((resolve) => { node.addEventListener("load", () => resolve(node)); });
  }

  async function throughFrame(name, args) {
    const node = await (frame ||= openFrame()), number = waiting.size + 1;
    return new Promise((resolve) => {
      const late = setTimeout(() => resolve(attempt(name, args)), WAIT);
      waiting.set(number, (answer) => { clearTimeout(late); resolve(answer); });
      node.contentWindow.postMessage({ number, name, args }, "*");
    });
  }

  const ask = (name, ...args) => (
    location.protocol === "file:" ? throughFrame(name, args) : Promise.resolve(attempt(name, args)));

  // What pages use

  async function all(shop) {
    const { value = [] } = await ask("all", shop);
    const kept = new Map(value.map((job) => [job.id, job]));
    return [...new Map([...kept, ...memory]).values()].sort((one, other) => (one.at < other.at ? 1 : -1));
  }

  async function read(shop, id) {
    return (await ask("read", shop, id)).value || memory.get(id) || null;
  }

  // Keeps a job; "" or why it couldn't be: full, denied, elsewhere.
  async function write(shop, job) {
    const { value = "", wrong = "" } = await ask("write", shop, job);
    if (wrong) memory.set(job.id, job);
    else memory.delete(job.id);
    return wrong || value;
  }

  async function remove(shop, id) {
    memory.delete(id);
    await ask("remove", shop, id);
  }

  // The words of a search go along to the tree that it led to: written at once, before the page is left.
  function noteWords(shop, words, tree) {
    const note = { words, tree, at: Date.now() };
    attempt("note", [shop, note]);
    if (location.protocol === "file:") throughFrame("note", [shop, note]);
  }

  async function wordsFor(shop, tree) {
    const note = attempt("noted", [shop]).value || (await ask("noted", shop)).value;
    return note?.tree === tree && Date.now() - note.at < FRESH ? note.words : "";
  }

  // Asks the browser not to clear the store by itself. Some never answer, so nobody waits.
  const keep = () => { navigator.storage?.persist?.(); };

  return { all, read, write, remove, noteWords, wordsFor, keep };
})();
