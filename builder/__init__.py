"""Baytree: a shop's diagnostic knowledge as text, proved sound and given back in usable forms.

In: a shop's folder (`trees/`, `kb/`, `site_config/`). Out: findings, a static site, printed sheets.
Data travels one way through the rooms; `commands.py` shows each pipeline in a few lines:

    files -> reader -> model -> rules -> findings -> report
                         |----> plan, walk, chart -> prints, find, pages -> site
"""

__version__ = "0.1.0"
