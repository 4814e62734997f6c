"""A question and its answer as a statement, for those who weren't there."""

import pytest

from builder.wording.answer_parts import answer_parts
from builder.wording.finding_text import finding_text

YES_OR_NO = [
    ("Does A/C water drip under the car?", "no", "A/C water doesn't drip under the car"),
    ("Does a test light glow across it?", "yes", "A test light glows across it"),
    ("Is the alternator commanded to charge?", "commanded on", "The alternator is commanded on"),
    ("Is the alternator commanded to charge?", "not commanded",
     "The alternator is not commanded to charge"),
    ("Do the fans run when commanded on?", "no", "The fans don't run when commanded on"),
    ("Is the belt tight, its pulley firm?", "yes", "The belt is tight, its pulley firm"),
    ("Is the belt tight, its pulley firm?", "no", "The belt isn't tight, or its pulley isn't firm"),
    ("Are all lug nuts tight?", "no", "Not all lug nuts are tight"),
    ("Is anything loose in the front end?", "yes", "Something is loose in the front end"),
    ("Is anything loose in the front end?", "no", "Nothing is loose in the front end"),
    ("Is a wire broken in the boot?", "no", "No wire is broken in the boot"),
    ("Is there coolant anywhere outside?", "yes", "There is coolant somewhere outside"),
    ("Did it run in another car before?", "yes", "It ran in another car before"),
    ("Does it start when you prime it?", "yes", "It starts when we prime it"),
    ("Does the switch pass the request?", "no, it has power",
     "The switch doesn't pass the request: it has power"),
    ("Is a wheel rough, loud, or loose?", "none", "No wheel is rough, loud, or loose"),
    ("Does any other module not respond?", "no", "No other module doesn't respond"),
]  # fmt: skip
OTHER_ANSWERS = [
    ("Is the fan relay good?", "no feed", "Fan relay: no feed"),
    ("Are power and ground good at the ABS?", "bad ground",
     "Power and ground at the ABS: bad ground"),
    ("Does the system hold pressure?", "leaks outside", "The system leaks outside"),
    ("Does the sensor take its calibration?", "refused",
     "Checked if the sensor takes its calibration: refused"),
    ("Does a light glow on both sides of the fuse?", "one side",
     "A light glows on only one side of the fuse"),
]  # fmt: skip
OF_WHAT = [
    ("How do the rotors look?", "cracked", "Rotors: cracked"),
    ("What do you hear at the actuator?", "clicks", "Heard at the actuator: clicks"),
    ("Where does the smoke come out?", "gas cap", "Where the smoke comes out: gas cap"),
    ("What happens when you plug it in?", "its fuse blows", "When we plug it in: its fuse blows"),
    ("Which DTC is set?", "none", "DTC set: none"),
    ("Which other DTCs return?", "none", "No other DTCs return"),
    ("Which modules don't respond?", "none", "Modules that don't respond: none"),
    ("Which module was replaced first?", "PCM", "Module replaced first: PCM"),
    ("Which software and VIN does it have?", "blank", "Software and VIN it has: blank"),
    ("Which hose, pinched, brings it back?", "PCV", "Hose that, pinched, brings it back: PCV"),
    ("How many cylinders are low?", "all", "Cylinders that are low: all"),
    ("How do motor and door move?", "door only", "Motor and door: door only"),
    ("Is the belt tight, the pump firm, its shaft dry?", "no, belt", "The belt isn't tight"),
    (
        "Is the belt tight, the pump firm, its shaft dry?",
        "no, pump",
        "The pump isn't firm, or its shaft isn't dry",
    ),
    ("Is the light still on?", "no", "The light is no longer on"),
    (
        "Does the misfire move when you swap coils?",
        "it stays",
        "The misfire stays when we swap coils",
    ),
    (
        "Where does the bulb flicker as you move it?",
        "nowhere",
        "The bulb flickers as we move it: nowhere",
    ),
    ("What moves when you rock it?", "nothing", "Nothing moves when we rock it"),
    ("Does water in each corner run out?", "no", "Water in at least one corner doesn't run out"),
    ("What do you hear or feel there?", "nothing", "Nothing heard or felt there"),
    ("Which VIN is in the module?", "another car", "VIN in the module: another car"),
]


@pytest.mark.parametrize(("question", "answer", "finding"), YES_OR_NO + OTHER_ANSWERS + OF_WHAT)
def test_a_check_is_told_as_what_was_seen(question: str, answer: str, finding: str) -> None:
    """No question mark is left, and a no is said of what it is about."""
    assert finding_text(question, answer) == finding


def test_a_question_whose_verb_is_unknown_is_kept() -> None:
    """Better a question with its answer than a wrong sentence."""
    assert finding_text("Does it frobnicate?", "no") == "Does it frobnicate: no"


@pytest.mark.parametrize(
    ("answer", "parts"),
    [
        ("gone, loose, oily, or glazed", ("gone", "loose", "oily", "glazed")),
        ("no, pins or piston", ("no, pins", "no, piston")),
        ("yes, or a newer number", ("yes", "a newer number")),
        ("tread, 1/4 in. or less", ()),
        ("yes, and its wires are good", ()),
    ],
)
def test_an_answer_for_several_things_is_taken_apart(answer: str, parts: tuple[str, ...]) -> None:
    """One of them was seen; an answer for one thing has no parts."""
    assert answer_parts(answer) == parts
