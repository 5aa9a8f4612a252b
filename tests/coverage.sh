#!/usr/bin/env bash
# Which lines and branches of the program the test programs and the examples reach: a table by file,
# and build/coverage/index.html.
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/packages.sh
need_packages "${build_packages[@]}" "${test_build_packages[@]}" "${test_packages[@]}" gcovr
cmake -S . -B build/coverage -G Ninja -DCMAKE_BUILD_TYPE=Debug -DMANCIPLE_TESTS=ON \
  -DCMAKE_CXX_FLAGS_DEBUG="-O1 -g1 --coverage" -DCMAKE_EXE_LINKER_FLAGS=--coverage >/dev/null
cmake --build build/coverage -- --quiet
find build/coverage -name '*.gcda' -delete
for program in build/coverage/tests/*_tests; do
  "$program" --gtest_brief=1 >"build/coverage/$(basename "$program").log" 2>&1 ||
    echo "$(basename "$program") failed; see build/coverage/$(basename "$program").log"
done
bash tests/golden.sh build/coverage/manciple || true
bash tests/cli/refuse.sh build/coverage/manciple || true
bash tests/cli/endure.sh build/coverage/manciple || true
/usr/bin/gcovr -r . --object-directory build/coverage --filter 'compiler/' \
  --exclude-throw-branches --html-details build/coverage/index.html --print-summary
