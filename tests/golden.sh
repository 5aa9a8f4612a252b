#!/usr/bin/env bash
# Each folder of examples with an `expected` folder is compiled and compared byte for byte.
# `tests/golden.sh PROGRAM --write` writes what is expected anew: read the difference before it is
# committed.
set -euo pipefail
program=$(realpath "$1")
cd "$(dirname "$0")/.."
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
bad=0
for expected in examples/*/expected; do
  example=$(dirname "$expected")
  root=$example
  [ -d "$example/plans" ] || root=. # the demo month itself
  plan=$(cat "$example/plan")
  (cd "$root" && "$program" build "$plan" --out "$place/$(basename "$example")" >/dev/null)
  for file in $(ls "$expected"); do
    if [ "${2:-}" = --write ]; then
      cp "$place/$(basename "$example")/$file" "$expected/$file"
    elif ! diff -u "$expected/$file" "$place/$(basename "$example")/$file"; then
      bad=1
    fi
  done
done
exit $bad
