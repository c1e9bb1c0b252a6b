# Sourced by try.sh and test.sh: a virtual environment with pinned versions, made once.
# $extra: the extra to install ("" or "test"), set before; "." takes no arguments in every sh. Sets $python.

root=$(cd "$(dirname "$0")/.." && pwd)
cd "$root" || exit 1
venv=${TUREEN_VENV:-$root/.venv}

say() { printf '%s\n' "$*" >&2; }

base=""
for candidate in python3 python3.13 python3.12 python3.11 python; do
    if command -v "$candidate" >/dev/null 2>&1 &&
        "$candidate" -c 'import sys, venv; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; then
        base=$candidate
        break
    fi
done
if [ -z "$base" ]; then
    say "Python 3.11 or newer with its venv module is needed; install it and run this again."
    exit 1
fi

python=$venv/bin/python
# What was installed, so that a second run starts at once and a changed pin installs again.
stamp=$(cat pyproject.toml deploy/constraints.txt | cksum | tr ' ' '-')
if [ ! -x "$python" ]; then
    say "Making a virtual environment in $(basename "$venv") ..."
    "$base" -m venv "$venv" || exit 1
fi
for done_extra in "" test; do
    # An environment with the test packages has all that the other one has.
    if [ "$(cat "$venv/.tureen-$done_extra" 2>/dev/null)" = "$stamp" ] &&
        { [ "$done_extra" = test ] || [ "$extra" = "$done_extra" ]; }; then
        installed=yes
    fi
done
if [ "${installed:-no}" != yes ]; then
    say "Installing what is needed (once, a few minutes) ..."
    want=.
    [ -n "$extra" ] && want=".[$extra]"
    PIP_DISABLE_PIP_VERSION_CHECK=1 "$python" -m pip install -q -c deploy/constraints.txt -e "$want" || {
        say "The packages could not be installed: check the network, then run this again."
        exit 1
    }
    printf '%s' "$stamp" >"$venv/.tureen-$extra"
fi
