#!/usr/bin/env bash
# The houses of examples/ladder, each of which says more than the one before: every one gives the
# list that is expected of it, byte for byte, without an error. Prints how many warnings each has.
# `tests/ladder.sh PROGRAM --write` writes what is expected anew: read the difference before it is
# committed.
set -euo pipefail
program=$(realpath "$1")
write=${2:-}
cd "$(dirname "$0")/../examples/ladder"
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
bad=0
for house in */; do
  house=${house%/}
  if ! (cd "$house" && timeout 20 "$program" build plans/week.yaml --out "$place/$house" >/dev/null 2>"$place/said"); then
    echo "$house: no list"
    cat "$place/said"
    bad=1
    continue
  fi
  warnings=$(grep -c ': warning: ' "$place/said" || true)
  echo "$house: $warnings warnings"
  if [ "$write" = --write ]; then
    mkdir -p "$house/expected"
    cp "$place/$house/list.txt" "$house/expected/list.txt"
    cp "$place/said" "$house/expected/said.txt"
  else
    diff -u "$house/expected/list.txt" "$place/$house/list.txt" || bad=1
    diff -u "$house/expected/said.txt" "$place/said" || bad=1
  fi
done
exit $bad
