"""The page's scripts and styles, as plain files.

In: nothing. Out: the folder `WEB`, from which the site copies what its pages ask for.
"""

from pathlib import Path

WEB = Path(__file__).parent
