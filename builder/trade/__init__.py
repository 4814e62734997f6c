"""Arithmetic of the trade: facts and sums that people get wrong at the bench.

In: numbers and what people type. Out: numbers, small records, or a `Mistake` that says what was
wrong with the input. Pure functions; nothing here reads a file or knows of a tree.

    units, quantities, instruments     what is read at the bench, and how sure it is
    codes, failure_types, status       trouble codes and what they say
    refusals, vehicle_numbers          what a module answers, which vehicle it is
    circuits, bus, wires, battery, sensors, legibility     sums
    expressions                        computed readings of a tree, made of those sums
    sums, look_ups                     text typed at the bench in, an answer in words out
    as_data                            the tables of all these, for a page's script
"""
