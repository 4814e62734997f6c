"""The option that repairs a fault for the least.

In: the options of a fix, priced. Out: the one that the customer's sheet names.
"""

from collections.abc import Sequence

from builder.plan.estimate_options import PARTLY_ELSEWHERE, EstimateOption
from builder.plan.refused_options import LEAVE


def cheapest_repair(options: Sequence[EstimateOption]) -> EstimateOption | None:
    """Return the option that solves the fault for the least, with everything in its price.

    Of ranges the upper end counts. What can fail is no full repair: then the next one is paid on
    top. None where the price of one such option isn't known, or where there is only one.
    """
    partly = (LEAVE, *PARTLY_ELSEWHERE)
    offered = [one for one in options if not one.not_offered and one.id not in partly]
    whole = [one for one in offered if not one.cost_with_comebacks]
    priced = [(one.total.high, one.total.low, one) for one in whole if one.total]
    if len(priced) < max(2, len(whole)):
        return None
    return min(priced, key=lambda one: one[:2])[2]
