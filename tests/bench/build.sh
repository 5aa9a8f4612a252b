#!/usr/bin/env bash
# What a build of the demo month costs, beside what yaml-cpp alone needs to read the same files in the
# same run: processor time, so that other work on the machine matters little; the least of several
# runs each. Prints milliseconds, their ratio, the peak memory of a build, and what 10,000 more recipes
# that no plan asks for add to it.
#
#   bash tests/bench/build.sh [PROGRAM [MOST]]
#
# PROGRAM is the program to measure (built in build/release). With MOST, a ratio above it fails.
set -euo pipefail
cd "$(dirname "$0")/../.."
. tests/packages.sh
need_packages "${build_packages[@]}" python3
program=${1:-}
if [ -z "$program" ]; then
  cmake -S . -B build/release -G Ninja -DCMAKE_BUILD_TYPE=Release -DCMAKE_UNITY_BUILD=ON >/dev/null
  cmake --build build/release --target manciple -- --quiet
  program=build/release/manciple
fi
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
g++ -std=c++20 -O2 tests/bench/yaml_bench.cpp -lyaml-cpp -o "$place/yaml_bench"
mkdir "$place/house"
cp -r recipes plans "$place/house"
python3 tests/bench/build.py "$(realpath "$program")" "$place/yaml_bench" "$place/house" "${2:-}"
