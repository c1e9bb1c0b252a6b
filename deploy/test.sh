#!/bin/sh
# Installs what the tests need and runs them all. Further arguments go to pytest.
extra=test
. "$(dirname "$0")/venv.sh"

# From the distribution: a browser for the page, poppler for paper, WordNet as a witness.
missing=""
command -v chromium >/dev/null 2>&1 || command -v chromium-browser >/dev/null 2>&1 || missing="$missing chromium"
command -v pdftotext >/dev/null 2>&1 || missing="$missing poppler-utils"
[ -e /usr/share/wordnet/index.noun ] || missing="$missing wordnet-base"
if [ -n "$missing" ] && command -v apt-get >/dev/null 2>&1 && [ "$(id -u)" = 0 ]; then
    say "Installing$missing ..."
    apt-get update -qq >/dev/null 2>&1
    # shellcheck disable=SC2086
    DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null 2>&1
fi
not_run=""
command -v chromium >/dev/null 2>&1 || command -v chromium-browser >/dev/null 2>&1 || not_run="$not_run browser"
command -v pdftotext >/dev/null 2>&1 || not_run="$not_run paper"
[ -e /usr/share/wordnet/index.noun ] || not_run="$not_run wordnet"

code=0
"$python" -m ruff check . || code=1
"$venv/bin/lint-imports" --no-cache >/dev/null || {
    "$venv/bin/lint-imports" --no-cache
    code=1
}
# Types are checked beside the tests; what was found is said below them.
types=$(mktemp)
trap 'rm -f "$types"' EXIT
"$python" -m mypy >"$types" 2>&1 &
types_checked=$!
marks=""
for kind in $not_run; do marks="${marks:+$marks and }not $kind"; done
# One more than there are processors: some tests mostly wait.
workers=$(($(nproc 2>/dev/null || echo 2) + 1))
"$python" -m pytest -n "$workers" --dist loadfile --no-loadscope-reorder ${marks:+-m "$marks"} "$@" || code=$?
wait "$types_checked" || code=1
cat "$types"
for kind in $not_run; do say "NOT RUN: the tests marked '$kind', for want of its package from the distribution."; done
exit $code
