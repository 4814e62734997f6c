/* The jobs of this browser, on the home page: go on with one, save them as files, take files in.
 *
 * In: `#jobs`, with the name of the shop and the way to the trees' pages. Out: a card for each job.
 * The words searched for go along to the tree that is opened, as the complaint.
 */
"use strict";
(() => {
  const { h, button } = baytreeParts;
  const store = baytreeStore;
  const place = document.getElementById("jobs");
  const { shop } = place.dataset;
  const LONGEST = 80; // characters of a word about a job, from a file that may hold anything
  const age = (at) => {
    const minutes = Math.max(0, Math.round((Date.now() - Date.parse(at)) / 60000));
    if (minutes < 60) return minutes < 1 ? "just now" : `${minutes} min ago`;
    return minutes < 2880 ? `${Math.round(minutes / 60)} h ago` : `${Math.round(minutes / 1440)} days ago`;
  };
  const said = h("p", { class: "wrong", role: "status" });

  function card(job) {
    const left = job.until ? Math.ceil((Date.parse(job.until) - Date.now()) / 60000) : 0;
    const where = job.over ? "Ended" : left > 0 ? `Waiting, ${left} min left` : `Step ${job.step}: ${job.where}`;
    return h("li", {}, h("a", { class: "row job", href: `trees/${job.page}.html${job.hash}` },
      h("b", {}, [job.order && `RO ${job.order}`, job.vehicle, job.title].filter(Boolean).join(", ")),
      h("span", { class: "row-more" }, `${where}, ${age(job.at)}`)));
  }

  async function show() {
    const jobs = await store.all(shop);
    const list = jobs.length > 0 && h("ul", { class: "trees" }, jobs.map(card));
    place.replaceChildren(...[list && h("h2", {}, "Your jobs"), list, said, h("p", {},
      jobs.length > 0 && button("Save all as a file", () => baytreeSave("jobs.json", { jobs: jobs.map(({ record }) => record) }), { class: "button" }),
      button("Open a job’s file", () => box.click(), { class: "button" }), box)].filter(Boolean));
    place.hidden = false;
  }

  const box = h("input", { type: "file", accept: ".json,application/json", hidden: true, "aria-label": "File with jobs" });
  box.addEventListener("change", () => takeIn(box.files[0]));

  // A record, or a file of several. The page of the tree plays its events, and says what doesn't fit.
  async function takeIn(file) {
    said.textContent = "";
    const records = await readRecords(file);
    for (const record of records) await store.write(shop, jobOf(record));
    if (!records.length) said.textContent = `${file.name} is no record of a job: use a file that “Record” saved.`;
    box.value = "";
    show();
  }

  async function readRecords(file) {
    try {
      const content = JSON.parse(await file.text());
      return (Array.isArray(content.jobs) ? content.jobs : [content]).filter(isRecord);
    } catch {
      return [];
    }
  }

  const isRecord = (one) => typeof one?.tree === "string" && /^[\w-]+(\/[\w-]+)+$/.test(one.tree) && Array.isArray(one.events)
    && one.events.every((event) => typeof event?.event === "string") && one.events[0]?.event === "start";

  function jobOf(record) {
    const id = Date.now().toString(36) + Math.random().toString(36).slice(2, 6), { job = {}, tree, events, steps = [] } = record;
    const words = Object.fromEntries(["title", "order", "vin", "year", "make", "model"].filter((key) => typeof job[key] === "string").map((key) => [key, job[key].slice(0, LONGEST)]));
    return { title: tree, ...words, id, tree, page: tree, events, record, saved: 0, rows: {}, step: steps.length + 1, where: "from a file",
      over: Boolean(record.end), at: new Date().toISOString(), hash: `#walk/${events[0].enter || "start"}/${id}`,
      vehicle: [words.year, words.make, words.model].filter(Boolean).join(" ") };
  }

  document.addEventListener("click", ({ target }) => {
    const link = target.closest?.(".find-hits a[href]"), words = document.querySelector("#find input")?.value.trim();
    if (!link || !words || !/(^|\/)trees\//.test(link.getAttribute("href"))) return;
    store.noteWords(shop, words, link.getAttribute("href").replace(/^.*trees\/|\.html.*$/g, ""));
  }, true);

  show();
})();
