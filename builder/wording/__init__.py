"""Values as text for people: vehicles, money, units, labels, hazards by severity, results.

In: values of the model. Out: plain text; nothing here is HTML or Markdown.
"""
