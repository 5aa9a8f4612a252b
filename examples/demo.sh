#!/usr/bin/env bash
# Installs what is missing, builds the program, compiles the demo month and prints the list.
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/packages.sh
need_packages "${build_packages[@]}"

cmake -S . -B build/release -G Ninja -DCMAKE_BUILD_TYPE=Release -DCMAKE_UNITY_BUILD=ON >/dev/null
cmake --build build/release --target manciple -- --quiet

build/release/manciple build plans/2027-03.yaml --out out/2027-03 >/dev/null
cat out/2027-03/list.txt
echo
echo "The page for the phone and the printer: out/2027-03/month.html"
echo "The rest is beside it: calendar.ics, menu.md, prep.md, days.md, labels.md, money.md, left.md, list.md, list.csv, result.json"
