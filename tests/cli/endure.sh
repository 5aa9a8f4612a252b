#!/usr/bin/env bash
# Whatever the files say, the program ends by itself with exit 0 or 1 and a word about it, never with
# 70, a signal or megabytes of output.
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
appliances: {burner: 4, oven: 0}
Y
  cat >plans/stores/corner.yaml <<'Y'
shop: Corner
prices: {onion: 1.00/lb, salt: 1 lb box 1.00}
Y
  printf 'name: Stew\nserves: 2\nmake ahead: yes\nkeeps: {fridge: 9 days}\ningredients: [1 lb onion]\n' >recipes/stew.yaml
  cat >plans/p.yaml <<'Y'
plan: P
from: 2027-03-01
until: 2027-03-31
meals:
  2027-03-05: {dinner: stew}
trips: [{date: 2027-03-01, stops: [corner]}]
prep: [{date: 2027-03-03, from: "14:00", until: "17:00"}]
Y
}

# endures WHAT CODE [TEXT...]: the build ends with that code and says each text.
endures() {
  local what=$1 code=$2 said got
  shift 2
  said=$(timeout 60 "$program" build plans/p.yaml --out out 2>&1)
  got=$?
  [ $got -eq "$code" ] || { echo "$what: exit $got instead of $code"; head -5 <<<"$said"; bad=1; }
  [ ! -d out ] || [ "$(du -sk out | cut -f1)" -lt 2000 ] || { echo "$what: $(du -sh out)"; bad=1; }
  [ ! -d out ] || [ "$code" -eq 0 ] || { echo "$what: something was written"; bad=1; }
  for text in "$@"; do
    grep -qF -- "$text" <<<"$said" || { echo "$what: does not say '$text' but:"; head -5 <<<"$said"; bad=1; }
  done
  cd "$place"
}

# chain COUNT MAKES TAKES: recipes that need each other in a row.
chain() {
  local i
  for i in $(seq "$1"); do
    printf 'name: R%s\nserves: 1\nmakes: %s\nkeeps: {fridge: 9 days}\nmake ahead: yes\ningredients: [%s r%s, 1 tsp salt]\n' \
      "$i" "$2" "$3" $((i + 1)) >"recipes/r$i.yaml"
  done
  printf 'name: Last\nserves: 1\nmakes: 1 cup\ningredients: [1 lb onion]\n' >"recipes/r$(($1 + 1)).yaml"
  sed -i 's/dinner: stew/dinner: r1/' plans/p.yaml
}

fresh; sed -i 's|1.00/lb|0 lb bag 2.00|' plans/stores/corner.yaml
endures "a pack of nothing" 1 "corner.yaml:2:17: error: a pack must hold something [K010]"
fresh; echo "cash back: 101 %" >>plans/stores/corner.yaml
endures "more cash back than is paid" 1 "corner.yaml:3:12: error: '101 %' is not a share" "[K005]"
fresh; echo "cash back: 100 %" >>plans/stores/corner.yaml
endures "as much cash back as is paid" 0
fresh; echo 'method: [{do: Roast, on: oven}]' >>recipes/stew.yaml
endures "an oven of which there is none" 1 "recipes/stew.yaml:6:15: error: this step needs the appliance 'oven'" "plans/p.yaml:5:24: for Fri 5 Mar dinner"
for serves in 0.000000001 1/999999999 999999999; do
  fresh; sed -i "s|serves: 2|serves: $serves|" recipes/stew.yaml
  endures "serves $serves" 1 "recipes/stew.yaml:2:9: error: 'serves' must be between" "[K005]"
done
for length in 30 64 70 200; do
  fresh; chain $length "1 cup" "2 cups"
  endures "doubling $length times" 1 "[P010]"
  fresh; chain $length "2 cups" "1 cup"
  endures "halving $length times" 0
done
for folder in plans/stores recipes; do
  fresh; rm -r "$folder"; ln -s "$(basename $folder)" "$folder"
  endures "$folder that cannot be read" 1 "error: $folder cannot be read" "[T001]"
