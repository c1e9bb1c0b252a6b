"""Loading the Fluent files: one bundle a language, English behind every other."""

from __future__ import annotations

from functools import cache
from importlib import resources
from typing import Any

from fluent.runtime import FluentBundle, FluentResource
from fluent.syntax import FluentParser, ast


class TextFault(Exception):
    """A text is missing, doubled or lacks a fact: a mistake of ours, found by the tests."""


def languages() -> tuple[str, ...]:
    root = resources.files("bot.texts")
    return tuple(sorted(d.name for d in root.iterdir() if d.is_dir() and not d.name.startswith("_")))


@cache
def _sources(language: str) -> dict[str, str]:
    folder = resources.files("bot.texts") / language
    return {f.name: f.read_text("utf-8") for f in sorted(folder.iterdir(), key=str) if f.name.endswith(".ftl")}


class Catalogue:
    """All texts of one language."""

    def __init__(self, language: str) -> None:
        self.language = language
        # Isolation marks are ours to set: only around what people typed, and only where it runs
        # the other way, so that plain text stays plain.
        self._bundle = FluentBundle([language], use_isolating=False)
        self.keys: dict[str, str] = {}
        for name, source in _sources(language).items():
            for entry in FluentParser().parse(source).body:
                if isinstance(entry, ast.Junk):
                    raise TextFault(f"{language}/{name}: {str(entry.content).strip().splitlines()[0]!r} is not Fluent")
                if isinstance(entry, ast.Message):
                    # A second text under one id would be dropped in silence.
                    if entry.id.name in self.keys:
                        raise TextFault(f"{entry.id.name} stands in {self.keys[entry.id.name]} and in {name}")
                    self.keys[entry.id.name] = name
            self._bundle.add_resource(FluentResource(source))

    def __contains__(self, key: str) -> bool:
        return key in self.keys

    def format(self, key: str, facts: dict[str, Any]) -> str:
        if key not in self.keys:
            raise TextFault(f"no text {key!r} in {self.language}")
        pattern = self._bundle.get_message(key).value
        if pattern is None:
            raise TextFault(f"text {key!r} in {self.language} is empty")
        text, errors = self._bundle.format_pattern(pattern, facts)
        if errors:
            raise TextFault(f"{key} ({self.language}): {'; '.join(str(e) for e in errors)}")
        return str(text)


@cache
def catalogue(language: str) -> Catalogue:
    return Catalogue(language)
