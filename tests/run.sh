#!/bin/sh
# Installs what is missing, builds everything, runs every test. Safe to run twice.
# Usage: sh tests/run.sh [ctest options]
set -eu
top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)

sh "$top/third_party/setup.sh" packages.txt packages-test.txt

cd "$top"
cores=$(nproc 2>/dev/null || echo 2)
echo "gangway tests: building into $top/build"
generator="-G Ninja"
[ -e build/CMakeCache.txt ] && generator=""
# shellcheck disable=SC2086 # two words or none
cmake -S . -B build $generator -DGANGWAY_TESTS=ON
cmake --build build -j "$cores"
echo "gangway tests: running"
# Window tests share one display and the software renderer uses all cores: one test program at a time.
ctest --test-dir build --output-on-failure --no-tests=error "$@"
