#!/usr/bin/env bash
# Tests of the oracle for whole houses (tests/oracle/house), without the program.
set -euo pipefail
cd "$(dirname "$0")/house"
exec /usr/bin/python3 -B -m unittest discover -p "*_test.py"
