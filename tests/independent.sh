#!/usr/bin/env bash
# The result.json of the demo and of ten other months against its schema, against arithmetic and
# against the clock of every day, by programs that share no code with the compiler.
set -euo pipefail
program=$(realpath "$1")
cd "$(dirname "$0")/.."
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
"$program" build plans/2027-03.yaml --out "$place" >/dev/null
/usr/bin/python3 tests/emit/check_result.py "$place" compiler/emit/result.schema.json plans/2027-03.yaml
/usr/bin/python3 tests/emit/check_clock.py . "$place"
/usr/bin/python3 tests/months.py "$program"
"$program" build plans/2027-03.yaml --out "$place/again" >/dev/null
for file in "$place"/*.*; do
  cmp "$file" "$place/again/$(basename "$file")"
done
