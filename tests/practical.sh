#!/usr/bin/env bash
# What no cook and no shopper would do, counted over the demo month: all must be none.
# Usage: practical.sh PROGRAM
set -euo pipefail
program=$(realpath "$1")
cd "$(dirname "$0")/.."
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
"$program" build plans/2027-03.yaml --out "$place" >/dev/null
/usr/bin/python3 tests/emit/practical.py "$place"
