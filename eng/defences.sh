#!/usr/bin/env bash
# Takes the host's defences away one at a time and shows that the test named in docs/security.md fails for each.
# Each file of eng/defences removes one defence; it is called by the test that guards it, and by a word where a test guards several.
#   bash eng/defences.sh --fresh    only: every removal still fits the code, and every threat has one (seconds)
#   bash eng/defences.sh [NAME...]  all, or those whose name begins so: some ten seconds each, after the tests are built once
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

project_of() { # project_of TEST: the test project that holds it
  grep -rlE "(Task|void) $1\(" "$root/tests" --include=*.cs | head -n 1 | sed "s#^$root/##" | cut -d/ -f1,2
}

# Analysers would refuse some removals before any test could: here only the compiler and the test speak.
build() { (cd "$copy" && dotnet build "$@" -v q -p:RunAnalyzers=false -p:TreatWarningsAsErrors=false 2>&1); }

# Only the assembly that a removal touches is built anew, and laid over every copy of it.
lay() { # lay PROJECT: src/Store to wherever SecondShore.Store.dll lies
  local dll="SecondShore.$(basename "$1").dll" bin="$copy/artifacts/bin" place
  for place in "$bin"/*/debug/"$dll"; do [ "$place" -ef "$bin/SecondShore.$(basename "$1")/debug/$dll" ] || cp "$bin/SecondShore.$(basename "$1")/debug/$dll" "$place"; done
}

remove() { # remove PATCH: 0 when the test fails without the defence
  local name test project out part code ended tests
  name=$(basename "$1" .patch); test=${name%%.*}; project=$(project_of "$test"); tests=SecondShore.$(basename "$project")
  git -C "$copy" apply "$root/$1" || return 2
  for part in $(sed -n 's#^+++ b/\(src/[A-Za-z]*\)/.*#\1#p' "$1" | sort -u); do
    if ! out=$(build "$part" --no-restore --no-dependencies); then
      echo "$out" | grep -m 3 'error '; git -C "$copy" checkout -q .; build "$part" --no-restore --no-dependencies >/dev/null; return 2
    fi
    lay "$part"
  done
  out=$(cd "$copy/artifacts/bin/$tests/debug" && timeout 240 "./$tests" -method "*.$test" -noColor 2>&1)
  ended=$?
  # A test that waits for ever without the defence shows it as well as one that fails.
  code=1; { [ "$ended" = 124 ] || grep -qE 'Failed: [1-9]|Errors: [1-9]' <<<"$out"; } && code=0
  git -C "$copy" checkout -q .
  for part in $(sed -n 's#^+++ b/\(src/[A-Za-z]*\)/.*#\1#p' "$1" | sort -u); do build "$part" --no-restore --no-dependencies >/dev/null; lay "$part"; done
  return $code
}

fresh || exit 1
[ "${1:-}" = --fresh ] && exit 0
copy=$(mktemp -d)
trap 'git worktree remove --force "$copy" 2>/dev/null; rm -rf "$copy"' EXIT
git worktree add -q --detach "$copy" HEAD || exit 1
for project in $(for patch in eng/defences/*.patch; do name=$(basename "$patch" .patch); project_of "${name%%.*}"; done | sort -u); do
  build "$project" >/dev/null || { echo "$project does not build."; exit 1; }
done
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
