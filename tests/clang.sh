#!/usr/bin/env bash
# clang builds the program without a warning, with each version that is here (14 at least).
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/packages.sh
need_packages "${build_packages[@]}" "${clang_packages[@]}"
for version in 14 16; do
  command -v clang++-$version >/dev/null || continue
  CC=clang-$version CXX=clang++-$version cmake -S . -B build/clang-$version -G Ninja \
    -DCMAKE_BUILD_TYPE=Release >/dev/null
  cmake --build build/clang-$version --target manciple -- --quiet
  echo "$(clang++-$version --version | head -n 1): $(build/clang-$version/manciple --version)"
done
