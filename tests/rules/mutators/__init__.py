"""One way to break each rule: what is sound in, broken ones out.

A mutator edits the text of a tree, or of an article, where a position says, so that it is
wrong by its rule and by nothing else that matters to it: a slip that an author makes. `sound.py`
holds what is edited, the other modules the slips by the families of the rules.
"""

from . import (
    articles,
    flow,
    hand_overs,
    knowledge,
    limits,
    order,
    readings,
    set_up,
    text,
    upkeep,
    words,
)
from .sound import ArticleMutator, Mutator

MUTATORS: dict[str, Mutator] = {
    # flow
    "unreachable-step": flow.node_orphaned,
    "endless-loop": flow.sent_round,
    "dead-end": flow.no_way_on,
    "branch-to-nowhere": flow.branch_to_nowhere,
    "one-way-check": flow.one_way,
    "same-phrase-twice": flow.phrase_repeated,
    "unbounded-way-back": flow.bound_removed,
    "long-path": flow.asked_one_by_one,
    "no-such-tree": hand_overs.hand_over_to_nothing,
    "handover-loop": hand_overs.handed_round,
    # readings
    "reading-gap": limits.limit_shifted,
    "reading-overlap": limits.limit_pushed,
    "reversed-range": limits.ends_swapped,
    "mixed-units": readings.unit_of_another_kind,
    "unknown-unit": readings.unit_misspelt,
    "open-over-zero": limits.over_zero,
    "hidden-bands": limits.rest_not_written_out,
    "limit-without-load": readings.load_left_out,
    "limit-without-origin": readings.origin_removed,
    "limit-without-condition": readings.condition_removed,
    "resistance-under-power": readings.power_left_on,
    "finer-than-instrument": readings.figure_too_fine,
    "computed": readings.name_in_sum_misspelt,
    # order
    "codes-before-clearing": order.deed_removed(
        "record-codes", "clear-codes", "disconnect-battery"
    ),
    "supply-before-programming": order.deed_removed(
        "hold-supply", "program", "configure", "initialise"
    ),
    "caution-before-hazard": order.caution_left_out,
    "prove-before-replacing": order.proof_removed,
    "after": order.order_broken,
    # set-up
    "missing-set-up": set_up.set_up_dropped,
    "used-part-refused": set_up.used_for_new,
    "unsafe-option": set_up.option_offered,
    # knowledge
    "no-such-article": knowledge.misspelt(lambda step: step.how_to),
    "no-such-tool": knowledge.misspelt(lambda step: next(iter(step.tools), None)),
    "no-such-hazard": knowledge.misspelt(lambda step: next(iter(step.hazards), None)),
    "no-such-lamp": knowledge.lamp_misspelt,
    "no-such-system": knowledge.system_misspelt,
    "no-such-vehicle": knowledge.vehicle_unknown,
    "no-such-module": knowledge.module_misspelt,
    "malformed-code": knowledge.look_alike,
    "picture": knowledge.picture_misspelt,
    "unused-article": knowledge.article_dropped,
    "same-symptom-twice": knowledge.complaint_copied,
    # words
    "slang": words.slang_written,
    "abbreviation": words.abbreviated,
    "too-long-for-box": words.blanks_lost,
    "unprintable-sign": words.picture_sign_typed,
    # upkeep
    "no-verification": upkeep.verification_removed,
    "no-weights": upkeep.weight_removed,
    "chance-against-weights": upkeep.chance_lowered,
    "review-too-old": upkeep.review_aged,
    "linked-draft": hand_overs.led_to("draft"),
    "linked-retired": hand_overs.led_to("retired"),
    "unused-silence": upkeep.silence_outlived,
    # text
    "unknown-key": text.key_misspelt,
}
OF_ARTICLES: dict[str, ArticleMutator] = {
    "broken-link": articles.link_misspelt,
    "picture": articles.picture_misspelt,
    "no-such-tool": articles.tool_misspelt,
    "no-such-hazard": articles.hazard_misspelt,
    "review-too-old": articles.review_aged,
    "slang": articles.said("Reflash it"),
    "abbreviation": articles.said("Read the XQZ"),
}
