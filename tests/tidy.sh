#!/usr/bin/env bash
# clang-tidy over the C++ files that differ from a commit (the one before, unless said), or over all
# of the program's. Compiled for it by clang, without precompiled headers, whose options clang-tidy
# would not understand.
#
# usage: tests/tidy.sh [COMMIT | --all]
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/packages.sh
need_packages "${build_packages[@]}" "${clang_packages[@]}" clang-tidy-14

if [ "${1:-}" = --all ] || ! git rev-parse -q --verify HEAD~1 >/dev/null 2>&1; then
  mapfile -t files < <(find compiler -name '*.cpp' | sort)
else
  mapfile -t files < <(git diff --name-only --diff-filter=d "${1:-HEAD~1}" -- 'compiler/*.cpp' | sort)
fi
[ ${#files[@]} -gt 0 ] || exit 0
CC=clang-14 CXX=clang++-14 cmake -S . -B build/tidy -G Ninja -DCMAKE_BUILD_TYPE=Debug \
  -DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON >/dev/null
# clang-tidy says how many warnings of others it has kept to itself.
printf '%s\n' "${files[@]}" | xargs -P "$(nproc)" -n 1 clang-tidy-14 -p build/tidy --quiet 2>&1 |
  { grep -vE '^[0-9]+ warnings? generated\.$' || true; } | tee build/tidy/log
! grep -qE '(error|warning):' build/tidy/log
