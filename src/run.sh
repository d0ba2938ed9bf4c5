#!/bin/sh
# Installs what is missing, builds Gangway, and opens the demo house. Without a display it writes the
# demo's sheets and a picture of each room into build/demo-out instead. Safe to run twice.
# Usage: sh src/run.sh [PLAN]
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
plan=${1:-}
case $plan in
    "") plan=$top/assets/demo/terrace.plan.json ;;
    /*) ;;
    *) plan=$(pwd)/$plan ;;
esac

sh "$top/third_party/setup.sh" packages.txt

cd "$top"
echo "gangway: building into $top/build"
mkdir -p build
log=$top/build/build-log.txt
generator="-G Ninja"
[ -e build/CMakeCache.txt ] && generator=""
# shellcheck disable=SC2086 # two words or none
{ cmake -S . -B build $generator >"$log" 2>&1 && cmake --build build --target gangway >>"$log" 2>&1; } || {
    tail -n 40 "$log" >&2
    echo "gangway: the build stopped; the whole log is in $log" >&2
    exit 1
}

if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
    echo "gangway: opening $plan"
    exec build/gangway open "$plan"
fi

out=$top/build/demo-out
echo "gangway: no display here, so the sheets and a picture of each room are written instead"
build/gangway sheets "$plan" -o "$out/sheets" --formats pdf,png --dpi 110
build/gangway inspect "$plan" --rooms | while IFS=' ' read -r room; do
    build/gangway shot "$plan" --room "$room" -o "$out/rooms/$room.png" --size 1280x720
done
echo "gangway: look into $out"
