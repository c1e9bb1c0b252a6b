"""The files an operator relies on say what the program does."""

from __future__ import annotations

import configparser
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import compose_spec
import pytest

from bot.courier.metrics import Metrics
from bot.settings import PREFIX, Settings, load

ROOT = Path(__file__).resolve().parents[2]
DEPLOY = ROOT / "deploy"
SETTINGS = {PREFIX + name.upper(): field for name, field in Settings.model_fields.items()}


def env_example() -> dict[str, str]:
    lines = re.findall(r"^#?(TUREEN_[A-Z_]+)=(.*)$", (DEPLOY / "tureen.env.example").read_text("utf-8"), re.M)
    assert len({name for name, _ in lines}) == len(lines), "a setting stands there twice"
    return dict(lines)


def plain(name: str) -> str:
    value = SETTINGS[name].default
    return "" if value is None else str(getattr(value, "get_secret_value", lambda: value)())


def test_every_setting_stands_in_the_example_and_nothing_else() -> None:
    assert set(env_example()) == set(SETTINGS)


@pytest.mark.parametrize("name", sorted(SETTINGS))
def test_the_example_shows_the_default(name: str) -> None:
    assert env_example()[name] == plain(name)


def test_the_example_can_be_loaded_once_a_token_is_in_it(tmp_path: Path) -> None:
    text = (DEPLOY / "tureen.env.example").read_text("utf-8")
    filled = tmp_path / "tureen.env"
    # Every default written out: each must be accepted as it stands.
    all_set = re.sub(r"^#(TUREEN_[A-Z_]+=)", r"\1", text, flags=re.M)
    filled.write_text(all_set.replace("TUREEN_TOKEN=", "TUREEN_TOKEN=123456:" + "a" * 30), "utf-8")

    assert load(filled).mode == "polling"


def test_every_setting_named_in_the_guides_exists() -> None:
    texts = [*DEPLOY.glob("*"), ROOT / "README.md"]
    named = {n for p in texts for n in re.findall(r"TUREEN_[A-Z_]+[A-Z]", p.read_text("utf-8"))}

    # The folder of the virtual environment is the scripts' own.
    assert named - {"TUREEN_VENV"} <= set(SETTINGS)


def test_every_metric_of_the_guide_exists_and_every_metric_is_in_the_guide() -> None:
    exported = set()
    for family in Metrics().registry.collect():
        exported.add(family.name + ("_total" if family.type == "counter" else ""))
    guide = (DEPLOY / "OPERATIONS.md").read_text("utf-8")
    named = {re.sub(r"_bucket$", "", n) for n in re.findall(r"\btureen_[a-z_]+[a-z]", guide)}

    assert named == exported


@pytest.mark.parametrize("metric", ["posts", "board_edits", "reminders", "api_errors"])
def test_ends_named_in_alerts_are_ends_the_program_counts(metric: str) -> None:
    guide = (DEPLOY / "OPERATIONS.md").read_text("utf-8")
    sources = "".join(p.read_text("utf-8") for p in (ROOT / "bot").glob("courier/*.py"))
    ends = re.findall(rf'tureen_{metric}_total\{{(?:end|kind)="([^"]+)"', guide)

    assert ends
    assert all(f'"{end}"' in sources for end in ends)


def test_addresses_named_in_the_guide_are_served() -> None:
    web = (ROOT / "bot" / "web.py").read_text("utf-8")
    guide = (DEPLOY / "OPERATIONS.md").read_text("utf-8")

    for address in ("/healthz", "/readyz", "/metrics"):
        assert f"`{address}`" in guide
        assert f'Route("{address}"' in web


def test_every_command_of_the_guide_exists() -> None:
    from bot.__main__ import parser

    guide = (DEPLOY / "OPERATIONS.md").read_text("utf-8")
    named = set(re.findall(r"python -m bot ([a-z]+)", guide))

    assert {"check", "backup"} <= named
    for command in named:
        with pytest.raises(SystemExit) as end:
            parser().parse_args([command, "--help"])
        assert end.value.code == 0


@pytest.mark.parametrize("script", sorted(p.name for p in DEPLOY.glob("*.sh")))
def test_a_shell_script_can_be_read_by_sh(script: str) -> None:
    subprocess.run(["sh", "-n", str(DEPLOY / script)], check=True)


def test_the_container_file_has_nothing_its_linter_objects_to() -> None:
    linter = Path(sys.executable).parent / "hadolint"
    found = subprocess.run([linter, DEPLOY / "Containerfile"], capture_output=True, text=True, check=False)

    assert (found.returncode, found.stdout) == (0, "")


def test_the_compose_file_is_what_the_compose_specification_allows() -> None:
    services = compose_spec.PyCompose.from_yaml((DEPLOY / "compose.yaml").read_text("utf-8")).services

    assert set(services) == {"bot", "database"}


