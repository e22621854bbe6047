#!/bin/sh
# Part of the build: leaves lib/classes.lst, the classes that the commands load, from which the
# start script makes the archive a start is quick from; then has it made.
# Usage: start-archive.sh DISTRIBUTION
set -eu
dist=$1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
rm -f "$dist/lib/classes.jsa" "$dist/lib/classes.lst"

listed() {
  name=$1
  shift
  VESTIBULE_JAVA_OPTIONS="-XX:TieredStopAtLevel=1 -XX:DumpLoadedClassList=$work/$name.lst" \
    "$dist/bin/vestibule" "$@" >"$work/$name.out" 2>&1 || {
    cat "$work/$name.out" >&2
    exit 1
  }
}

listed demo demo --folder "$work/practice"
cat "$work"/*.lst | awk '!seen[$0]++' >"$work/all"
mv "$work/all" "$dist/lib/classes.lst"
"$dist/bin/vestibule" --version >/dev/null
