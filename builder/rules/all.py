"""Every rule there is, in the order in which they are told.

A rule is a module: `RULE` says its name and gravity, its docstring is its page, `check` judges one
tree, `check_library` the knowledge and all trees in summary. To add a rule, write its module and
name it here.
"""

from builder.rules import (
    after,
    branch_to_nowhere,
    caution_before_hazard,
    codes_before_clearing,
    dead_end,
    endless_loop,
    handover_loop,
    malformed_code,
    no_such_article,
    no_such_hazard,
    no_such_lamp,
    no_such_module,
    no_such_system,
    no_such_tool,
    no_such_tree,
    no_such_vehicle,
    one_way_check,
    prove_before_replacing,
    reading_gap,
    reading_overlap,
    reversed_range,
    same_phrase_twice,
    supply_before_programming,
    unbounded_way_back,
    unknown_unit,
    unreachable_step,
)
from builder.rules.rule import Documented, LibraryRule, TreeRule
from builder.rules.text import (
    alias,
    bad_value,
    depth,
    documents,
    duplicate_key,
    encoding,
    link,
    lost_text,
    missing_key,
    raw_html,
    size,
    syntax,
    tab,
    tag,
    too_long,
    unknown_key,
    unsafe_link,
    wrong_type,
)

# Mistakes of text are found by the reader; only their pages are here.
OF_TEXT: tuple[Documented, ...] = (
    encoding,
    size,
    link,
    tab,
    syntax,
    documents,
    alias,
    tag,
    depth,
    duplicate_key,
    unknown_key,
    missing_key,
    wrong_type,
    bad_value,
    lost_text,
    too_long,
    raw_html,
    unsafe_link,
)

PER_TREE: tuple[TreeRule, ...] = (
    unreachable_step,
    endless_loop,
    dead_end,
    branch_to_nowhere,
    no_such_tree,
    one_way_check,
    same_phrase_twice,
    unbounded_way_back,
    reading_gap,
    reading_overlap,
    reversed_range,
    unknown_unit,
    no_such_article,
    no_such_tool,
    no_such_hazard,
    no_such_lamp,
    no_such_system,
    no_such_vehicle,
    no_such_module,
    malformed_code,
    codes_before_clearing,
    supply_before_programming,
    caution_before_hazard,
    prove_before_replacing,
    after,
)
PER_LIBRARY: tuple[LibraryRule, ...] = (
    handover_loop,
    unknown_unit,
    no_such_tool,
    no_such_hazard,
    no_such_vehicle,
    no_such_module,
    malformed_code,
)
# Each once, in the order of their families.
ALL: tuple[Documented, ...] = tuple(dict.fromkeys((*OF_TEXT, *PER_TREE, *PER_LIBRARY)))
