#!/usr/bin/env bash
# Builds the benchmarks, and holds what the buying engine finds for random models against trying
# everything: plain ones, and with room, credit and reductions.
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/packages.sh
need_packages "${build_packages[@]}" "${test_build_packages[@]}"
cmake -S . -B build/bench -G Ninja -DCMAKE_BUILD_TYPE=Release -DCMAKE_UNITY_BUILD=ON \
  -DMANCIPLE_TESTS=ON -DMANCIPLE_BENCH=ON >/dev/null
cmake --build build/bench --target random_houses food_bench prep_bench -- --quiet
for features in "" rcs; do
  build/bench/tests/random_houses 1 200 $features
done
