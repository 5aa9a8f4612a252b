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
  # Who measures in grams and litres is told nothing in pounds, inches or degrees Fahrenheit.
  if grep -q '^measures: metric' "$house/plans/household.yaml" 2>/dev/null; then
    for file in "$place/$house"/*; do
      if sed '/<style>/,/<\/style>/d; /<script[^>]*>$/,$d' "$file" |
        grep -nE '(^|[^a-z])[0-9./]+ ?(lb|oz|in|F|cups?|qt|gal|fl oz)([^a-z0-9]|$)'; then
        echo "$house: $(basename "$file") has measures of another country"
        bad=1
      fi
    done
  fi
  zone=$(sed -n 's/^time zone: //p' "$house/plans/household.yaml" 2>/dev/null || true)
  if [ -n "$zone" ] && ! grep -q "^X-WR-TIMEZONE:$zone" "$place/$house/calendar.ics"; then
    echo "$house: the calendar does not say that it is of $zone"
    bad=1
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