done
fresh; rm -r plans/stores; echo x >plans/stores
endures "a file for a folder" 1 "error: plans/stores cannot be read"
for made in "ln -s on-hand.yaml" "ln -s /dev/zero" "mkfifo" "mkdir"; do
  fresh; $made plans/on-hand.yaml
  endures "on-hand.yaml made by $made" 1 "plans/on-hand.yaml" "[T001]"
done
fresh; echo 'method: [{do: x, hands on: 999999 h}]' >>recipes/stew.yaml
endures "a step of a hundred years" 1 "is not a time" "[K005]"
fresh; echo 'method: [{do: x, hands on: 60 days, then: 60 days}]' >>recipes/stew.yaml
endures "a step of four months" 0
fresh; printf 'onion: {keeps: {pantry: [90000 years, x]}}\n' >recipes/foods.yaml
endures "a food that keeps 90,000 years" 1 "'90000 years' is not a keeping time"
fresh; printf 'date: 2027-02-28\non hand: ["5 lb onion, use by 9999-12-31"]\n' >plans/on-hand.yaml
endures "good for ever" 0
fresh; sed -i 's/2027-03/9999-12/g' plans/p.yaml
endures "the last month that can be written" 0
fresh; sed -i 's/2027-03/0000-03/g' plans/p.yaml
endures "the year 0" 0
fresh; sed -i 's/burner: 4/burner: 1000000/' plans/household.yaml; sed -i 's/"17:00"/"17:00", cooks: 1000000/' plans/p.yaml
endures "a million burners and cooks" 0
fresh; echo 'guests: [{who: Cy, count: 1000000, portion: 999999999, from: 2027-03-05}]' >>plans/p.yaml
endures "many guests" 1 "[P010]"
fresh; sed -i 's|1.00/lb|1/999999999 lb bag 1.00|' plans/stores/corner.yaml
endures "a bag of a speck" 1 "[P010]"
fresh; sed -i 's/^people.*/people: []/' plans/household.yaml
endures "a house without people" 0 "as many people as its recipe serves"

# What cannot be said is an error, on a full disk and on a stream that is closed.
"$program" food onion >/dev/full 2>said && { echo "a full disk: exit 0"; bad=1; }
grep -q "not everything could be written: No space left" said || { echo "a full disk: does not say so"; bad=1; }
"$program" food onion >&- 2>said && { echo "a closed stream: exit 0"; bad=1; }
"$program" --help >/dev/full 2>said && { echo "help on a full disk: exit 0"; bad=1; }
# Nobody reads any more once `wait` returns.
exec 9> >(exit 0); wait $!
(trap '' PIPE; exec "$program" keys >&9 2>said); code=$?
exec 9>&-
[ $code = 1 ] || { echo "a closed pipe: exit $code instead of 1"; bad=1; }
for name in "" "$(printf 'x%.0s' $(seq 5000))" /dev/zero; do
  timeout 10 "$program" build "$name" >said 2>&1
  [ $? -eq 1 ] || { echo "the plan '${name:0:20}': not exit 1"; bad=1; }
done

# Where the folder would have no name, or would hold the plan, nothing is written.
fresh; cp plans/p.yaml plans/...yaml
"$program" build plans/...yaml >../said 2>&1 && { echo "...yaml: exit 0"; bad=1; }
[ "$(ls -A)" = "$(printf 'plans\nrecipes')" ] || { echo "...yaml wrote something: $(ls -A)"; bad=1; }
for out in . plans ./plans/stores/..; do
  "$program" build plans/p.yaml --out "$out" >../said 2>&1 && { echo "--out $out: exit 0"; bad=1; }
done

# From any folder.
for from in . plans plans/stores recipes; do
  (cd $from && "$program" build "$(realpath --relative-to=. "$place/house/plans/p.yaml")") >../said 2>&1 ||
    { echo "from $from: does not build"; cat ../said; bad=1; }
  [ -e out/p/list.txt ] || { echo "from $from: out/p is not beside plans"; bad=1; }
  (cd $from && "$program" check) >../said 2>&1 || { echo "from $from: does not check"; cat ../said; bad=1; }
  rm -rf out
done
(cd plans/stores && "$program" check corner.yaml ../household.yaml ../../recipes/stew.yaml) >../said 2>&1 ||
  { echo "files are not checked from plans/stores"; cat ../said; bad=1; }
exit $bad
