#!/usr/bin/env bash
# Fuzzes what reads a house's files: each target for so many seconds, with clang's libFuzzer and the
# address and undefined-behaviour sanitizers. The corpora grow in build/fuzz/corpus, from the seeds
# here; what breaks a target is put into build/fuzz/findings and ends with exit 1.
#
# usage: tests/fuzz/run.sh [SECONDS [TARGET...]]      (30 seconds, all targets)
set -euo pipefail
cd "$(dirname "$0")/../.."
. tests/packages.sh
need_packages "${build_packages[@]}" "${clang_packages[@]}"
seconds=${1:-30}
shift || true
targets=("$@")
[ ${#targets[@]} -gt 0 ] || targets=(amount line stock offer receipt recipe household plan)

CC=clang-14 CXX=clang++-14 cmake -S . -B build/fuzz -G Ninja -DCMAKE_BUILD_TYPE=Debug \
  -DCMAKE_CXX_FLAGS_DEBUG="-O1 -g1" -DMANCIPLE_SANITIZE=ON -DMANCIPLE_FUZZ=ON >/dev/null
cmake --build build/fuzz --target "${targets[@]/#/fuzz_}" -- --quiet
mkdir -p build/fuzz/findings
bad=0
for target in "${targets[@]}"; do
  mkdir -p "build/fuzz/corpus/$target"
  log=build/fuzz/$target.log
  case $target in amount) longest=60 ;; line | stock | offer) longest=160 ;; *) longest=1500 ;; esac
  # A run that takes 20 s or 2 GB is a finding, too.
  if ASAN_OPTIONS=malloc_context_size=4 build/fuzz/tests/fuzz/fuzz_"$target" "build/fuzz/corpus/$target" "tests/fuzz/seeds/$target" \
    -max_total_time="$seconds" -timeout=20 -rss_limit_mb=2048 -max_len=$longest \
    -dict=tests/fuzz/words.dict -artifact_prefix="build/fuzz/findings/$target-" \
    -print_final_stats=1 >"$log" 2>&1; then
    state=ok
  else
    state=FAILED
    bad=1
  fi
  runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$log")
  covered=$(grep -o 'cov: [0-9]*' "$log" | tail -n 1)
  echo "$state $target: ${runs:-?} inputs, ${covered:-cov: ?}"
  [ $state = ok ] || grep -E 'broken:|ERROR|runtime error|what\(\)|SUMMARY|Test unit' "$log" | head -n 8 || true
done
exit $bad
