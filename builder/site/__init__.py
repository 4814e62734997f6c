"""The site as a folder: the work folder, the engine's run, the swap, scripts, styles, fonts.

In: pages as text. Out: a whole new site, swapped in for the old one.
"""
