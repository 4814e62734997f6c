"""A check from its map.

In: the map of a check that has passed the schema. Out: a `Check`, and a finding for every mistake.
A result that doesn't fit its readings is left out.
"""

from collections.abc import Iterator

from builder.model.checks import Check, Computed, Reading, Result
from builder.model.finding import Finding
from builder.model.text import Text
from builder.reader.nodes import EMPTY, Map
from builder.reader.range_neighbors import fitting_words
from builder.reader.reading_forms import figure_from, readings_from
from builder.reader.result_ranges import ResultForm, compares_of, ranges_of, result_text
from builder.reader.values import (
    branch,
    map_,
    maps,
    named_texts,
    number,
    returned,
    text,
)


def check_from(step: Map, findings: list[Finding]) -> Check:
    """Build a check; its mistakes are added to `findings`."""
    readings = readings_from(step, findings)
    computed = tuple(
        Computed(key, value)
        for key, value in (map_(step, "computed") or EMPTY).items()
        if isinstance(value, Text)
    )
    figure = figure_from(step, findings)
    by_name = {reading.name: reading for reading in readings}
    names = frozenset((*by_name, *(str(one.name) for one in computed)))
    form = ResultForm(by_name, names, figure, _instead(step, by_name.get("")))
    return Check(
        results=tuple(_results(step, form, findings)),
        readings=readings,
        computed=computed,
        figure=figure,
        several=text(step, "several") is not None,
        cannot_test=branch(step, "cannot_test"),
        by=text(step, "by"),
        with_=named_texts(step, "with"),
        told=text(step, "told") == "yes",
    )


def _instead(step: Map, single: Reading | None) -> dict[str, str]:
    """Return what to write for results that aren't ranges, where the one reading needs them."""
    if single is None or single.one_of or single.spec:
        return {}
    typed = [words for node in maps(step, "results") if (words := text(node, "result"))]
    return fitting_words([*typed, *(map_(step, "results") or EMPTY)], single)


def _results(step: Map, form: ResultForm, findings: list[Finding]) -> Iterator[Result]:
    """Yield the results, from a list or from a map of branches."""
    for node in maps(step, "results"):
        if result := _result(node, form, findings):
            yield result
    for words, target in (map_(step, "results") or EMPTY).items():
        node = Map({Text("result", words.at): words, Text("branch", target.at): target})
        node.at = words.at
        if result := _result(node, form, findings):
            yield result


def _result(node: Map, form: ResultForm, findings: list[Finding]) -> Result | None:
    value = node[Text("result")]
    exit_ = branch(node, "branch") or returned(node)
    assert exit_ is not None  # the schema requires one of them
    before = len(findings)
    ranges = ranges_of(node, value, form, findings)
    compares = compares_of(value, form)
    if len(findings) > before:
        return None
    return Result(
        at=node.at,
        text=result_text(node, value),
        branch=exit_,
        ranges=ranges,
        compares=compares,
        otherwise=value == "otherwise" and not form.single and bool(form.readings),
        means=text(node, "means"),
        done=text(node, "done") is not None,
        with_=named_texts(node, "with"),
        weight=number(node, "weight"),
        chance=number(node, "chance"),
    )
