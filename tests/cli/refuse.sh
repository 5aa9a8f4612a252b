#!/usr/bin/env bash
# Bad input of every kind ends with exit 1, a diagnostic with its number at its place, and nothing
# written; a wrong command line ends with exit 2.
set -u
program=$(realpath "$1")
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
cd "$place"
bad=0

fresh() {
  rm -rf house && mkdir -p house/plans/stores house/recipes && cd house || exit 1
  cat >plans/household.yaml <<'Y'
people: [{name: Ada, avoids: [peanut]}, {name: Ben}]
meals: {dinner: "18:30"}
appliances: {burner: 4}
Y
  cat >plans/stores/corner.yaml <<'Y'
shop: Corner
prices: {onion: 1.00/lb, ground beef: 5.00/lb}
Y
  cat >recipes/stew.yaml <<'Y'
name: Stew
serves: 2
ingredients:
  - 1 lb onion
Y
  cat >plans/p.yaml <<'Y'
plan: P
from: 2027-03-01
until: 2027-03-31
meals:
  2027-03-02: {dinner: stew}
trips: [{date: 2027-03-01, stops: [corner]}]
Y
}

options=
# expect WHAT TEXT...: building fails with exit 1, says each text, writes nothing.
expect() {
  local what=$1
  shift
  local said
  said=$(timeout 20 "$program" build plans/p.yaml --out out $options 2>&1)
  local code=$?
  [ $code -eq 1 ] || { echo "$what: exit $code instead of 1"; bad=1; }
  [ ! -e out ] || { echo "$what: something was written"; bad=1; }
  local text
  for text in "$@"; do
    grep -qF -- "$text" <<<"$said" || { echo "$what: does not say '$text' but:"; echo "$said" | head -20; bad=1; }
  done
  cd ..
}

# The same where something is still to be found, which is an error to who asks for that.
expect_strictly() {
  "$program" build plans/p.yaml --out out >/dev/null 2>&1 || { echo "$1: no list"; bad=1; }
  grep -q '^Still to find' out/list.txt || { echo "$1: the list does not say so"; bad=1; }
  rm -rf out
  options=--strict
  expect "$@"
  options=
}

fresh
"$program" build plans/p.yaml --out out >/dev/null 2>&1 || { echo "the good house does not build"; "$program" build plans/p.yaml --out out; bad=1; }
cd ..

