"""Lets the tests and the benchmark of charts share what they look for."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
