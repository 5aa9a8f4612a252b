#!/usr/bin/env bash
# The small houses of tests/cases: what the program says of each against what is worked out by hand.
# Usage: cases.sh PROGRAM [CASE...]
set -euo pipefail
program=$(realpath "$1")
shift
cd "$(dirname "$0")"
exec /usr/bin/python3 cases.py "$program" "$@"
