#!/usr/bin/env bash
# What a new house leaves over and which recipes use it, as a householder reads it; for one food, on a
# day, and where the library has mistakes or somebody must not have a food. Nothing is written.
set -u
program=$(realpath "$1")
here=$(dirname "$(realpath "$0")")
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
cd "$place"
bad=0
wrong() {
  echo "$1"
  bad=1
}
# expect CODE TEXT ARGUMENT...: how it ends, and what it says among other things.
expect() {
  local code=$1 text=$2 said
  shift 2
  said=$(timeout 60 "$program" use-up home/plans/week.yaml "$@" 2>&1)
  local ended=$?
  [ $ended -eq "$code" ] || wrong "use-up $*: exit $ended instead of $code"
  grep -qF -- "$text" <<<"$said" || wrong "use-up $*: does not say '$text' but: $said"
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

expect 0 'Carrot cake' --for carrots
expect 1 'did you mean carrot' --for carot
expect 1 "the plan leaves no 'ham'" --for ham
expect 0 'on Tue 5 Jan' --date '5 jan'
expect 1 "is not a day of the plan" --date 2027-03-01
expect 1 "is not a day of the plan" --date never

sed -i 's/# avoids: .peanut./avoids: [walnut] #/' home/plans/household.yaml
expect 0 '1 recipe is left out: somebody here must not have'
"$program" use-up home/plans/week.yaml 2>/dev/null | grep -q 'Carrot cake' && wrong "a cake with walnuts for who must not have them"
echo 'name: [' >home/recipes/carrot-cake.yaml
expect 0 "1 recipe is left out: 'manciple check' shows"
exit $bad
