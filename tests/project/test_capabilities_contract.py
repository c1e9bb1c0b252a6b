"""Capabilities are found by themselves, so one test watches the newcomer."""

import ast
import re
from pathlib import Path

import pytest

from bot.registry import Registry, load
from bot.texts import Voice, languages
from bot.texts.catalogue import catalogue

ROOT = Path(__file__).resolve().parents[2]
MODULES = sorted((ROOT / "bot" / "capabilities").glob("[a-z]*.py"))
COMMANDS_PROMISED = ("potluck", "bring", "drop", "missing", "bar", "list", "undo", "settings", "help")
LABELS_PROMISED = ("Coming", "Maybe", "Can't", "Bring", "Undo", "Yes", "No")


@pytest.fixture(scope="module")
def registry() -> Registry:
    return load()


def test_every_capability_ends_in_register() -> None:
    for module in MODULES:
        last = ast.parse(module.read_text("utf-8")).body[-1]
        assert isinstance(last, ast.FunctionDef), module.name
        assert last.name == "register", module.name


def test_the_promised_commands_exist(registry: Registry) -> None:
    assert set(COMMANDS_PROMISED) <= set(registry.commands)


def test_the_promised_words_stand_on_buttons() -> None:
    english = catalogue("en")
    facts = {"name": "", "category": "", "dish": "", "units": "us", "language": "", "when": "", "on": False}
    counts = {"servings": 1, "n": 1, "minutes": 1}
    labels = [Voice().plain(k, **facts, **counts) for k in english.keys if k.startswith("button-")]

    for word in LABELS_PROMISED:
        assert any(word in label for label in labels), word


def test_every_command_on_the_menu_has_a_help_line_the_platform_takes(registry: Registry) -> None:
    for language in languages():
        for command in registry.commands.values():
            if command.menu:
                line = Voice(language).plain(f"help-{command.name}")
                # Bot API, BotCommand: names of 1-32 [a-z0-9_], descriptions of 1-256 characters.
                assert re.fullmatch(r"[a-z0-9_]{1,32}", command.name)
                assert 1 <= len(line) <= 256


def test_two_capabilities_can_not_claim_the_same_command() -> None:
    registry = Registry()

    async def handler(turn) -> None: ...

    registry.command("slaw", handler)
    with pytest.raises(ValueError, match="claimed twice"):
        registry.command("slaw", handler)


def text_keys() -> set[tuple[str, str]]:
    """(key, file) of every text key written out in bot/ and in the pure changes."""
    calls = {"say", "toast", "whisper", "ask", "edit_pressed", "tell", "voice", "plain", "Refusal", "Say"}
    found = set()
    for path in [*(ROOT / "bot").glob("*.py"), *MODULES, *(ROOT / "planning").rglob("*.py")]:
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if not isinstance(node, ast.Call):
                continue
            name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            if name not in calls:
                continue
            for argument in node.args:
                if (
                    isinstance(argument, ast.Constant)
                    and isinstance(argument.value, str)
                    and re.fullmatch(r"[a-z]+(-[a-z0-9]+)+", argument.value)
                ):
                    found.add((argument.value, path.name))
                    break
    return found


NOT_KEYS = ("answer-by", "slow-cooker-low", "slow-cooker-high", "keep-warm", "out-limit", "slow-cooker")


def test_every_text_key_in_the_code_has_its_sentence() -> None:
    english = catalogue("en")
    missing = sorted((k, f) for k, f in text_keys() if k not in english and k not in NOT_KEYS)

    assert missing == []


def test_other_languages_have_every_text_of_english() -> None:
    for language in languages():
        assert sorted(catalogue("en").keys) == sorted(catalogue(language).keys)


def test_no_button_label_uses_a_typographic_apostrophe() -> None:
    # People type the plain one, and labels are matched by what people type.
    for key in catalogue("en").keys:
        if key.startswith("button-"):
            source = (ROOT / "bot" / "texts" / "en" / catalogue("en").keys[key]).read_text("utf-8")
            line = next(text for text in source.splitlines() if text.startswith(f"{key} "))
            assert "’" not in line
