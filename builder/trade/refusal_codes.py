"""The negative response codes of ISO 14229-1, and what each means for a setup routine.

In: nothing. Out: `REFUSALS` by number, the ranges of which only the group is known, `NEXT_STEPS` by
kind. Numbers and names follow annex A of the 2020 edition; 3B to 40 and the `older` names of 38
to 3A come from earlier editions (ISO 15764). The names agree with a reference library in the tests;
that 3B to 40 are reserved today, and what the makers' range holds, is from memory. The explanations
are ours.
"""

from collections.abc import Mapping
from dataclasses import dataclass

WAIT, CONDITIONS, SUPPLY, SEQUENCE = "wait", "conditions", "supply", "sequence"
SECURITY, LOCKED, OUT_OF_RANGE = "security", "locked", "out of range"
NOT_SUPPORTED, FAILED = "not supported", "failed"

NEXT_STEPS: Mapping[str, str] = {
    WAIT: "not a failure: wait for the final answer, then ask again",
    CONDITIONS: "correct the condition, then start the routine again",
    SUPPLY: "correct the supply voltage at the battery terminals, then start the routine again",
    SEQUENCE: "an earlier step is missing: start the routine from the beginning",
    SECURITY: "check the tool's access: right tool, right license, right vehicle",
    LOCKED: "locked after wrong tries: leave the key on, touch nothing, wait the stated time",
    OUT_OF_RANGE: "the module rejects this value: check it against the vehicle",
    NOT_SUPPORTED: "wrong module or wrong session: check which one the routine needs",
    FAILED: "the routine stopped: read the DTCs before you try again",
}


@dataclass(frozen=True, slots=True)
class Refusal:
    """A negative response of a module."""

    number: int
    name: str  # of ISO 14229-1; "" where only the group is known
    kind: str  # one of the keys of NEXT_STEPS
    means: str  # in the words of the bay
    older: str = ""  # the name in an earlier edition, where the number changed its meaning


