#!/bin/bash
# Our scheduler on every PSPLIB instance (.sm) of a folder, against the lengths in its optima.csv.
#
#   bash tests/bench/prep.sh DIRECTORY [SECONDS]
#
# SECONDS is the time limit for one instance (1), on one core. BUILD is where to build
# (build/bench).
set -euo pipefail
[ $# -ge 1 ] || { echo "usage: bash tests/bench/prep.sh DIRECTORY [SECONDS]" >&2; exit 2; }
folder=$(cd "$1" && pwd)
cd "$(dirname "$0")/../.."
. tests/packages.sh
need_packages "${build_packages[@]}" "${test_build_packages[@]}" "${test_packages[@]}"
build=${BUILD:-build/bench}
cmake -S . -B "$build" -DCMAKE_BUILD_TYPE=Release -DMANCIPLE_TESTS=ON -DMANCIPLE_BENCH=ON >/dev/null
cmake --build "$build" --target prep_bench >/dev/null
"$build/tests/prep_bench" "$folder" "${@:2}"
