#!/usr/bin/env bash
# Every C++ file is as clang-format writes it.
set -euo pipefail
cd "$(dirname "$0")/.."
find compiler tests -name '*.?pp' -print0 | xargs -0 clang-format --dry-run --Werror
