#!/usr/bin/env bash
# The check of the layers refuses an include that is planted in the solver.
set -euo pipefail
cd "$(dirname "$0")/.."
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
cp -r compiler "$place/compiler"
bash tests/layers.sh "$place/compiler"
sed -i '1i #include "kitchen/shop.hpp"' "$place/compiler/solver/buying/search.cpp"
if bash tests/layers.sh "$place/compiler" >"$place/said"; then
  echo "a planted include was not refused"
  exit 1
fi
grep -q 'solver/buying/search.cpp:1: solver/buying includes kitchen' "$place/said"
