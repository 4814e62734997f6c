/* A job that pauses, or is taken up again. Loaded for those.
 *
 * In: the walk. Out: `baytreeResumed`: the face of a break, as in walk-step.js, and what is different in
 * the tree since the job went through it.
 */
"use strict";
globalThis.baytreeResumed = (() => {
  const { h } = baytreeParts;
  const { partsOfPlace } = baytreeTold;
  const { heading, line, goButton } = baytreeStep;

  function pausedFace(walk) {
    const left = walk.job.until ? Math.ceil((Date.parse(walk.job.until) - Date.now()) / 60000) : 0;
    return { step: [heading(left > 0 ? `Waiting: ${left} min left` : "Paused"),
      line("w-for", `At: ${baytreeWords.stepWords(walk.tables, walk.state)}`),
      h("p", {}, h("a", { class: "w-link", href: `${walk.root}index.html#jobs` }, "Go on with another job"))],
      bar: [goButton(["Resume"], () => walk.send({ event: "resume" }), "resume")] };
  }

  function changedWords(walk) {
    const { rows = {}, misfit, record: { revision } = {} } = walk.job;
    const changed = Object.entries(rows).filter(([place, hash]) => walk.hashOf(place) !== hash);
    const texts = changed.map(([place]) => walk.rowAt(place)?.text || partsOfPlace(place)[1]);
    if (misfit) return `This tree changed since: the job goes on where it still fits. ${walk.inWords(misfit)}`;
    if (texts.length) return `This tree changed since you began. Different now: ${texts.join("; ")}.`;
    return revision && revision !== walk.tables.trees[walk.state.tree].revision
      ? "This tree changed since this job was last saved, but not in the steps that you did." : "";
  }

  return { pausedFace, changedWords };
})();
