"""The site as a folder: page cache, engine, assets, manifest, swap; and the preview server.

In: pages as HTML. Out: a complete new site in the place of the old one.
"""
