/* How a screen of a walk is laid out, so that the check and its answers are in view.
 *
 * In: the walk, its element, how it is drawn. Out: `baytreeFit`: `fit` chooses the look of a screen on
 * arrival, in `walk.view`; `settle` keeps the answers low, after each drawing.
 */
"use strict";
globalThis.baytreeFit = (walk, main, draw) => {
  const { linesLeft } = baytreeStep;
  const LARGE = 24; // pixels of text from which nothing stays fixed

  // Rows, else two columns, else the lines to do on a screen before: decided once, on arrival.
  const overflows = () => document.documentElement.scrollHeight > innerHeight + 1;
  const textSize = () => parseFloat(getComputedStyle(main).fontSize);
  const fits = (look) => { Object.assign(walk.view, look); draw(); return !overflows(); };
  const fitsAnswers = (look) => fits({ ...look, columns: false }) || fits({ columns: true });

  // The lines that may go on a screen before the check; none where there is no check.
  const linesToMove = ({ phase, kind, lines = [] }) => (phase === "step" && kind === "check"
    ? lines.filter(({ of }) => linesLeft(walk).includes(of)) : []);

  function fit(face) {
    const { view, shown } = walk;
    if (textSize() >= LARGE || view.face === "first") return;
    if (view.face === "ready") { if (!face) fitCautions(shown); return; }
    if (!overflows() || fits({ columns: true }) || view.face !== "step" || view.moved) return;
    const lines = linesToMove(shown);
    if (!lines.length) return;
    if (!face && lines.some(({ ticked }) => !ticked)) fits({ face: "first", moved: true });
    else fitsAnswers({ moved: true });
  }

  // Cautions to acknowledge stand on the step if they fit above the bar, with the check and its lines,
  // and all fits once they are read; an action or a repair may scroll. Else they stand on a screen
  // before it; with the lines to do if those would need a second screen.
  function fitCautions(shown) {
    const scrolls = shown.kind !== "check" && shown.phase === "step";
    if (!shown.procedure && (scrolls || fitsAnswers({ face: "together", isRead: true }))) {
      fits({ face: "together", isRead: false });
      if (areAbove(".w-bar", scrolls ? ".w-end, h1" : "h1, .w-ticks")) return;
    }
    const isJoined = linesToMove(shown).length > 0 && !fitsAnswers({ face: "step", isRead: true });
    fits({ face: "ready", isRead: false, isJoined });
  }

  const areAbove = (below, parts) => [...main.querySelectorAll(parts)].every((one) => one.getBoundingClientRect().bottom + scrollY + main.querySelector(below).offsetHeight <= innerHeight);

  // The answers stay at the bottom while they leave the check in view, and what a practice vehicle
  // shows, else only the bar does. The next screen is drawn like the last, so most have their layout computed once.
  function settle() {
    const answers = main.querySelector(".w-answers"), isLarge = textSize() >= LARGE;
    if (answers) walk.staysLow = !isLarge && areAbove(".w-answers", "h1, .w-shows");
    main.querySelector(".w-trail").scrollLeft = 1e6;
    main.classList.toggle("loose", isLarge);
    answers?.classList.toggle("stays", walk.staysLow);
  }

  return { fit, settle };
};