_LIST = (
    Refusal(0x10, "generalReject", FAILED, "refused without a reason"),
    Refusal(0x11, "serviceNotSupported", NOT_SUPPORTED, "the module doesn't know this service"),
    Refusal(
        0x12, "subFunctionNotSupported", NOT_SUPPORTED, "the module doesn't know this function"
    ),
    Refusal(0x13, "incorrectMessageLengthOrInvalidFormat", NOT_SUPPORTED, "malformed request"),
    Refusal(0x14, "responseTooLong", NOT_SUPPORTED, "the answer is too long for the network"),
    Refusal(0x21, "busyRepeatRequest", WAIT, "the module is busy"),
    Refusal(0x22, "conditionsNotCorrect", CONDITIONS, "a condition isn't met"),
    Refusal(0x24, "requestSequenceError", SEQUENCE, "a step before this one is missing"),
    Refusal(
        0x25, "noResponseFromSubnetComponent", FAILED, "a part behind the module doesn't answer"
    ),
    Refusal(0x26, "failurePreventsExecutionOfRequestedAction", FAILED, "a current DTC prevents it"),
    Refusal(0x31, "requestOutOfRange", OUT_OF_RANGE, "the value is outside the allowed range"),
    Refusal(0x33, "securityAccessDenied", SECURITY, "access hasn't been granted"),
    Refusal(0x34, "authenticationRequired", SECURITY, "the tool must authenticate first"),
    Refusal(0x35, "invalidKey", SECURITY, "the tool's answer to the access question was wrong"),
    Refusal(0x36, "exceededNumberOfAttempts", LOCKED, "too many wrong tries"),
    Refusal(0x37, "requiredTimeDelayNotExpired", LOCKED, "the waiting time isn't over yet"),
    Refusal(
        0x38,
        "secureDataTransmissionRequired",
        SECURITY,
        "it takes this over a secured connection only; an older module: an access rule is broken",
        "generalSecurityViolation",
    ),
    Refusal(
        0x39,
        "secureDataTransmissionNotAllowed",
        SECURITY,
        "it doesn't accept this over a secured connection; an older module: it wants one",
        "securedModeRequested",
    ),
    Refusal(
        0x3A,
        "secureDataVerificationFailed",
        SECURITY,
        "the secured message failed its check; an older module: it wants stronger protection",
        "insufficientProtection",
    ),
    Refusal(
        0x3B, "terminationWithSignatureRequested", SECURITY, "the end must be signed by the tool"
    ),
    Refusal(0x3C, "accessDenied", SECURITY, "this tool or user may not do it"),
    Refusal(
        0x3D, "versionNotSupported", SECURITY, "tool and module use different security versions"
    ),
    Refusal(0x3E, "securedLinkNotSupported", SECURITY, "the module can't do secured connections"),
    Refusal(0x3F, "certificateNotAvailable", SECURITY, "a certificate is missing"),
    Refusal(
        0x40, "auditTrailInformationNotAvailable", SECURITY, "the record of who did it is missing"
    ),
    Refusal(
        0x50,
        "certificateVerificationFailed-InvalidTimePeriod",
        SECURITY,
        "certificate expired or not valid yet: check the tool's clock and license",
    ),
    Refusal(
        0x51,
        "certificateVerificationFailed-InvalidSignature",
        SECURITY,
        "the certificate's signature is wrong: renew it",
    ),
    Refusal(
        0x52,
        "certificateVerificationFailed-InvalidChainOfTrust",
        SECURITY,
        "the module doesn't trust the certificate's issuer",
    ),
    Refusal(
        0x53,
        "certificateVerificationFailed-InvalidType",
        SECURITY,
        "wrong kind of certificate for this module",
    ),
    Refusal(
        0x54,
        "certificateVerificationFailed-InvalidFormat",
        SECURITY,
        "the module can't read the certificate",
    ),
    Refusal(
        0x55,
        "certificateVerificationFailed-InvalidContent",
        SECURITY,
        "the certificate's content doesn't match this module or vehicle",
    ),
    Refusal(
        0x56,
        "certificateVerificationFailed-InvalidScope",
        SECURITY,
        "the certificate doesn't cover this job",
    ),
    Refusal(
        0x57,
        "certificateVerificationFailed-InvalidCertificate",
        SECURITY,
        "the certificate was revoked or isn't accepted",
    ),
    Refusal(
        0x58, "ownershipVerificationFailed", SECURITY, "the tool couldn't prove the key is its own"
    ),
    Refusal(
        0x59, "challengeCalculationFailed", SECURITY, "the module couldn't create its question"
    ),
    Refusal(0x5A, "settingAccessRightsFailed", SECURITY, "the module couldn't grant the access"),
    Refusal(
        0x5B,
        "sessionKeyCreationDerivationFailed",
        SECURITY,
        "tool and module couldn't agree on a session key",
    ),
    Refusal(
        0x5C,
        "configurationDataUsageFailed",
        SECURITY,
        "the module rejects the authentication settings sent to it",
    ),
    Refusal(0x5D, "deAuthenticationFailed", SECURITY, "the tool couldn't log off: cycle the key"),
    Refusal(0x70, "uploadDownloadNotAccepted", CONDITIONS, "the module won't take software now"),
    Refusal(0x71, "transferDataSuspended", FAILED, "the software transfer stopped"),
    Refusal(0x72, "generalProgrammingFailure", FAILED, "its memory couldn't be written"),
    Refusal(0x73, "wrongBlockSequenceCounter", SEQUENCE, "a block of the software was lost"),
    Refusal(0x78, "requestCorrectlyReceived-ResponsePending", WAIT, "accepted, answer pending"),
    Refusal(
        0x7E,
        "subFunctionNotSupportedInActiveSession",
        NOT_SUPPORTED,
        "this function isn't available in this session",
    ),
    Refusal(
        0x7F,
        "serviceNotSupportedInActiveSession",
        NOT_SUPPORTED,
        "this service isn't available in this session",
    ),
    Refusal(0x81, "rpmTooHigh", CONDITIONS, "engine speed too high"),
    Refusal(0x82, "rpmTooLow", CONDITIONS, "engine speed too low"),
    Refusal(0x83, "engineIsRunning", CONDITIONS, "engine must be off"),
    Refusal(0x84, "engineIsNotRunning", CONDITIONS, "engine must run"),
    Refusal(0x85, "engineRunTimeTooLow", CONDITIONS, "engine hasn't run long enough"),
    Refusal(0x86, "temperatureTooHigh", CONDITIONS, "too hot"),
    Refusal(0x87, "temperatureTooLow", CONDITIONS, "too cold"),
    Refusal(0x88, "vehicleSpeedTooHigh", CONDITIONS, "vehicle must stop or slow down"),
    Refusal(0x89, "vehicleSpeedTooLow", CONDITIONS, "vehicle must go faster"),
    Refusal(0x8A, "throttlePedalTooHigh", CONDITIONS, "release the accelerator pedal"),
    Refusal(0x8B, "throttlePedalTooLow", CONDITIONS, "press the accelerator pedal"),
    Refusal(0x8C, "transmissionRangeNotInNeutral", CONDITIONS, "transmission must be in neutral"),
    Refusal(0x8D, "transmissionRangeNotInGear", CONDITIONS, "transmission must be in gear"),
    Refusal(0x8F, "brakeSwitchNotClosed", CONDITIONS, "brake pedal must be pressed"),
    Refusal(0x90, "shifterLeverNotInPark", CONDITIONS, "shifter must be in Park"),
    Refusal(0x91, "torqueConverterClutchLocked", CONDITIONS, "torque converter clutch is locked"),
    Refusal(0x92, "voltageTooHigh", SUPPLY, "supply voltage too high"),
    Refusal(0x93, "voltageTooLow", SUPPLY, "supply voltage too low"),
    Refusal(0x94, "resourceTemporarilyNotAvailable", WAIT, "the module can't do it right now"),
)
REFUSALS: Mapping[int, Refusal] = {one.number: one for one in _LIST}

# Numbers of which only the group is known: the numbers, the kind, what they mean.
SECURITY_RANGE = (
    range(0x41, 0x50),
    SECURITY,
    "reserved for secured access, without a name in the standard",
)
CONDITION_RANGE = (  # named ones, reserved ones, the makers' own (from memory)
    range(0x81, 0xFF),
    CONDITIONS,
    "a condition without a name in the standard",
)
