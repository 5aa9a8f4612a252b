#!/usr/bin/env bash
# Installs what is missing, builds, runs every test, prints a total. With --all the slow part, too:
# many kills, random houses, clang's optimised program, clang-tidy over everything, and some fuzzing.
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/packages.sh
need_packages "${build_packages[@]}" "${clang_packages[@]}" "${test_build_packages[@]}"
# What only the tests run with is installed while the rest is compiled.
need_packages "${test_packages[@]}" &
installing=$!

# Tests by clang, which takes half as long as GCC with the sanitizers; what they ask a finished
# program for is built by GCC, as users build it. So both compilers see every file.
CC=clang-14 CXX=clang++-14 cmake -S . -B build/sanitized -G Ninja -DCMAKE_BUILD_TYPE=Debug \
  -DCMAKE_CXX_FLAGS_DEBUG="-O0 -g1" -DCMAKE_EXE_LINKER_FLAGS=-fuse-ld=lld \
  -DCMAKE_UNITY_BUILD=ON -DMANCIPLE_TESTS=ON -DMANCIPLE_SANITIZE=ON >/dev/null
cmake --build build/sanitized -- --quiet
cmake -S . -B build/release -G Ninja -DCMAKE_BUILD_TYPE=Release -DCMAKE_UNITY_BUILD=ON >/dev/null
cmake --build build/release --target manciple -- --quiet

wait "$installing"

# Tests run three at a time, for many wait, each with a log of its own; the total is counted from these at the end.
logs=build/sanitized/logs
rm -rf "$logs"
mkdir -p "$logs"
running=0
begun=0

# Waits until one of three may begin.
turn() {
  if [ "$running" -eq 3 ]; then
    wait -n || true
    running=$((running - 1))
  fi
  running=$((running + 1))
  begun=$((begun + 1))
}

# A check by a script: one test.
check() {
  turn
  run_check "$@" &
}
run_check() {
  local name=$1 since=$SECONDS
  shift
  local log
  log=$(mktemp "$logs/XXXXXX.log")
  if "$@" >"$log" 2>&1; then
    echo "passed 1" >"$log.count"
    echo "ok      $name ($((SECONDS - since)) s)"
    grep -h '^page weight\|^first contentful\|^the list prints\|^prep prints' "$log" || true
  else
    echo "failed 1" >"$log.count"
    echo "FAILED  $name"
    cat "$log"
  fi
}

# A test program, one a phase: as many tests as it says.
suite() {
  turn
  run_suite "$1" &
}
run_suite() {
  local name state=ok good bad left since=$SECONDS
  name=$(basename "$1")
  local log=$logs/$name.log
  "$1" --gtest_brief=1 >"$log" 2>&1 || state=FAILED
  good=$(sed -n 's/^\[  PASSED  \] \([0-9]*\) test.*/\1/p' "$log" | tail -n 1)
  bad=$(sed -n 's/^\[  FAILED  \] \([0-9]*\) test.*/\1/p' "$log" | tail -n 1)
  left=$(sed -n 's/^\[  SKIPPED \] \([0-9]*\) test.*/\1/p' "$log" | tail -n 1)
  [ "$state" = ok ] || [ -n "$bad" ] || bad=1
  printf 'passed %s\nfailed %s\nskipped %s\n' "${good:-0}" "${bad:-0}" "${left:-0}" >"$log.count"
  printf '%-7s %s: %s passed, %s failed (%s s)\n' "$state" "$name" "${good:-0}" "${bad:-0}" \
    "$((SECONDS - since))"
  grep -h '^published' "$log" || true
  [ "$state" = ok ] || cat "$log"
}

