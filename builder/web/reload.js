"use strict";
// Added to every page by `baytree serve`: loads the page again after a build, and says how many
// errors the last one found, or why it could not be finished.
(() => {
  const version = document.currentScript.dataset.version;
  const PAUSE = 700; // milliseconds; asking costs this machine next to nothing
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
      const news = await (await fetch("/changed", { signal: AbortSignal.timeout(5000) })).json();
      if (String(news.version) !== version) {
        location.reload();
        return;
      }
      say(news);
    } catch { /* the server is being started again */ }
    setTimeout(look, PAUSE);
  }

  look();
})();
