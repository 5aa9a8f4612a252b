#!/usr/bin/env bash
# What a new house leaves over and which recipes use it, as a householder reads it; for one food, on a
# day, and where the library has mistakes or somebody must not have a food. Nothing is written.
set -u
program=$(realpath "$1")
here=$(dirname "$(realpath "$0")")
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
cd "$place"
. "$here/expect.sh"
# used_up CODE TEXT ARGUMENT...: of the new house.
used_up() {
  expect "$1" "$2" "$program" use-up home/plans/week.yaml "${@:3}"
}

"$program" new home >/dev/null
cat >home/recipes/carrot-cake.yaml <<'Y'
name: Carrot cake
serves: 8
ingredients: [3 carrots, 2 eggs, 1 lb walnuts, "1/2 cup raisins, optional", 1 tsp cinnamon]
Y
cp -r home before
"$program" use-up home/plans/week.yaml >said 2>/dev/null || wrong "exit $?"
diff -u "$here/use-up-expected.txt" said || wrong "what is left is told otherwise"
(cd home/recipes && "$program" use-up ../plans/week.yaml 2>/dev/null) | diff said - || wrong "from another folder"
diff -r before home || wrong "something was written"

used_up 0 'Carrot cake' --for carrots
used_up 1 'did you mean carrot' --for carot
used_up 1 "the plan leaves no 'ham'" --for ham
used_up 0 'on Tue 5 Jan' --date '5 jan'
used_up 1 "is not a day of the plan" --date 2027-03-01
used_up 1 "is not a day of the plan" --date never

sed -i 's/# avoids: .peanut./avoids: [walnut] #/' home/plans/household.yaml
used_up 0 '1 recipe is left out: somebody here must not have'
"$program" use-up home/plans/week.yaml 2>/dev/null | grep -q 'Carrot cake' && wrong "a cake with walnuts for who must not have them"
echo 'name: [' >home/recipes/carrot-cake.yaml
used_up 0 "1 recipe is left out: 'manciple check' shows"
exit $bad
