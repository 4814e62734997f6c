"""One way to break each rule.

In: a sound tree or article. Out: mutants of it. A mutator makes one typical mistake of an author in
the text, so that the text breaks its rule. `sound.py` holds what is edited, the other modules the
mistakes by the family of the rule.
"""

from . import (
    articles,
    flow,
    handoffs,
    jobs,
    knowledge,
    limits,
    needs,
    order,
    procedures,
    readings,
    setup,
    states,
    text,
    upkeep,
    words,
)
from .procedures import ProcedureMutator
from .sound import ArticleMutator, Mutator
from .states import ConditionsMutator

MUTATORS: dict[str, Mutator] = {
    # flow
    "unreachable-step": flow.step_orphaned,
    "endless-loop": flow.sent_around,
    "dead-end": flow.next_step_removed,
    "branch-to-nowhere": flow.branch_to_nowhere,
    "one-way-check": flow.one_way,
    "same-phrase-twice": flow.phrase_repeated,
    "unbounded-way-back": flow.bound_removed,
    "long-path": flow.asked_one_by_one,
    "no-such-tree": handoffs.handoff_to_nowhere,
    "handover-loop": handoffs.handed_off_in_a_loop,
    # readings
    "reading-gap": limits.limit_shifted,
    "reading-overlap": limits.limit_pushed,
    "reversed-range": limits.ends_swapped,
    "mixed-units": readings.unit_of_another_kind,
    "unknown-unit": readings.unit_misspelled,
    "open-over-zero": limits.over_zero,
    "hidden-bands": limits.rest_not_written_out,
    "limit-without-load": readings.load_left_out,
    "limit-without-origin": readings.origin_removed,
    "limit-without-condition": readings.condition_removed,
    "resistance-under-power": readings.power_left_on,
    "finer-than-instrument": readings.figure_too_fine,
    "computed": readings.name_in_sum_misspelled,
    # order
    "codes-before-clearing": order.deed_removed(
        "record-codes", "clear-codes", "disconnect-battery"
    ),
    "supply-before-programming": order.supply_left_out,
    "caution-before-hazard": order.caution_removed,
    "prove-before-replacing": order.proof_removed,
    "after": order.order_broken,
    # evidence
    "closed-job": jobs.led_to_another_fix,
    # setup
    "missing-set-up": setup.setup_dropped,
    "used-part-refused": setup.used_for_new,
    "unsafe-option": setup.option_offered,
    # knowledge
    "no-such-article": knowledge.misspelled(lambda step: step.how_to),
    "no-such-tool": knowledge.misspelled(lambda step: next(iter(step.tools), None)),
    "no-such-hazard": knowledge.misspelled(lambda step: next(iter(step.hazards), None)),
    "no-such-lamp": knowledge.lamp_misspelled,
    "no-such-system": knowledge.system_misspelled,
    "no-such-vehicle": knowledge.vehicle_unknown,
    "no-such-module": knowledge.module_misspelled,
    "malformed-code": knowledge.look_alike,
    "picture": knowledge.picture_misspelled,
    "unused-article": knowledge.article_dropped,
    "same-symptom-twice": knowledge.complaint_copied,
    # words
    "slang": words.slang_written,
    "abbreviation": words.abbreviated,
    "too-long-for-box": words.spaces_lost,
    "unprintable-sign": words.emoji_typed,
    # upkeep
    "no-verification": upkeep.verification_removed,
    "no-weights": upkeep.weight_removed,
    "chance-against-weights": upkeep.chance_lowered,
    "review-too-old": upkeep.review_aged,
    "linked-draft": handoffs.led_to("draft"),
    "linked-retired": handoffs.led_to("retired"),
    "unused-silence": upkeep.silence_outlived,
    # text
    "unknown-key": text.key_misspelled,
}
OF_RUNS: dict[str, Mutator] = {
    "no-such-procedure": procedures.by_misspelled,
    "no-such-word": procedures.word_misspelled,
    "unhandled-word": procedures.words_replaced,
    "procedure-values": procedures.value_left_out_or_wrong,
}
OF_PROCEDURES: dict[str, ProcedureMutator] = {
    "no-such-word": procedures.returned_word_misspelled,
    "never-returned": procedures.word_added,
    "never-on": procedures.part_misspelled,
    "unused-value": procedures.value_forgotten,
    "procedure-loop": procedures.run_by_itself,
    "long-procedure": procedures.steps_added,
}
OF_ARTICLES: dict[str, ArticleMutator] = {
    "broken-link": articles.link_misspelled,
    "picture": articles.picture_misspelled,
    "no-such-tool": articles.tool_misspelled,
    "no-such-hazard": articles.hazard_misspelled,
    "review-too-old": articles.review_aged,
    "slang": articles.with_words("Reflash it"),
    "abbreviation": articles.with_words("Read the XQZ"),
}
OF_CONDITIONS: dict[str, ConditionsMutator] = {
    "no-such-condition": states.name_misspelled,
    "no-such-hazard": states.hazard_misspelled,
    "condition-group": states.normal_lost_or_doubled,
    "condition-text": states.words_lost,
    "condition-clash": states.excluded_for_good,
}
OF_STATES: dict[str, Mutator] = {
    "no-such-state": needs.state_misspelled,
    "state-in-words": needs.written_with_blanks,
    "state-value": needs.value_given,
    "states-at-odds": needs.another_of_its_group,
    "power-not-named": needs.power_left_out,
    "hook-up": needs.hooked_up_in_use,
    "state-deed": needs.deed_of_a_state,
    "undecided-state": needs.state_not_decided,
    "too-many-states": needs.left_unplugged,
}
