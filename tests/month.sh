#!/usr/bin/env bash
# A month as it happens, on the demo: build, settle the first trip with three differences, change a
# dinner, go on from the 10th, settle, ... to the end, and on into the next month. After each step
# the past has not moved and the sums are right.
#
#   bash tests/month.sh PROGRAM
set -euo pipefail
program=$(realpath "$1")
source=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cp -r "$source/recipes" "$source/plans" "$work"
# March as it was planned: its receipts, if there are any, are of the demo.
rm -f "$work"/plans/receipts/2027-03-*
cd "$work"
plan=plans/2027-03.yaml
/usr/bin/python3 "$source/tests/month.py" "$program" "$plan"
