"""A server for this machine alone, that answers few at a time.

In: a port, and what answers one request. Out: a server that no flood of connections ends.
"""

import sys
import threading
from collections.abc import Callable
from contextlib import suppress
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any

AT_ONCE = 32  # connections; a browser opens six
REFUSED = (
    b"HTTP/1.0 503 Service Unavailable\r\nContent-Type: text/plain\r\n\r\nToo many at a time\n"
)


class LocalServer(ThreadingHTTPServer):
    """Answers so many at a time and turns the others away; one that hangs up is no trouble."""

    request_queue_size = 64

    def __init__(
        self, port: int, handler: Callable[..., BaseHTTPRequestHandler], say: Callable[[str], None]
    ) -> None:
        """Take a port of this machine. Raises OSError where it can't be had."""
        self._free = threading.BoundedSemaphore(AT_ONCE)
        self._say = say
        try:
            super().__init__(("127.0.0.1", port), handler)
        except (OSError, OverflowError) as error:
            reason = getattr(error, "strerror", None) or error
            raise OSError(
                f"port {port} can't be used ({reason}); name another one with --port, from 1024 to"
                " 65535, or 0 for any that is free"
            ) from error

    def process_request(self, request: Any, client_address: Any) -> None:
        """Begin to answer, unless too many are being answered."""
        if not self._free.acquire(blocking=False):
            with suppress(OSError):
                request.sendall(REFUSED)
            self.shutdown_request(request)
            return
        try:
            super().process_request(request, client_address)
        except BaseException:
            self._free.release()
            raise

    def process_request_thread(self, request: Any, client_address: Any) -> None:
        """Answer, and make room for another."""
        try:
            super().process_request_thread(request, client_address)
        finally:
            self._free.release()

    def handle_error(self, _request: Any, _client_address: Any) -> None:
        """Say in one line what went wrong with a request; a broken line is nobody's mistake."""
        error = sys.exc_info()[1]
        if not isinstance(error, ConnectionError | TimeoutError):
            self._say(f"a page could not be handed out: {type(error).__name__}: {error}")
