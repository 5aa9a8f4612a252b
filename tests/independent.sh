#!/usr/bin/env bash
# The demo's result.json against its schema and against arithmetic that shares no code with the
# compiler.
set -euo pipefail
program=$(realpath "$1")
cd "$(dirname "$0")/.."
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
"$program" build plans/2027-03.yaml --out "$place" >/dev/null
/usr/bin/python3 tests/emit/check_result.py "$place" compiler/emit/result.schema.json plans/2027-03.yaml
"$program" build plans/2027-03.yaml --out "$place/again" >/dev/null
for file in "$place"/*.*; do
  cmp "$file" "$place/again/$(basename "$file")"
done
