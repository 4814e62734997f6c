"""Arithmetic of the trade: facts and calculations that people get wrong in the bay.

In: numbers and what people type. Out: numbers, small records, or a `Mistake` that explains what
is wrong with the input. Pure functions; nothing here reads a file or knows of a tree.

    units, quantities, instruments     a reading, and how sure it is
    codes, failure_types, status       DTCs and what they mean
    refusals, refusal_codes, vin       what a module answers, which vehicle it is
    circuits, bus, wires, battery, sensors, legibility     calculations
    expressions                        computed readings of a tree, made of those
    calculators, lookups, answers      text entered in a form in, lines of text out
    as_data                            the tables of all these, for a page's script
"""