def test_every_direct_dependency_is_pinned() -> None:
    def canonical(name: str) -> str:
        return re.sub(r"[-_.]+", "-", name).lower()

    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    wanted = [*project["dependencies"], *(d for extra in project["optional-dependencies"].values() for d in extra)]
    names = {canonical(re.match(r"[\w.-]+", line).group()) for line in wanted}  # type: ignore[union-attr]
    pins = (DEPLOY / "constraints.txt").read_text("utf-8").split()

    assert all(re.fullmatch(r"[\w.-]+==[\w.!+]+", pin) for pin in pins)
    assert names <= {canonical(pin.split("==")[0]) for pin in pins}


def unit() -> configparser.ConfigParser:
    parsed = configparser.ConfigParser(interpolation=None, strict=False)
    parsed.optionxform = str  # type: ignore[assignment,method-assign]
    parsed.read(DEPLOY / "tureen.service", "utf-8")
    return parsed


def test_the_unit_runs_a_command_that_exists_and_has_time_to_stop() -> None:
    from bot.__main__ import parser
    from bot.app import STOP_S

    service = unit()["Service"]

    assert parser().parse_args(service["ExecStart"].split("-m bot ")[1].split()).command == "run"
    assert float(service["TimeoutStopSec"]) > STOP_S
    assert service["RestartPreventExitStatus"] == "2"


def test_the_unit_has_no_rights_it_does_not_need() -> None:
    service = unit()["Service"]

    assert service["User"] != "root"
    assert service["CapabilityBoundingSet"] == ""
    assert (service["NoNewPrivileges"], service["ProtectSystem"], service["UMask"]) == ("yes", "strict", "0077")


def compose() -> dict[str, object]:
    """The compose file, as far as its plain block style goes: maps, lists of one line, scalars.

    A witness of the structure, not a YAML parser: whatever it can't read fails the test.
    """
    top: dict[str, object] = {}
    stack: list[tuple[int, object]] = [(-1, top)]
    lines = [s for s in (DEPLOY / "compose.yaml").read_text("utf-8").splitlines() if s.strip()[:1] not in ("", "#")]
    for at, line in enumerate(lines):
        assert "\t" not in line
        indent, body = len(line) - len(line.lstrip()), line.strip()
        while stack[-1][0] >= indent:
            stack.pop()
        holder = stack[-1][1]
        if body.startswith("- "):
            assert isinstance(holder, list), line
            holder.append(body[2:].strip('"'))
            continue
        found = re.fullmatch(r"([\w.-]+):(?: (.+))?", body)
        assert found is not None, line
        assert isinstance(holder, dict), line
        key, value = found.groups()
        assert key not in holder, f"{key} stands twice"
        if value is not None:
            holder[key] = value.strip('"')
            continue
        following = lines[at + 1] if at + 1 < len(lines) else ""
        deeper = len(following) - len(following.lstrip()) > indent
        inner: object = [] if deeper and following.strip().startswith("- ") else {}
        holder[key] = inner
        stack.append((indent, inner))
    return top


@pytest.mark.parametrize("service", ["bot", "database"])
def test_each_container_is_read_only_and_looked_after(service: str) -> None:
    described = compose()["services"][service]  # type: ignore[index]

    assert described["read_only"] == "true"
    assert any(t.startswith("/tmp") for t in described["tmpfs"])
    assert "no-new-privileges:true" in described["security_opt"]
    assert described["healthcheck"]["test"].startswith("[")
    assert described["restart"] == "unless-stopped"


def test_compose_keeps_its_secrets_outside() -> None:
    services = compose()["services"]  # type: ignore[index]

    assert services["bot"]["env_file"] == "tureen.env"  # type: ignore[index]
    assert services["database"]["environment"]["POSTGRES_PASSWORD"].startswith("${POSTGRES_PASSWORD:?")  # type: ignore[index]
    assert set(services["bot"]["environment"]) <= set(SETTINGS)  # type: ignore[index]


def test_the_container_copies_what_exists_and_is_not_root() -> None:
    text = (DEPLOY / "Containerfile").read_text("utf-8")
    copied = re.findall(r"^COPY (?!--from)(\S+) \S+$", text, re.M)

    assert copied
    assert all((ROOT / name).exists() for name in copied)
    assert re.findall(r"^USER (.+)$", text, re.M)[-1] == "10001:10001"
    assert "-c deploy/constraints.txt" in text


def test_the_file_with_the_token_that_the_guide_makes_is_never_committed() -> None:
    assert "*.env" in (ROOT / ".gitignore").read_text("utf-8").splitlines()
    assert "deploy/tureen.env" in (DEPLOY / "OPERATIONS.md").read_text("utf-8")
