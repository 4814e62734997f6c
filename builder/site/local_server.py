"""A server for this machine only, which answers a limited number of connections at a time.

In: a port, and a handler of one request. Out: a server that survives a flood of connections.
"""

import sys
import threading
from collections.abc import Callable
from contextlib import suppress
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any

MAX_CONNECTIONS = 32  # at a time; a browser opens six
_TOO_MANY = (
    b"HTTP/1.0 503 Service Unavailable\r\nContent-Type: text/plain\r\n\r\nToo many at a time\n"
)


class LocalServer(ThreadingHTTPServer):
    """Answers up to `MAX_CONNECTIONS` at a time and refuses the others; survives hang-ups."""

    request_queue_size = 64

    def __init__(
        self, port: int, handler: Callable[..., BaseHTTPRequestHandler], log: Callable[[str], None]
    ) -> None:
        """Bind a port of this machine. Raises OSError where that's impossible."""
        self._free = threading.BoundedSemaphore(MAX_CONNECTIONS)
        self._log = log
        try:
            super().__init__(("127.0.0.1", port), handler)
        except (OSError, OverflowError) as error:
            reason = getattr(error, "strerror", None) or error
            raise OSError(
                f"port {port} can't be used ({reason}); give another with --port: 1024 to 65535,"
                " or 0 for any free one"
            ) from error

    def process_request(self, request: Any, client_address: Any) -> None:
        """Answer in a thread of its own, unless there are too many."""
        if not self._free.acquire(blocking=False):
            with suppress(OSError):
                request.sendall(_TOO_MANY)
            self.shutdown_request(request)
            return
        try:
            super().process_request(request, client_address)
        except BaseException:
            self._free.release()
            raise

    def process_request_thread(self, request: Any, client_address: Any) -> None:
        """Answer, then make room for another."""
        try:
            super().process_request_thread(request, client_address)
        finally:
            self._free.release()

    def handle_error(self, _request: Any, _client_address: Any) -> None:
        """Log in one line what went wrong with a request; a lost connection isn't an error."""
        error = sys.exc_info()[1]
        if not isinstance(error, ConnectionError | TimeoutError):
            self._log(f"a page could not be served: {type(error).__name__}: {error}")
