"""How the room says no: the Bot API's error answers, and refusals to the people in the room."""

from __future__ import annotations


class ApiError(Exception):
    """An answer `{"ok": false}`; `code` is the HTTP status as well, as on the real server."""

    def __init__(self, code: int, description: str, **parameters: int) -> None:
        super().__init__(description)
        self.code = code
        self.description = description
        self.parameters = parameters

    def body(self) -> dict[str, object]:
        body: dict[str, object] = {"ok": False, "error_code": self.code, "description": self.description}
        if self.parameters:
            body["parameters"] = self.parameters
        return body


def bad(what: str) -> ApiError:
    """400. The real server writes the first letter of `what` small; so do the callers here."""
    return ApiError(400, f"Bad Request: {what}")


def forbidden(what: str) -> ApiError:
    return ApiError(403, f"Forbidden: {what}")


def flooded(seconds: int) -> ApiError:
    return ApiError(429, f"Too Many Requests: retry after {seconds}", retry_after=seconds)


class CannotDo(Exception):
    """A person in the room tried what their messenger would not let them do. One sentence."""
