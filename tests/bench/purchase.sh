#!/bin/bash
# What to buy, where and when: our solver against cbc and glpsol on the same models, all in one run.
#
#   bash tests/bench/purchase.sh [-c SECONDS] [-g SECONDS] [SIZE...]
#
# The first line is of the demo month, the second of the same with all that couples foods: little
# room in fridge and freezer, and a shop where 150.00 in a visit takes 10.00 off. The last line is the
# demo's proof food by food with GLPK (by_parts.cpp).
# A SIZE is 1, 2, 4, 8 (times a month of 90 foods, 4 shops, 11 stops), f=8 (8 times the foods, the
# shops of one month), c1, c2 ... (with limits of room, credit and a reduction; without the
# references, whose program of it does not fit into memory), or a file that write_model has written.
# The references get SECONDS each (100 and 20; 0 leaves one out). BUILD is where to build (build/bench).
set -euo pipefail
cd "$(dirname "$0")/../.."
cbc=100
glpsol=20
while getopts "c:g:" option; do
  case $option in
    c) cbc=$OPTARG ;;
    g) glpsol=$OPTARG ;;
    *) exit 2 ;;
  esac
done
shift $((OPTIND - 1))
sizes=("$@")
[ ${#sizes[@]} -gt 0 ] || sizes=(1 2 4 8 f=8 c1)
. tests/packages.sh
need_packages "${build_packages[@]}" "${test_packages[@]}" coinor-cbc glpk-utils
build=${BUILD:-build/bench}
cmake -S . -B "$build" -DCMAKE_BUILD_TYPE=Release -DMANCIPLE_TESTS=ON -DMANCIPLE_BENCH=ON >/dev/null
cmake --build "$build" --target purchase_bench plan_model by_parts >/dev/null
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
"$build/tests/plan_model" plans/2027-03.yaml >"$folder/demo"
cp -r plans recipes "$folder"
sed -i 's/^store credit: .*/&\nreduction: {over: 150.00, off: 10.00}/' "$folder/plans/stores/fairfield-market.yaml"
sed -i 's/fridge: 260 l, freezer: 180 l/fridge: 110 l, freezer: 25 l/' "$folder/plans/household.yaml"
"$build/tests/plan_model" "$folder/plans/2027-03.yaml" >"$folder/demo-coupled"
cmp -s "$folder/demo" "$folder/demo-coupled" && { echo "the demo month was not coupled"; exit 1; }
(cd "$folder" && "$OLDPWD/$build/tests/purchase_bench" "$folder" "$cbc" "$glpsol" demo demo-coupled "${sizes[@]}")
"$build/tests/by_parts" "$folder/demo"
