#!/usr/bin/env bash
# The calendar, the table and the Markdown of the demo, and of a house whose names look like markup, formulas and
# the ends of things, are read by others and say what result.json says. A plan that is compiled
# again has the same bytes; one with a dish more changes the events of that dish and no others.
set -euo pipefail
program=$(realpath "$1")
cd "$(dirname "$0")/../.."
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
bad=0

"$program" build plans/2027-03.yaml --out "$place/demo" >/dev/null
(cd tests/emit/hostile && "$program" build plans/p.yaml --out "$place/hostile" >/dev/null)
for house in demo hostile; do
  /usr/bin/python3 tests/emit/check_calendar.py "$place/$house" || bad=1
  /usr/bin/python3 tests/emit/check_csv.py "$place/$house" || bad=1
  /usr/bin/python3 tests/emit/check_markdown.py "$place/$house" || bad=1
done

# Every formula of the hostile house has its apostrophe.
grep -q ",'=cmd" "$place/hostile/list.csv" || { echo "no formula was met in the table"; bad=1; }

cp -r plans recipes "$place"
sed -i 's/2027-03-30: {dinner: sesame-tofu-noodles}/2027-03-30: {dinner: [sesame-tofu-noodles, coleslaw]}/' "$place/plans/2027-03.yaml"
(cd "$place" && "$program" build plans/2027-03.yaml --out changed >/dev/null)
cmp -s "$place/demo/result.json" "$place/changed/result.json" && { echo "the plan was not changed"; bad=1; }
/usr/bin/python3 tests/emit/check_revisions.py "$program" "$place" || bad=1
exit $bad
