"""Practice in the page: the minutes used and the least are counted alike."""

import json
import re
from typing import TYPE_CHECKING

from builder.check.unchecked_library import read_library
from builder.pages.calculators import calculator_files
from builder.pages.walk_scripts import WALK_SCRIPTS
from builder.web import WEB
from tests.walk.conftest import SAMPLES, tables_of

if TYPE_CHECKING:
    from playwright.sync_api import Browser

MORE = ("quantities.js", "follow.js", "walk-measured.js", "expressions.js", "walk-fill.js",
        "walk-practice.js")  # fmt: skip
# Two techs who enter what is shown: one measures, the other only taps the results.
WALKED = """
([text, tapped]) => {
  const tables = JSON.parse(text), { BEGINNING, reduce } = baytreeReduce, said = {};
  for (const [tree, { start, steps }] of Object.entries(tables.trees)) {
    for (const fault of Object.keys(steps).filter((id) => steps[id].kind === "fix")) {
      const practice = new baytreePractice.Practice(tables, tree, fault);
      let state = reduce(tables, BEGINNING, { event: "start", tree });
      for (let shown; !state.refused && !baytreeTold.isOver(state);) {
        shown = baytreeRecord.screen(tables, state);
        const right = practice.rightEvent(state, shown, []);
        const event = tapped ? right : practice.measured(state, right);
        practice.note({ state, shown, row: practice.rowAt(state) }, event);
        state = reduce(tables, state, event);
      }
      said[`${tree}#${fault}`] = practice.endWords(state);
    }
  }
  return said;
}
"""


def test_who_takes_what_is_shown_uses_the_least(browser: "Browser") -> None:
    """Whether measured or only tapped: used is never less than the least, and here no more."""
    page = browser.new_page()
    library, _ = read_library(SAMPLES)
    page.add_script_tag(content=calculator_files(library)["trade-data.js"])
    for name in (*WALK_SCRIPTS[1:], *MORE):
        page.add_script_tag(content=(WEB / name).read_text("utf-8"))
    tables = tables_of(SAMPLES)
    text = json.dumps({"shop": tables.shop, "trees": dict(tables.trees)})
    for tapped in (False, True):
        said = page.evaluate(WALKED, [text, tapped])
        assert said
        for place, words in said.items():
            used = re.search(r"You used (\d+) min; the least is (\d+)\.", words)
            assert used, (place, words)
            assert used[1] == used[2], (place, words)
    page.close()
