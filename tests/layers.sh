#!/usr/bin/env bash
# Data flows one way: a phase includes only phases to its left, and a solver, which knows nothing of
# kitchens, only itself. A solver is known to one phase, which tells the others what its answer means.
# A folder of the compiler that has no place in this order is refused.
set -euo pipefail
cd "${1:-$(dirname "$0")/../compiler}"
solvers=(buying scheduling)
order=(text measure foods kitchen resolve safety purchase history review nutrition prep use_up emit compare cli)
bad=0

# folder ALLOWED...: every include of the folder starts with one of these.
folder() {
  local place=$1
  shift
  while IFS=: read -r file line include; do
    from=${include#*\"} # no process for each: there are two thousand
    from=${from%%[/\"]*}
    case " $* " in
    *" $from "*) ;;
    *)
      echo "compiler/$file:$line: $place includes $from, which it must not know"
      bad=1
      ;;
    esac
  done < <(grep -rnE '^ *# *include +"' --include='*.?pp' "$place")
}

declare -A solver_of=([purchase]=buying [prep]=scheduling)
for solver in "${solvers[@]}"; do
  folder "solver/$solver" "$solver"
done
allowed=()
for phase in "${order[@]}"; do
  allowed+=("$phase")
  folder "$phase" "${allowed[@]}" ${solver_of[$phase]:-}
  # Nor by what a header of that phase brings with it.
  for solver in "${solvers[@]}"; do
    if [ "${solver_of[$phase]:-}" != "$solver" ] && grep -rnE "\\b$solver::" --include='*.?pp' "$phase"; then
      echo "compiler/$phase must not know the solver of $solver"
      bad=1
    fi
  done
done
for place in */ solver/*/; do
  case " solver ${order[*]} ${solvers[*]/#/solver/} " in
  *" ${place%/} "*) ;;
  *)
    echo "compiler/$place has no place in the order"
    bad=1
    ;;
  esac
done
exit $bad
