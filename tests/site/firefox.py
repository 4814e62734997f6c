"""Firefox under remote control, by its own protocol: a length, a colon, and a list as JSON.

In: the program, a folder for its profile. Out: a `Firefox` that opens pages, runs scripts in them,
and lists the errors that pages made.
"""

import json
import socket
import subprocess
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from time import monotonic, sleep
from typing import Any

LONGEST = 120.0  # seconds to wait, on a busy machine
# With the recommended preferences all files would share one store, as on no real phone.
PREFERENCES = """
user_pref("remote.prefs.recommended", false);
user_pref("marionette.port", 0);
user_pref("browser.shell.checkDefaultBrowser", false);
user_pref("browser.aboutwelcome.enabled", false);
user_pref("datareporting.policy.dataSubmissionEnabled", false);
user_pref("network.captive-portal-service.enabled", false);
"""
ERRORS = """
return Services.console.getMessageArray()
  .filter((one) => one instanceof Ci.nsIScriptError && !(one.flags & Ci.nsIScriptError.warningFlag))
  .filter((one) => one.sourceName.startsWith("file:"))
  .map((one) => `${one.sourceName}:${one.lineNumber}: ${one.errorMessage}`);
"""


class Firefox:
    """A session with a running Firefox."""

    def __init__(self, port: int) -> None:
        self._socket = socket.create_connection(("127.0.0.1", port), LONGEST)
        self._stream, self._number = self._socket.makefile("rb"), 0
        self._answer()  # its greeting
        self._do("WebDriver:NewSession", pageLoadStrategy="normal")

    def open(self, page: Path, hash_: str = "") -> None:
        """Open a page of a folder, and wait until it is loaded."""
        self._do("WebDriver:Navigate", url="about:blank")
        self._do("WebDriver:Navigate", url=page.as_uri() + hash_)

    def run(self, script: str) -> Any:
        """Run a script in the page; return what it returns."""
        return self._do("WebDriver:ExecuteScript", script=script, args=[])["value"]

    def wait_for(self, script: str) -> None:
        """Wait until a script returns something that is true."""
        _wait(lambda: self.run(script), script)

    def errors(self) -> list[str]:
        """Return all errors in scripts of pages since the start."""
        self._do("Marionette:SetContext", value="chrome")
        errors: list[str] = self.run(ERRORS)
        self._do("Marionette:SetContext", value="content")
        return errors

    def close(self) -> None:
        """Close the connection."""
        self._stream.close()
        self._socket.close()

    def _do(self, command: str, **arguments: Any) -> Any:
        self._number += 1
        text = json.dumps([0, self._number, command, arguments]).encode()
        self._socket.sendall(b"%d:%s" % (len(text), text))
        _, _, error, result = self._answer()
        assert not error, f"{command}: {error}"
        return result

    def _answer(self) -> Any:
        digits = b""
        while (one := self._stream.read(1)) != b":":
            assert one, "Firefox closed the connection"
            digits += one
        return json.loads(self._stream.read(int(digits)))


@contextmanager
def started(program: str, profile: Path) -> Iterator[Firefox]:
    """Start Firefox without a window, with an empty profile, and end it."""
    profile.mkdir()
    (profile / "user.js").write_text(PREFERENCES, "utf-8")
    remote = ("--marionette", "--remote-allow-system-access")  # the second to read its errors
    command = [program, "--headless", "--no-remote", *remote, "--profile", str(profile)]
    running = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        port = profile / "MarionetteActivePort"
        _wait(lambda: port.exists() and port.read_text("utf-8").strip(), "the port")
        firefox = Firefox(int(port.read_text("utf-8")))
        yield firefox
        firefox.close()
    finally:
        running.terminate()
        running.wait(LONGEST)


def _wait(happens: Callable[[], Any], what: str) -> None:
    until = monotonic() + LONGEST
    while not happens():
        assert monotonic() < until, f"Firefox: waited in vain for {what}"
        sleep(0.1)
