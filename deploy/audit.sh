#!/bin/sh
# Looks every pinned version up among the published weaknesses (pip-audit, in an environment of its own).
# Exit 0: none is known to be weak. 1: one is. 2: nothing could be looked up; with --offline that is 0, and said.
extra=""
. "$(dirname "$0")/venv.sh"

unseen=2
[ "${1:-}" != --offline ] || unseen=0
folder=$(mktemp -d) || exit 1
trap 'rm -rf "$folder"' EXIT
"$python" -m venv "$folder/venv" && "$folder/venv/bin/python" -m pip install -q --timeout 10 --retries 1 pip-audit 2>/dev/null || {
    say "NOT RUN: the audit, because pip-audit could not be installed."
    exit $unseen
}
"$folder/venv/bin/pip-audit" -r deploy/constraints.txt --no-deps --disable-pip --progress-spinner off -f json \
    >"$folder/found.json" 2>/dev/null
"$python" - "$folder/found.json" $unseen <<'END'
import json, sys

try:
    looked_up = [d for d in json.load(open(sys.argv[1]))["dependencies"] if "vulns" in d]
except (ValueError, KeyError):
    looked_up = []
if not looked_up:
    print("NOT RUN: the audit, because the advisories could not be reached.")
weak = [(d["name"], d["version"], v["id"]) for d in looked_up for v in d["vulns"]]
for name, version, known in weak:
    print(f"{name} {version}: {known}")
if looked_up and not weak:
    print(f"{len(looked_up)} pinned versions looked up, none known to be weak.")
sys.exit(1 if weak else 0 if looked_up else int(sys.argv[2]))
END
