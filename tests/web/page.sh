#!/usr/bin/env bash
# The page in a real browser: Debian's Chromium, driven by playwright-core from npm.
set -euo pipefail
program=$(realpath "$1")
cd "$(dirname "$0")/../.."
tools=$PWD/build/web
mkdir -p "$tools"
if ! cmp -s tests/web/package.json "$tools/package.json" || [ ! -d "$tools/node_modules/playwright-core" ] ||
  [ ! -d "$tools/node_modules/axe-core" ]; then
  rm -rf "$tools/node_modules" "$tools/package.json"
  cp tests/web/package.json "$tools/package.json.new"
  mkdir -p "$tools/install"
  cp tests/web/package.json "$tools/install/package.json"
  if ! npm install --prefix "$tools/install" --no-audit --no-fund --no-package-lock --ignore-scripts >"$tools/npm.log" 2>&1; then
    echo "The checks of the page need playwright-core and axe-core, and npm could not install them:"
    cat "$tools/npm.log"
    exit 1
  fi
  mv "$tools/install/node_modules" "$tools/node_modules"
  mv "$tools/package.json.new" "$tools/package.json"
fi
# The shell without a window, which takes a third of the time of the whole browser.
if ! browser=$(command -v chromium-headless-shell); then
  echo "The checks of the page need Debian's package chromium-headless-shell, and there is no such program."
  exit 1
fi
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT

"$program" build plans/2027-03.yaml --out "$place/demo" >/dev/null 2>&1
(cd tests/emit/hostile && "$program" build plans/p.yaml --out "$place/hostile" >/dev/null)
# The demo compiled again after a change: a dish more at the end of the month, and a pizza of which
# some was bought is another.
cp -r plans recipes "$place"
sed -i -e 's/2027-03-30: {dinner: sesame-tofu-noodles}/2027-03-30: {dinner: [sesame-tofu-noodles, coleslaw]}/' \
  -e 's/dinner: {dish: pepperoni-pizza, for: {Signe: without pepperoni}}/dinner: margherita-pizza/' "$place/plans/2027-03.yaml"
(cd "$place" && "$program" build plans/2027-03.yaml --out changed >/dev/null 2>&1)
cmp -s "$place/demo/result.json" "$place/changed/result.json" && { echo "the plan was not changed"; exit 1; }

(cd "$place" && "$program" review --write >/dev/null 2>&1)

size=$(stat -c %s "$place/demo/month.html")
packed=$(gzip -9c "$place/demo/month.html" | wc -c)
echo "page weight: $size bytes, $packed compressed"
[ "$packed" -le 120000 ] || { echo "the demo's page is over 120 KB compressed"; exit 1; }

WEB_TOOLS=$tools WEB_BROWSER=$browser WEB_PLACE=$place timeout 1200 node --test --test-concurrency=1 --test-reporter=spec tests/web/*_test.mjs
