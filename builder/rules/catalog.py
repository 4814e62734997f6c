"""Every rule, one line each, in the order of their pages.

A rule is a module: `RULE` holds its name and severity, its docstring is its page, `check` judges
one tree, `check_library` judges the knowledge and all trees in summary. To add a rule, write its
module, name it here, and add its cases under `tests/rules/cases/`.
"""

from importlib import import_module
from typing import cast

from builder.rules.shared.rule import DocumentedRule, LibraryRule, TreeRule

MODULES = (
    # text: the reader finds these errors; only their pages are here
    "found_by_reader.encoding",
    "found_by_reader.size",
    "found_by_reader.unreadable",
    "found_by_reader.file_name",
    "found_by_reader.link",
    "found_by_reader.merge_conflict",
    "found_by_reader.tab",
    "found_by_reader.syntax",
    "found_by_reader.documents",
    "found_by_reader.alias",
    "found_by_reader.tag",
    "found_by_reader.depth",
    "found_by_reader.duplicate_key",
    "found_by_reader.old_format",
    "found_by_reader.unknown_key",
    "found_by_reader.missing_key",
    "found_by_reader.wrong_type",
    "found_by_reader.bad_value",
    "found_by_reader.lost_text",
    "found_by_reader.too_long",
    "found_by_reader.raw_html",
    "found_by_reader.unsafe_link",
    "found_by_reader.unsafe_picture",
    "found_by_reader.engine_settings",
    # flow
    "unreachable_step",
    "endless_loop",
    "dead_end",
    "branch_to_nowhere",
    "one_way_check",
    "same_phrase_twice",
    "unbounded_way_back",
    "long_path",
    "handover_loop",
    "no_such_tree",
    "no_such_question",
    # readings
    "reading_gap",
    "reading_overlap",
    "reversed_range",
    "unknown_unit",
    "mixed_units",
    "open_over_zero",
    "hidden_bands",
    "spec_result",
    "lost_limit",
    "spec_load",
    "spec_unit",
    "limit_without_load",
    "resistance_under_power",
    "limit_without_condition",
    "limit_without_origin",
    "finer_than_instrument",
    "computed",
    # order
    "codes_before_clearing",
    "supply_before_programming",
    "caution_before_hazard",
    "prove_before_replacing",
    "procedure_left_out",
    "unmarked_test",
    "after",
    # evidence
    "already_passing",
    "part_without_proof",
    "proved_by",
    "quoted_reading",
    "claim_without_reading",
    "no_such_verification",
    "closed_job",
    # drive
    "no_drive_advice",
    # states
    "no_such_state",
    "state_value",
    "state_in_words",
    "states_at_odds",
    "power_not_named",
    "undecided_state",
    "impossible_state",
    "hook_up",
    "state_deed",
    "too_many_states",
    "not_put_back",
    # setup
    "missing_set_up",
    "setup_order",
    "used_part_refused",
    "unsafe_option",
    # knowledge
    "no_such_article",
    "no_such_tool",
    "no_such_hazard",
    "no_such_lamp",
    "no_such_system",
    "wrong_folder",
    "no_such_vehicle",
    "no_such_module",
    "no_such_spec",
    "no_such_part",
    "vehicle_lacks_data",
    "vehicle_value",
    "malformed_code",
    "no_such_condition",
    "condition_group",
    "condition_text",
    "condition_clash",
    "broken_link",
    "picture",
    "same_short_line",
    "unused_article",
    "same_symptom_twice",
    # words
    "template_text",
    "slang",
    "house_word",
    "abbreviation",
    "too_long_for_box",
    "unprintable_sign",
    # length
    "too_much_to_read",
    # procedures
    "no_such_procedure",
    "unhandled_word",
    "no_such_word",
    "never_returned",
    "procedure_values",
    "procedure_loop",
    "never_on",
    "long_procedure",
    "unused_procedure",
    "unused_value",
    # upkeep
    "no_verification",
    "no_weights",
    "chance_against_weights",
    "labor_hours",
    "review_too_old",
    "review_in_doubt",
    "linked_draft",
    "linked_retired",
    "unused_silence",  # runs after all others, on what the comments hide
)

RULES = tuple(cast(DocumentedRule, import_module(f"builder.rules.{name}")) for name in MODULES)
TREE_RULES = tuple(rule for rule in RULES if isinstance(rule, TreeRule))
LIBRARY_RULES = tuple(rule for rule in RULES if isinstance(rule, LibraryRule))
