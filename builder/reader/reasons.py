"""Why a mistake of text matters in the bay.

In: the rule, and what the value should have been (the title of its schema). Out: one sentence.
"""

BY_RULE = {
    "unknown-key": "everything under it would be ignored",
    "missing-key": "the tech who follows the tree finds nothing there",
    "wrong-type": "it can't be read this way, so nobody sees what you wrote",
    "bad-value": "it can't be read this way, so nobody sees what you wrote",
    "too-long": "it doesn't fit its box on the chart",
}
BY_TITLE = {
    "a number of minutes": "the time of the job is added up from these minutes",
    "a number of hours": "the estimate is priced from these hours",
    "a number of jobs": "it's how often it is this and not the others, not what a part weighs",
    "an amount, or a range of amounts": "the customer's estimate adds up these amounts",
    "a date": "nobody can tell how old this is",
    "a number from 0 to 1": "the expected minutes are calculated from it",
    "a number": "calculations and limits rest on it",
    "a number, or OL": "no reading could be compared with it",
    "a whole number": "the tech can't tell how many or how often",
    "a branch": "the tech doesn't know where to go",
    "a list of phrases": "the search would take all of it as one phrase",
    "a phrase": "the search wouldn't find what the customer says",
    "a list of DTCs": "a search for the DTC wouldn't find the tree",
    "a list of tools": "the tech would start without the tool",
    "a list of hazards": "the page and the print would leave out the caution",
    "a status": "techs couldn't tell a draft from a tree to rely on",
    "a kind of stop": "the tech at this end wouldn't know who is next",
    "model years": "the tree would be offered for the wrong vehicles",
    "`any`, or a list of vehicles": "the tree would be offered for the wrong vehicles",
    "a reason": "the customer reads it, and would know no more than before",
    "a file name": "the step would show no picture",
}


def why(rule: str, title: str = "") -> str:
    """Return why it matters."""
    return BY_TITLE.get(title) or BY_RULE[rule]
