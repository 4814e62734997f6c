"""The closed lists of the format as a page or a sheet shows them.

In: nothing. Out: for each word of the format its label, or the phrase that says it.
"""

from collections.abc import Mapping

from builder.model.module_record import SafetySystem

STEP_LABELS: Mapping[str, str] = {
    "check": "Check",
    "action": "Do",
    "fix": "Fix",
    "stop": "Stop",
    "return": "Return",
}

STOP_LABELS: Mapping[str, str] = {
    "foreman": "Call the foreman",
    "not-found": "Not found today",
    "not-this-tree": "Wrong tree",
    "customer": "Customer decides",
    "unsafe": "Unsafe: stop",
}

TASK_TEXTS: Mapping[str, str] = {
    "record-codes": "record the DTCs",
    "check-supply": "test the power feed",
    "check-ground": "test the ground",
    "check-network": "test the network",
    "hold-supply": "connect the programming power supply",
    "release-supply": "disconnect the programming power supply",
    "disconnect-battery": "disconnect the battery",
    "connect-battery": "connect the battery",
    "program": "program {}",
    "configure": "configure {}",
    "pair": "do the security pairing of {}",
    "initialize": "initialize {}",
    "clear-codes": "clear the DTCs",
    "cycle-key": "turn the key off and on again",
    "read-codes-again": "read the DTCs again",
    "drive": "drive the vehicle",
}

SETUP_LABELS: Mapping[str, str] = {
    "program": "Programming",
    "configure": "Configuration",
    "pair": "Security pairing",
    "initialize": "Initialization",
}

USED_PART_TEXTS: Mapping[str, str] = {
    "yes": "A used part can be set up",
    "no": "A used part can't be set up: it's tied to its first vehicle, or the part must be new",
    "if released": "A used part can be set up only if it was released on its donor vehicle",
    "not known": "Unknown whether a used part can be set up",
}

DRIVE_BEFORE_TEXTS: Mapping[str, str] = {
    "yes": "OK to drive before setup",
    "no": "Don't drive before setup",
    "not known": "Unknown, so don't drive before setup",
}

SAFETY_TEXTS: Mapping[SafetySystem, str] = {
    SafetySystem.NONE: "no steering, brakes, restraints or high voltage depend on it",
    SafetySystem.STEERING: "the steering depends on it",
    SafetySystem.BRAKES: "the brakes depend on it",
    SafetySystem.RESTRAINTS: "airbags and seat belts depend on it",
    SafetySystem.HIGH_VOLTAGE: "high voltage depends on it, trained techs only",
}