# What takes longest first.
check "the page works in a browser" bash tests/web/page.sh build/release/manciple
check "the oracle for whole houses is right by itself" bash tests/oracle/house.sh
check "the demo's result is right by itself" bash tests/independent.sh build/release/manciple
for program in $(ls -S build/sanitized/tests/*_tests); do
  suite "$program"
done

check "a phase includes only what stands left of it" bash tests/layers.sh
check "an include that is planted in the solver is refused" bash tests/planted.sh
check "the code is formatted" bash tests/format.sh
check "DEVELOPERS says what the reference knows" /usr/bin/python3 tests/foods/coverage.py
check "the demo month compiles as reviewed" bash tests/golden.sh build/release/manciple
check "the demo month is one that a household would carry out" bash tests/practical.sh build/release/manciple
check "small houses worked out by hand" bash tests/cases.sh build/release/manciple
check "a month is settled, changed and gone on with" bash tests/month.sh build/release/manciple
check "each step of knowing gives a list" bash tests/ladder.sh build/release/manciple
check "an installed program works elsewhere" bash tests/installed.sh build/release
check "a Debian package runs in a clean root" bash tests/package.sh build/release
check "README shows what the program prints" python3 tests/readme.py build/release/manciple
check "the calendar and the table say what the result says" bash tests/emit/calendar_and_table.sh build/release/manciple
check "a new house builds at once" /usr/bin/python3 tests/cli/new.py build/release/manciple
check "what changed is told of results, plans and revisions" bash tests/cli/compare.sh build/release/manciple
check "what is left over is told, and which recipes use it" bash tests/cli/use_up.sh build/release/manciple
check "shells and man are told of every command" /usr/bin/python3 tests/cli/told.py build/release/manciple
check "the schemas of files are right" /usr/bin/python3 tests/cli/schema.py build/release/manciple
check "a long build on a terminal can be watched and ended" python3 tests/cli/terminal.py build/release/manciple
check "a build that is killed leaves no mixture" python3 tests/cli/kills.py build/release/manciple
check "bad input is refused and nothing is written" bash tests/cli/refuse.sh build/sanitized/manciple
check "whatever files say, the program ends well" bash tests/cli/endure.sh build/sanitized/manciple

if [ "${1:-}" = --all ]; then
  check "many builds that are killed leave no mixture" python3 tests/cli/kills.py build/release/manciple 250
  check "a writer killed a thousand times leaves no mixture" env MANCIPLE_KILLS=1000 build/sanitized/tests/cli_tests --gtest_filter='Write.*Killed'
  check "fifty thousand recipes in a row are built" python3 tests/cli/long_chain.py build/release/manciple
  check "a build takes at most 60 times what reading the YAML takes" bash tests/bench/build.sh build/release/manciple 60
  check "150 random houses cost what the oracle says" /usr/bin/python3 -B tests/oracle/house/compare.py build/release/manciple --seeds 1..150
  check "what must hold between a house and the house changed" /usr/bin/python3 tests/oracle/metamorphic.py build/release/manciple --changes 40
  check "four months are built, in less room, too" /usr/bin/python3 tests/four_months.py build/release/manciple
  check "ten other dinners in the demo are right, and as a cook would do it" /usr/bin/python3 tests/other_dinners.py build/release/manciple
  check "forty months with other dinners are, too" /usr/bin/python3 tests/other_dinners.py --random 1..40 build/release/manciple
  check "random models cost what trying everything finds" bash tests/random_models.sh
  check "clang builds the program without a warning" bash tests/clang.sh
  check "clang-tidy finds nothing" bash tests/tidy.sh --all
  check "a short run of the fuzzers finds nothing" bash tests/fuzz/run.sh 20
fi

wait
total() {
  cat "$logs"/*.count | awk -v what="$1" '$1 == what { sum += $2 } END { print sum + 0 }'
}
passed=$(total passed)
failed=$(total failed)
skipped=$(total skipped)
# What ended without a count did not end well.
counted=$(ls "$logs"/*.count | wc -l)
failed=$((failed + begun - counted))

echo
if [ "$skipped" -gt 0 ]; then
  echo "$passed passed, $failed failed, $skipped skipped"
else
  echo "$passed passed, $failed failed"
fi
[ "$failed" -eq 0 ]
