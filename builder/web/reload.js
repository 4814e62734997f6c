"use strict";
// Added to every page by `baytree serve`: loads the page again after a build, and says how many
// errors the last one found, or why it could not be finished.
(() => {
  const version = document.currentScript.dataset.version;
  const PAUSE = 700; // milliseconds, while the server is being started again
  const LONGEST = 30000; // milliseconds; the server answers within 20 seconds
  let seen = ""; // the number of the last answer: the next comes when there is something new
  const note = document.createElement("a");
  note.className = "serve-note";
  note.setAttribute("role", "status");

  function say({ errors, trouble }) {
    const count = errors === 1 ? "1 error: see the findings" : `${errors} errors: see the findings`;
    const words = trouble ? `This page is out of date. ${trouble}` : errors ? count : "";
    if (words === note.textContent) return;
    note.textContent = words;
    if (trouble) note.removeAttribute("href");
    else note.href = "/findings.html";
    if (words) document.body.append(note);
    else note.remove();
  }

  async function look() {
    try {
      const signal = AbortSignal.timeout(LONGEST);
      const news = await (await fetch(`/changed?seen=${seen}`, { signal })).json();
      if (String(news.version) !== version) {
        location.reload();
        return;
      }
      seen = news.news;
      say(news);
    } catch {
      await new Promise((resolve) => { setTimeout(resolve, PAUSE); });
    }
    // A browser has only a few connections to a server: pages in the background ask for none.
    if (document.hidden) document.addEventListener("visibilitychange", look, { once: true });
    else look();
  }

  look();
})();
