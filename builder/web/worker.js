/* Keeps the whole site for the days without a network: a service worker of a static host.
 *
 * In: `FILES`, put before this text by the build: the SHA-256 of every file, by its address. Out: every
 * page and file of one build. A new build is fetched whole before it takes over, and only what
 * changed is fetched; pages of two builds are never mixed.
 */
"use strict";
const PREFIX = "baytree build ";
const NAME = PREFIX + VERSION;
const AT_ONCE = 8; // files fetched side by side
const addressOf = (file) => new URL(file, registration.scope).href;
const keyOf = (hash) => new URL(`?hash=${hash}`, registration.scope).href;

async function keptBefore(hash) {
  for (const name of await caches.keys()) {
    const found = name.startsWith(PREFIX) && await (await caches.open(name)).match(keyOf(hash));
    if (found) return found;
  }
  return null;
}

// Every file is kept under its hash, so a file that stays the same isn't fetched again.
async function fetchBuild() {
  const cache = await caches.open(NAME), left = Object.entries(FILES);
  const takeNext = async () => {
    for (let next = left.pop(); next; next = left.pop()) await fetchFile(cache, ...next);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, takeNext));
}

async function fetchFile(cache, file, hash) {
  if (await cache.match(keyOf(hash))) return;
  const answer = await keptBefore(hash) || await fetch(addressOf(file), { cache: "reload" });
  if (!answer.ok) throw new Error(`${file}: ${answer.status}`);
  if (!await isRight(await answer.clone().arrayBuffer(), hash)) throw new Error(`${file} is of another build`);
  await cache.put(keyOf(hash), answer);
}

async function isRight(bytes, hash) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("") === hash;
}

async function dropOthers() {
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== NAME);
  await Promise.all(names.map((name) => caches.delete(name)));
}

async function answer(request) {
  const path = new URL(request.url).href.split(/[?#]/)[0].slice(registration.scope.length);
  const hash = FILES[decodeURIComponent(path)] || FILES[`${decodeURIComponent(path)}index.html`];
  const kept = hash && await (await caches.open(NAME)).match(keyOf(hash));
  return kept || fetch(request);
}

addEventListener("install", (event) => event.waitUntil(fetchBuild()));
addEventListener("activate", (event) => event.waitUntil(dropOthers()));
addEventListener("message", ({ data }) => { if (data === "take over") skipWaiting(); });
addEventListener("fetch", (event) => {
  if (event.request.method === "GET" && event.request.url.startsWith(registration.scope)) {
    event.respondWith(answer(event.request));
  }
});