fresh; sed -i 's/onion/onoin/' recipes/stew.yaml
expect "an unknown food" "recipes/stew.yaml:4:10: error: no food or recipe is called 'onoin' [K001]" "did you mean onion"
fresh; sed -i 's/dinner: stew/dinner: stwe/' plans/p.yaml
expect "an unknown recipe" "plans/p.yaml:5:24: error: there is no recipe 'stwe' [K002]" "did you mean stew"
fresh; sed -i 's/serves/servse/' recipes/stew.yaml
expect "an unknown key" "recipes/stew.yaml:2:1: error: a recipe has no key 'servse' [T006]" "did you mean serves" "did you mean serves"
fresh; echo "  - 1 cup freezer bag" >>recipes/stew.yaml
options=--strict
expect "a measure of the wrong kind" "recipes/stew.yaml:5:5: warning:" "[K009]" "some foods, amounts or recipes are not known"
fresh; echo "  - 1 cup ground beef, julienned" >>recipes/stew.yaml
expect "no conversion known" "recipes/stew.yaml:5:5: warning: what a volume of 'ground beef'" "[K009]" "help: weigh a cup"
fresh; echo "  - 2 bunches zorgle" >>recipes/stew.yaml
expect "a food that nobody knows" "recipes/stew.yaml:5:15: warning: no food or recipe is called 'zorgle'" "[K016]"
fresh; sed -i 's/dinner: stew/dinner: pizza night/' plans/p.yaml
expect "a dish that nobody knows" "plans/p.yaml:5:24: warning: there is no recipe 'pizza night'" "[K002]"
fresh; printf 'date: 2027-01-05\non hand: [1 egg]\n' >plans/on-hand.yaml
expect "a count of long before the plan" "plans/on-hand.yaml:1:7: warning: what is in the house was counted on" "[K021]" "counted too long ago"
options=
fresh; echo "  - 1 cup stew" >>recipes/stew.yaml; echo "makes: 2 cups" >>recipes/stew.yaml
expect "a circle" "error: recipes need each other in a circle: Stew -> Stew [R001]" "note: recipes/stew.yaml:5:5"
fresh; sed -i 's/2027-03-02: /2027-04-02: /' plans/p.yaml
expect "a date outside the plan" "plans/p.yaml:5:3: error: 2027-04-02 is outside the plan" "[K008]"
fresh; sed -i 's/1 lb onion/1 lb salmon fillet/' recipes/stew.yaml; sed -i 's/^prices/walk: [produce]\nprices/' plans/stores/*.yaml
expect_strictly "no offer" "recipes/stew.yaml:4:5: warning: " "[P001]"
fresh; sed -i 's/date: 2027-03-01, stops/date: 2027-03-20, stops/' plans/p.yaml
expect_strictly "trips that come too late" "recipes/stew.yaml:4:5: warning: no trip brings 'onion' home in time for Tue 2 Mar" "[P002]" "first stop that sells it is Corner on Sat 20 Mar"
fresh; printf 'a: [1, 2' >recipes/stew.yaml
expect "a file that is not YAML" "recipes/stew.yaml:1:9: error: this is not YAML" "[T003]"
fresh; : >recipes/stew.yaml
expect "an empty file" "recipes/stew.yaml: error: recipes/stew.yaml is empty [T004]"
fresh; : >plans/p.yaml
expect "an empty plan" "plans/p.yaml is empty [T004]"
fresh; rm plans/p.yaml; mkdir plans/p.yaml
expect "a directory" "plans/p.yaml is not a file [T001]"
fresh; head -c 52428800 /dev/zero | tr '\0' 'a' >recipes/stew.yaml
expect "a file of 50 MB" "recipes/stew.yaml has 52428800 bytes" "[T002]"
fresh; head -c 52428800 /dev/zero | tr '\0' ' ' >plans/p.yaml
expect "a plan of 50 MB" "[T002]"
fresh; rm plans/p.yaml
expect "no plan" "there is no file plans/p.yaml [T001]"
fresh; head -c 4000 /dev/urandom >recipes/stew.yaml
expect "noise" "[T003]"
fresh; printf -- '- [%.0s' $(seq 3000) >recipes/stew.yaml
expect "deep nesting" "recipes/stew.yaml"
fresh; printf 'name: Sauce\nserves: 1\nmakes: 2 cups\ningredients: [2 tbsp peanut butter]\n' >recipes/sauce.yaml
echo "  - 1 cup sauce" >>recipes/stew.yaml
expect "a hidden allergen" "plans/p.yaml:5:24: error: Ada must not have peanut" "[R004]" "through '2 tbsp peanut butter'"
fresh; sed -i 's/onion/onoin/' recipes/stew.yaml; sed -i 's/burner/bruner: x, burner/' plans/household.yaml; echo "extras: []" >>plans/p.yaml
expect "several errors in one run" "[K001]" "[K005]" "plans/p.yaml:7:1: error: a plan has no key 'extras' [T006]" "3 errors"

# What was there before stays as it was.
fresh
"$program" build plans/p.yaml --out out >/dev/null 2>&1
before=$(cat out/* | cksum)
sed -i 's/onion/onoin/' recipes/stew.yaml
"$program" build plans/p.yaml --out out >/dev/null 2>&1
[ "$before" = "$(cat out/* | cksum)" ] || { echo "a failed build changed what was there"; bad=1; }
cd ..

# The command line.
code_of() {
  "$program" "$@" >/dev/null 2>&1
  echo $?
}
[ "$(code_of)" = 2 ] || { echo "no command: not 2"; bad=1; }
[ "$(code_of bake)" = 2 ] || { echo "an unknown command: not 2"; bad=1; }
[ "$(code_of build)" = 2 ] || { echo "build without a plan: not 2"; bad=1; }
[ "$(code_of --help)" = 0 ] || { echo "--help: not 0"; bad=1; }
for command in build check why food convert prices day prep keys schema; do
  [ "$(code_of $command --help)" = 0 ] || { echo "$command --help: not 0"; bad=1; }
done
[ "$(code_of food xyzzy)" = 1 ] || { echo "an unknown food: not 1"; bad=1; }
[ "$(code_of convert '2 cups onion, chopped' --to parsecs)" = 1 ] || { echo "an unknown measure: not 1"; bad=1; }
exit $bad
