"use strict";
// Added to every page by `baytree serve`: loads the page again after a build, and says how many
// errors the last one found.
(() => {
  const version = document.currentScript.dataset.version;

  async function wait() {
    try {
      const news = await (await fetch(`/changed?since=${version}`)).json();
      if (String(news.version) !== version) {
        location.reload();
        return;
      }
    } catch {
      await new Promise((on) => setTimeout(on, 1000)); // the server is being started again
    }
    wait();
  }

  async function sayErrors() {
    const { errors } = await (await fetch("/changed?since=0")).json();
    if (!errors) return;
    const note = document.createElement("a");
    note.className = "serve-note";
    note.href = "/findings.html";
    note.textContent = errors === 1 ? "1 error: see the findings" : `${errors} errors: see the findings`;
    document.body.append(note);
  }

  sayErrors();
  wait();
})();
