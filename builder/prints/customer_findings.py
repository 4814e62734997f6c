"""What was measured and seen, on the customer's sheet.

In: what a walk found. Out: flowables. What was seen with the work done, where that was the test,
stands apart from what the vehicle came in with; so does what was only told.
"""

from collections.abc import Iterator, Sequence

from reportlab.platypus import Flowable

from builder.prints.customer_options import Spelled
from builder.prints.document import blank_to_fill, heading, paragraph, paragraph_style
from builder.walk.cause_lines import worst_first
from builder.walk.diagnosis import Diagnosis
from builder.walk.measured import MeasuredCheck
from builder.walk.measured_lines import check_line
from builder.wording.sentences import uncapitalized


def seen_parts(found: Diagnosis, spelled: Spelled) -> Iterator[Flowable]:
    """Yield what was seen as found, what with the work done, and what was only told."""
    proofs = worst_first(found.evidence)
    told = [one for one in (*found.led, *proofs) if one.told or one.stated]
    after = [one for one in proofs if found.done_as_test and one not in told]
    seen = [one for one in (*found.led, *proofs) if one not in (*told, *after)]
    if seen or found.to_measure:
        yield heading("What we measured and saw")
        yield from _checks(seen, spelled)
    for asked in found.to_measure:
        yield blank_to_fill(f"{asked}{'' if asked.endswith('?') else ':'}", 16)
    if after:
        yield heading("What we measured and saw with this work done")
        yield from _checks(after, spelled)
    if found.good:
        words = f"Also tested, and good: {'; '.join(map(uncapitalized, found.good))}."
        yield paragraph(spelled(words), paragraph_style(12, below=2))
    if told:
        yield heading("What we were told or looked up, not measured here")
        yield from _checks(told, spelled)


def _checks(checks: Sequence[MeasuredCheck], spelled: Spelled) -> Iterator[Flowable]:
    for check in checks:
        # What decided a procedure is what a customer can be shown, once.
        read = [one for one in check.inner if one.values][-1:] or check.inner[-1:]
        is_same = any(_named_as(one) == _named_as(check) for one in read)
        for one in (*([] if is_same else [check]), *read):
            yield paragraph(f"{spelled(check_line(one))}.", paragraph_style(12, below=2))


def _named_as(check: MeasuredCheck) -> str:
    return check_line(check).partition(":")[0]
