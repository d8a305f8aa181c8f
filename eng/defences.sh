#!/usr/bin/env bash
# Takes the host's defences away one at a time and shows that the test named in docs/security.md fails for each.
# Each file of eng/defences removes one defence; it is called by the test that guards it, and by a word where a test guards several.
#   bash eng/defences.sh --fresh    only: every removal still fits the code, and every threat has one (seconds)
#   bash eng/defences.sh [NAME...]  all, or those whose name begins so: about half a minute each
# Works on a copy of the last commit. Ends with "N caught, N missed".
set -uo pipefail
cd "$(dirname "$0")/.."
root=$PWD
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1

fresh() {
  local bad=0 test patch
  for patch in eng/defences/*.patch; do
    git apply --check "$patch" || { echo "$patch no longer fits the code: write it anew."; bad=1; }
  done
  for test in $(sed -n 's/^| .* | \([A-Za-z_]*\) |$/\1/p' docs/security.md | grep -v '^test$'); do
    compgen -G "eng/defences/$test*.patch" >/dev/null || { echo "docs/security.md: nothing in eng/defences removes what $test guards."; bad=1; }
  done
  return $bad
}

remove() { # remove PATCH: 0 when the test fails without the defence
  local name test project out
  name=$(basename "$1" .patch); test=${name%%.*}
  project=$(grep -rlE "(Task|void) $test\(" tests --include=*.cs | head -n 1 | cut -d/ -f1,2)
  git -C "$copy" apply "$root/$1" || return 2
  # Analysers would refuse some removals before any test could: here only the compiler and the test speak.
  if ! out=$(cd "$copy" && dotnet build "$project" -v q -p:RunAnalyzers=false -p:TreatWarningsAsErrors=false 2>&1); then
    echo "$out" | grep -m 3 'error '; git -C "$copy" checkout -q .; return 2
  fi
  (cd "$copy" && timeout 240 dotnet test "$project" --no-build --filter "FullyQualifiedName~.$test" --logger "trx;LogFileName=removed.trx" --results-directory "$copy/removed" >/dev/null 2>&1)
  git -C "$copy" checkout -q .
  grep -q '<Counters [^>]* failed="[1-9]' "$copy/removed/removed.trx" 2>/dev/null
  local code=$?
  rm -rf "$copy/removed"
  return $code
}

fresh || exit 1
[ "${1:-}" = --fresh ] && exit 0
copy=$(mktemp -d)
trap 'git worktree remove --force "$copy" 2>/dev/null; rm -rf "$copy"' EXIT
git worktree add -q --detach "$copy" HEAD || exit 1
caught=0; missed=0
for patch in eng/defences/*.patch; do
  name=$(basename "$patch" .patch)
  wanted=$([ $# = 0 ] && echo yes)
  for prefix in "$@"; do [[ $name == "$prefix"* ]] && wanted=yes; done
  [ -n "$wanted" ] || continue
  if remove "$patch"; then caught=$((caught + 1)); echo "caught  $name"; else missed=$((missed + 1)); echo "MISSED  $name"; fi
done
echo "$caught caught, $missed missed"
[ "$missed" = 0 ]
