"""What a module answers when it refuses, and what that means for a set-up routine.

In: the number or the answer as a scan tool shows it. Out: `Refusal`: its standard name, what kind
of trouble it is, and what to do. Numbers and names after ISO 14229-1 annex A; the words are ours.
Routines can move parts: hands clear, and the maker's service information says what must be so.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from builder.trade.mistake import Mistake

WAIT, CONDITIONS, SUPPLY, SEQUENCE = "wait", "conditions", "supply", "sequence"
SECURITY, LOCKED, OUT_OF_RANGE = "security", "locked", "out of range"
NOT_SUPPORTED, FAILED = "not supported", "failed"

NEXT_STEP: Mapping[str, str] = {
    WAIT: "not refused, or not for good: wait for the last answer, then ask again",
    CONDITIONS: "put right what the routine wants, then start it again",
    SUPPLY: "put the supply right at the clamps, then start the routine again",
    SEQUENCE: "an earlier step is missing: start the routine from its beginning",
    SECURITY: "the tool is not let in: right tool, right access, right vehicle",
    LOCKED: "locked after wrong tries: key on, touch nothing, wait the stated time",
    OUT_OF_RANGE: "the module does not take this value: check it against the vehicle",
    NOT_SUPPORTED: "this module or session cannot do it: right module, right session",
    FAILED: "the routine broke off: read the codes before trying again",
}


@dataclass(frozen=True, slots=True)
class Refusal:
    """A negative response of a module."""

    number: int
    name: str  # of ISO 14229-1
    kind: str  # one of the keys of NEXT_STEP
    means: str  # in the words of the bay


_LIST = (
    Refusal(0x10, "generalReject", FAILED, "refused without a reason"),
    Refusal(0x11, "serviceNotSupported", NOT_SUPPORTED, "the module does not know this service"),
    Refusal(0x12, "subFunctionNotSupported", NOT_SUPPORTED, "the module does not know this part"),
    Refusal(
        0x13,
        "incorrectMessageLengthOrInvalidFormat",
        NOT_SUPPORTED,
        "the tool asked in a wrong form",
    ),
    Refusal(0x14, "responseTooLong", NOT_SUPPORTED, "the answer is too long for the network"),
    Refusal(0x21, "busyRepeatRequest", WAIT, "the module is busy"),
    Refusal(0x22, "conditionsNotCorrect", CONDITIONS, "some condition is not met"),
    Refusal(0x24, "requestSequenceError", SEQUENCE, "a step before this one is missing"),
    Refusal(0x25, "noResponseFromSubnetComponent", FAILED, "a part behind the module is silent"),
    Refusal(
        0x26, "failurePreventsExecutionOfRequestedAction", FAILED, "a fault stored now prevents it"
    ),
    Refusal(0x31, "requestOutOfRange", OUT_OF_RANGE, "the value is outside what is allowed"),
    Refusal(0x33, "securityAccessDenied", SECURITY, "access has not been given"),
    Refusal(0x34, "authenticationRequired", SECURITY, "the tool must prove who it is first"),
    Refusal(0x35, "invalidKey", SECURITY, "the answer to the access question was wrong"),
    Refusal(0x36, "exceededNumberOfAttempts", LOCKED, "too many wrong tries"),
    Refusal(0x37, "requiredTimeDelayNotExpired", LOCKED, "the waiting time after tries still runs"),
    Refusal(0x70, "uploadDownloadNotAccepted", CONDITIONS, "it will not take software now"),
    Refusal(0x71, "transferDataSuspended", FAILED, "the transfer of software was broken off"),
    Refusal(0x72, "generalProgrammingFailure", FAILED, "its memory could not be written"),
    Refusal(0x73, "wrongBlockSequenceCounter", SEQUENCE, "a piece of the software was lost"),
    Refusal(0x78, "requestCorrectlyReceived-ResponsePending", WAIT, "accepted, answer to follow"),
    Refusal(
        0x7E, "subFunctionNotSupportedInActiveSession", NOT_SUPPORTED, "not in this session: part"
    ),
    Refusal(
        0x7F, "serviceNotSupportedInActiveSession", NOT_SUPPORTED, "not in this session: service"
    ),
    Refusal(0x81, "rpmTooHigh", CONDITIONS, "engine speed too high"),
    Refusal(0x82, "rpmTooLow", CONDITIONS, "engine speed too low"),
    Refusal(0x83, "engineIsRunning", CONDITIONS, "engine must be off"),
    Refusal(0x84, "engineIsNotRunning", CONDITIONS, "engine must run"),
    Refusal(0x85, "engineRunTimeTooLow", CONDITIONS, "engine has not run long enough"),
    Refusal(0x86, "temperatureTooHigh", CONDITIONS, "too hot"),
    Refusal(0x87, "temperatureTooLow", CONDITIONS, "too cold"),
    Refusal(0x88, "vehicleSpeedTooHigh", CONDITIONS, "vehicle must stand or go slower"),
    Refusal(0x89, "vehicleSpeedTooLow", CONDITIONS, "vehicle must go faster"),
    Refusal(0x8A, "throttlePedalTooHigh", CONDITIONS, "foot off the accelerator"),
    Refusal(0x8B, "throttlePedalTooLow", CONDITIONS, "accelerator must be pressed"),
    Refusal(0x8C, "transmissionRangeNotInNeutral", CONDITIONS, "gear must be in neutral"),
    Refusal(0x8D, "transmissionRangeNotInGear", CONDITIONS, "a gear must be in"),
    Refusal(0x8F, "brakeSwitchNotClosed", CONDITIONS, "brake pedal must be pressed"),
    Refusal(0x90, "shifterLeverNotInPark", CONDITIONS, "lever must be in park"),
    Refusal(0x91, "torqueConverterClutchLocked", CONDITIONS, "converter clutch is locked"),
    Refusal(0x92, "voltageTooHigh", SUPPLY, "supply voltage too high"),
    Refusal(0x93, "voltageTooLow", SUPPLY, "supply voltage too low"),
    Refusal(0x94, "resourceTemporarilyNotAvailable", WAIT, "the module cannot do it just now"),
)
REFUSALS: Mapping[int, Refusal] = {one.number: one for one in _LIST}

# Numbers of which only the group is known: the numbers, the kind, the words.
SECURITY_RANGE = (  # data link security of older editions, certificates of 2020
    range(0x38, 0x5E),
    SECURITY,
    "a matter of access or of certificates",
)
CONDITION_RANGE = (  # named ones, reserved ones, the makers' own (from memory)
    range(0x81, 0xFF),
    CONDITIONS,
    "a condition that the standard does not name",
)


def refusal(number: int) -> Refusal | Mistake:
    """Explain a refusal number; where only its group is known, say what the group means."""
    if number in REFUSALS:
        return REFUSALS[number]
    for numbers, kind, means in (SECURITY_RANGE, CONDITION_RANGE):
        if number in numbers:
            return Refusal(number, "", kind, means)
    return Mistake(f"{number:02X} is no refusal of the standard; write it down as shown")


def parse_refusal(text: str) -> Refusal | Mistake:
    """Read a refusal as shown: `7F 31 22`, `22`, `0x22`, or its standard name."""
    squeezed = re.sub(r"[^0-9a-z]", "", text.lower())
    for one in _LIST:
        if squeezed == re.sub(r"[^0-9a-z]", "", one.name.lower()):
            return one
    whole = re.fullmatch(r"7f([0-9a-f]{2})([0-9a-f]{2})", squeezed)
    single = re.fullmatch(r"(?:0x)?([0-9a-f]{2})", squeezed)
    if whole:
        return refusal(int(whole[2], 16))
    if single:
        return refusal(int(single[1], 16))
    if re.fullmatch(r"7f[0-9a-f]{2}", squeezed):
        return Mistake(f"{text.strip()} is cut short: the reason is the third byte, as in 7F 31 22")
    return Mistake(f"{text.strip() or 'nothing'} is no refusal: 7F 31 22, or 22, or its name")
