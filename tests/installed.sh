#!/usr/bin/env bash
# cmake --install gives a program that needs nothing of the source tree.
set -euo pipefail
build=$(cd "$1" && pwd)
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
cmake --install "$build" --prefix "$place" >/dev/null
cd "$place"
bin/manciple convert "2 cups onion, chopped" --to g | head -n 1 | grep -x '320 g, 356 g as bought'
bin/manciple food onion | grep -q 'SR28 11282'
bin/manciple new home >/dev/null
bin/manciple build home/plans/week.yaml >/dev/null
for file in bash-completion/completions/manciple zsh/site-functions/_manciple \
  fish/vendor_completions.d/manciple.fish man/man1/manciple.1; do
  grep -q schema "share/$file"
done
