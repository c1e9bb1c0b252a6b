#!/bin/sh
# Plays the demo supper through the real bot and opens the room page.
#   sh deploy/try.sh           prints the page's address and serves until Ctrl-C
#   sh deploy/try.sh --once    plays, writes the outputs into out/demo and ends
extra=""
. "$(dirname "$0")/venv.sh"

case "${1:-}" in
--once)
    rm -rf out/demo
    "$python" -m bot rehearse bot/room/demo/supper.jsonl --out out/demo || exit $?
    printf 'The chat, the plan, pictures and paper are in out/demo:\n'
    ls out/demo
    ;;
"")
    exec "$python" -m bot room --demo
    ;;
*)
    printf 'usage: sh deploy/try.sh [--once]\n' >&2
    exit 2
    ;;
esac
