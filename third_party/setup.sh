#!/bin/sh
# Installs what is missing of the packages in the given lists (Debian 12), and says so.
# Usage: sh third_party/setup.sh packages.txt [packages-test.txt]
set -eu
here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd)

stop() {
    printf 'gangway setup: %s\n' "$1" >&2
    exit 1
}

command -v dpkg-query >/dev/null 2>&1 && command -v apt-get >/dev/null 2>&1 ||
    stop "this script knows Debian's apt-get only. Install by your own means what $here/packages.txt lists, then build with cmake -S . -B build && cmake --build build"

missing=""
for list in "$@"; do
    [ -r "$here/$list" ] || stop "no package list $here/$list"
    for package in $(sed 's/#.*//' "$here/$list" | awk 'NF { print $1 }'); do
        state=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null || true)
        [ "$state" = installed ] || missing="$missing $package"
    done
done

if [ -z "$missing" ]; then
    echo "gangway setup: every package is there already."
    exit 0
fi

if [ "$(id -u)" -eq 0 ]; then
    as_root=""
elif command -v sudo >/dev/null 2>&1; then
    as_root="sudo"
else
    stop "these packages are missing and neither root nor sudo is at hand. Ask an administrator to run: apt-get install$missing"
fi

echo "gangway setup: installing$missing"
export DEBIAN_FRONTEND=noninteractive
$as_root apt-get update -q || echo "gangway setup: the package lists could not be refreshed; going on with the old ones." >&2
# shellcheck disable=SC2086 # one word a package is wanted here
$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends $missing ||
    stop "apt-get could not install them. Look at its message above; a network or a Debian 12 package source may be missing."
echo "gangway setup: done."
