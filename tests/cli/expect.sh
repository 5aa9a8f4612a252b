# Sourced by the scripts that ask commands as a householder does; `bad` is 1 once something is wrong.
bad=0
wrong() {
  echo "$1"
  bad=1
}
# expect CODE TEXT COMMAND...: how it ends, and what it says among other things.
expect() {
  local code=$1 text=$2 said
  shift 2
  said=$(timeout 60 "$@" 2>&1)
  local ended=$?
  [ $ended -eq "$code" ] || wrong "$*: exit $ended instead of $code"
  grep -qF -- "$text" <<<"$said" || wrong "$*: does not say '$text' but: $said"
}
