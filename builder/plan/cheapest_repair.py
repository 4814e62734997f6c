"""The option that repairs a fault for the least.

In: the options of a fix, priced. Out: the one that the customer's sheet names.
"""

from collections.abc import Sequence

from builder.plan.estimate_options import PARTLY_ELSEWHERE, EstimateOption
from builder.plan.refused_options import LEAVE


def cheapest_repair(options: Sequence[EstimateOption]) -> EstimateOption | None:
    """Return the option that solves the fault for the least, with everything in its price.

    Of ranges the upper end counts, and comebacks as they cost on average. None where the price of
    one such option isn't known, or where there is only one.
    """
    partly = (LEAVE, *PARTLY_ELSEWHERE)
    whole = [one for one in options if not one.not_offered and one.id not in partly]
    costs = [(option.cost_with_comebacks or option.total, option) for option in whole]
    priced = [(cost.high, cost.low, option) for cost, option in costs if cost]
    if len(priced) < max(2, len(whole)):
        return None
    return min(priced, key=lambda one: one[:2])[2]
