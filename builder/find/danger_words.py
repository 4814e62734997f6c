"""The words that tell of danger, in groups: each is one concept to a sign of `dangers.py`.

In: nothing. Out: `WORD_GROUPS`, each name with its words and phrases, parted by commas. Regular
endings don't matter, irregular forms stand in `plain_forms.py`. A name in capitals is another
group. `~` stands for up to two words.
"""

from builder.find.calm_words import CALM_WORDS
from builder.find.danger_events import DANGER_EVENTS
from builder.find.danger_subjects import DANGER_SUBJECTS


def _read_groups(text: str) -> dict[str, str]:
    rows = (row.split(":") for row in " ".join(text.split()).split(";"))
    return {name.strip(): words.strip() for name, words in rows}


WORD_GROUPS = _read_groups(";".join((DANGER_SUBJECTS, DANGER_EVENTS, CALM_WORDS)))
