#!/usr/bin/env bash
# An include of a phase that is planted in a solver is refused twice: by the check of the layers, and
# by the compiler, for the solvers are built without an include path to the phases.
set -euo pipefail
cd "$(dirname "$0")/.."
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
for solver in buying scheduling; do
  rm -rf "$place/compiler"
  cp -r compiler "$place/compiler"
  bash tests/layers.sh "$place/compiler"
  file=solver/$solver/search.cpp
  g++ -std=c++20 -fsyntax-only -I"$place/compiler/solver" "$place/compiler/$file"
  sed -i '1i #include "kitchen/shop.hpp"' "$place/compiler/$file"
  if bash tests/layers.sh "$place/compiler" >"$place/said"; then
    echo "an include planted in $file was not refused"
    exit 1
  fi
  grep -q "$file:1: solver/$solver includes kitchen" "$place/said"
  if g++ -std=c++20 -fsyntax-only -I"$place/compiler/solver" "$place/compiler/$file" 2>"$place/said"; then
    echo "an include planted in $file compiles"
    exit 1
  fi
  grep -q 'kitchen/shop.hpp: No such file' "$place/said"
done

rm -rf "$place/compiler"
cp -r compiler "$place/compiler"
echo 'using manciple::buying::Solution;' >>"$place/compiler/emit/list.cpp"
if bash tests/layers.sh "$place/compiler" >"$place/said"; then
  echo "a solver's name planted in a phase that renders was not refused"
  exit 1
fi
grep -q 'compiler/emit must not know the solver of buying' "$place/said"
