#!/bin/sh
# Part of the build: leaves lib/classes.lst, the classes that the demo loads (it uses nearly every
# command), from which the start script makes the archive a start is quick from; then has it made.
# Usage: start-archive.sh DISTRIBUTION
set -eu
dist=$1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
rm -f "$dist/lib/classes.jsa" "$dist/lib/classes.lst"
export VESTIBULE_JAVA_OPTIONS="-XX:TieredStopAtLevel=1 -XX:DumpLoadedClassList=$work/classes.lst"
"$dist/bin/vestibule" demo --folder "$work/practice" >"$work/said" 2>&1 || {
  cat "$work/said" >&2
  exit 1
}
unset VESTIBULE_JAVA_OPTIONS
mv "$work/classes.lst" "$dist/lib/classes.lst"
"$dist/bin/vestibule" --version >/dev/null
