#!/usr/bin/env bash
# Data flows one way: a phase includes only phases to its left.
set -euo pipefail
cd "$(dirname "$0")/../compiler"
order=(text measure foods kitchen resolve purchase prep emit cli)
allowed=
bad=0
for phase in "${order[@]}"; do
  allowed="$allowed $phase"
  while IFS=: read -r file line include; do
    from=$(sed 's/.*"\([a-z]*\)\/.*/\1/' <<<"$include")
    case " $allowed " in
    *" $from "*) ;;
    *)
      echo "compiler/$file:$line: $phase includes $from, which stands right of it"
      bad=1
      ;;
    esac
  done < <(grep -rn '#include "' "$phase" | grep -v '\.yaml:')
done
exit $bad
