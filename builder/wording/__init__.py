"""How values are written for people: scope, money, units, kinds, hazards by severity, results.

In: values of the model. Out: plain phrases; nothing here is HTML or Markdown.
"""
