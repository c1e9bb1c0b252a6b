"""What a chat can do: filled by the files in `bot/capabilities/`, found automatically.

Each of those files ends in `register(app)`, where `app` is this registry. Two files that claim the
same command, button, question or setting are refused at start.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Awaitable, Callable, Iterable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from bot.buttons import Button, Link
    from bot.context import Turn
    from bot.texts import Voice
    from planning.potluck import Potluck

Handler = Callable[["Turn"], Awaitable[None]]


@dataclass(frozen=True)
class Command:
    """`where`: group, private or both. `menu` puts it on the platform's command menu; its help
    line is the text `help-<name>`."""

    name: str
    handler: Handler
    where: str = "both"
    order: int = 100
    menu: bool = True
    hosts: bool = False


@dataclass(frozen=True)
class Reaction:
    """A handler for free words or a service event; lower orders are asked first."""

    order: int
    handler: Handler


@dataclass(frozen=True)
class BoardPart:
    """`lines(potluck, voice, facts)` gives HTML lines; `buttons(potluck, voice, facts)` rows of buttons.

    `facts` is the shared `bot.board.Facts` (headcount, menu, links), computed once a board.
    """

    order: int
    lines: Callable[[Potluck, Voice, Any], Iterable[str]] | None = None
    buttons: Callable[[Potluck, Voice, Any], Iterable[list[Button | Link]]] | None = None


@dataclass
class Registry:
    commands: dict[str, Command] = field(default_factory=dict)
    buttons: dict[str, Handler] = field(default_factory=dict)
    questions: dict[str, Handler] = field(default_factory=dict)
    links: dict[str, Handler] = field(default_factory=dict)
    own_links: dict[str, Handler] = field(default_factory=dict)
    events: dict[str, list[Reaction]] = field(default_factory=dict)
    readers: list[Reaction] = field(default_factory=list)
    board: list[BoardPart] = field(default_factory=list)
    watchers: list[Handler] = field(default_factory=list)
    settings: dict[str, Handler] = field(default_factory=dict)

    def command(
        self,
        name: str,
        handler: Handler,
        *,
        where: str = "both",
        order: int = 100,
        menu: bool = True,
        hosts: bool = False,
    ) -> None:
        """`hosts`: of use to hosts only, so that help shows it to them alone."""
        self._claim(self.commands, name, Command(name, handler, where, order, menu, hosts))

    def button(self, name: str, handler: Handler) -> None:
        """`name` is at most eight letters: it travels in every press."""
        if len(name) > 8 or not name.isalnum():
            raise ValueError(f"button name {name!r} must be 1 to 8 letters or digits")
        self._claim(self.buttons, name, handler)

    def question(self, kind: str, handler: Handler) -> None:
        """Who answers when somebody replies to a question asked with `turn.ask(kind, ...)`."""
        self._claim(self.questions, kind, handler)

    def link(self, prefix: str, handler: Handler) -> None:
        """A private chat opened by a deep link whose payload starts with `prefix-`."""
        self._claim(self.links, prefix, handler)

    def own_link(self, kind: str, handler: Handler) -> None:
        """A private chat opened by a link about the person who follows it, and about no potluck."""
        self._claim(self.own_links, kind, handler)

    def setting(self, name: str, handler: Handler) -> None:
        self._claim(self.settings, name, handler)

    def event(self, kind: str, handler: Handler, *, order: int = 100) -> None:
        self.events.setdefault(kind, []).append(Reaction(order, handler))
        self.events[kind].sort(key=lambda r: r.order)

    def reader(self, handler: Handler, *, order: int = 100) -> None:
        """Reads free words; sets `turn.handled` when it took them."""
        self.readers.append(Reaction(order, handler))
        self.readers.sort(key=lambda r: r.order)

    def watch(self, handler: Handler) -> None:
        """Looks at every turn that changed a potluck, whoever made the change and however, before it is written."""
        self.watchers.append(handler)

    def on_board(
        self,
        order: int,
        lines: Callable[[Potluck, Voice, Any], Iterable[str]] | None = None,
        buttons: Callable[[Potluck, Voice, Any], Iterable[list[Button | Link]]] | None = None,
    ) -> None:
        self.board.append(BoardPart(order, lines, buttons))
        self.board.sort(key=lambda p: p.order)

    @staticmethod
    def _claim(table: dict[str, Any], name: str, value: Any) -> None:
        if name in table:
            raise ValueError(f"{name!r} is claimed twice")
        table[name] = value


def load() -> Registry:
    """A registry with everything in `bot/capabilities/`."""
    import bot.capabilities

    registry = Registry()
    for module in sorted(pkgutil.iter_modules(bot.capabilities.__path__), key=lambda m: m.name):
        importlib.import_module(f"bot.capabilities.{module.name}").register(registry)
    return registry
