#!/usr/bin/env bash
# What changed between results, plans and revisions of git, as a householder asks for it: a dinner of
# a new house is changed. The working files are not touched, whatever is called a revision is never
# an option or a command, and what cannot be compared ends with exit 1 and a word about it.
set -u
program=$(realpath "$1")
here=$(dirname "$(realpath "$0")")
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
cd "$place"
export GIT_CONFIG_GLOBAL=/dev/null GIT_AUTHOR_NAME=Ada GIT_AUTHOR_EMAIL=ada@example.org \
  GIT_COMMITTER_NAME=Ada GIT_COMMITTER_EMAIL=ada@example.org

. "$here/expect.sh"

"$program" new home >/dev/null
"$program" build home/plans/week.yaml >first 2>/dev/null
grep -q 'last build' first && wrong "a first build speaks of one before it"
"$program" build home/plans/week.yaml 2>/dev/null | grep -q '^Nothing changed since the last build' || wrong "the same build twice"
cp -r home/out/week before
(cd home && git init -q . && git add plans recipes && git commit -qm first)
sed -i '0,/dinner: [a-z].*}/s//dinner: pancakes}/' home/plans/week.yaml
cp -r home/plans plans-now

# What is said, the same by every way.
"$program" compare before home/plans/week.yaml >by-plan
diff -u "$here/compare-expected.txt" by-plan || wrong "what changed is told otherwise"
(cd home && "$program" compare HEAD --plan plans/week.yaml) | diff by-plan - || wrong "a revision against the working files"
(cd home/plans && "$program" compare HEAD --plan week.yaml) | diff by-plan - || wrong "from within plans"
(cd home && GIT_DIR=$place/nowhere GIT_INDEX_FILE=x "$program" compare HEAD --plan ./plans/week.yaml) | diff by-plan - || wrong "as a hook of git"
(cd home && git commit -qam second)
"$program" compare HEAD~1 HEAD --plan home/plans/week.yaml | diff by-plan - || wrong "two revisions, from outside"
"$program" compare --plan home/plans/week.yaml -- HEAD^{/first} HEAD | diff by-plan - || wrong "a revision by its message"
"$program" build home/plans/week.yaml 2>/dev/null | sed -n '/^Changed since/,$p' >ended
[ "$(wc -l <ended)" -le 7 ] && grep -q 'dinner: Pancakes instead' ended || wrong "the end of a build: $(cat ended)"
"$program" compare before home/out/week | diff by-plan - || wrong "two folders"
"$program" compare before/result.json home/out/week/result.json | diff by-plan - || wrong "two results"

# A house deep in a repository.
mkdir -p deep && cp -r home deep/house && rm -rf deep/house/.git deep/house/out
(cd deep && git init -q && git add . && git commit -qm first)
sed -i 's/pancakes}/lentil soup}/' deep/house/plans/week.yaml
(cd deep && "$program" compare HEAD --plan house/plans/week.yaml) >deep-said || wrong "a house deep in a repository"
(cd deep/house/recipes && "$program" compare HEAD --plan ../plans/week.yaml) | diff deep-said - || wrong "from deep in a repository"
grep -q 'instead of Pancakes' deep-said || wrong "deep in a repository is said: $(cat deep-said)"

# The exit code.
expect 0 'dinner' "$program" compare before home/out/week
expect 1 'dinner' "$program" compare before home/out/week --exit-code
expect 0 'Nothing changed' "$program" compare before before --exit-code

# The tree is as it was.
[ -z "$(cd home && git status --porcelain --untracked-files=no)" ] || wrong "working files were changed"
diff -r plans-now home/plans || wrong "plans were changed"

# What cannot be compared.
mkdir odd
echo '{"plan": "x", "purchases": []}' >odd/result.json
echo 'words' >words.txt
expect 1 'was written by another version' "$program" compare before odd
expect 1 'is not the result of a build' "$program" compare words.txt before
expect 1 'result.json does not exist' "$program" compare before home/recipes
expect 1 '--plan' "$program" compare HEAD~1 HEAD
expect 2 'name two results' "$program" compare before
expect 1 'there is no home/plans/none.yaml in revision' "$program" compare HEAD --plan home/plans/none.yaml
expect 1 'not a git repository' "$program" compare HEAD --plan before/plans/week.yaml
for odd in -x --output=gone '--upload-pack=touch gone' 'HEAD; touch gone' '$(touch gone)' $'a\nb' $'\x1b[2J\xff' 'HEAD:plans' 'HEAD..HEAD' ':0:plans/week.yaml' '@{99}'; do
  expect 1 'git knows no revision' "$program" compare --plan home/plans/week.yaml -- "$odd" HEAD
  expect 1 'git knows no revision' "$program" compare --plan home/plans/week.yaml -- HEAD "$odd"
done
[ ! -e gone ] && [ ! -e home/gone ] || wrong "a revision was run"
(cd home && echo 'meals: [' >plans/week.yaml && git commit -qam broken && git checkout -q HEAD~1 -- plans)
expect 1 "of revision 'HEAD' does not compile" "$program" compare HEAD --plan home/plans/week.yaml
expect 1 'plans/week.yaml:2:' "$program" compare HEAD --plan home/plans/week.yaml
expect 1 'git cannot be run' env PATH=/nowhere "$program" compare HEAD --plan home/plans/week.yaml
exit $bad
