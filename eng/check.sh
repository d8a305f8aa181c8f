#!/usr/bin/env bash
# The one script that builds, checks and tests, for people and for machines alike.
#   bash eng/check.sh          builds, runs the README's two commands, then the long checks (minutes each)
#   bash eng/check.sh --long   also runs every random test from a fresh seed, which it prints, and ten times as long
# Fetches Chromium and PostgreSQL where it may (root on Debian); where it may not, the tests that need them skip and say so.
# Ends with a plain line "N passed, N failed[, N skipped]" from the real results.
set -uo pipefail
cd "$(dirname "$0")/.."
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 MSBUILDDISABLENODEREUSE=1
unset SECONDSHORE_LONG SECONDSHORE_FRESH
results=$PWD/artifacts/test-results
rm -rf "$results"; mkdir -p "$results"
passed=0; failed=0; skipped=0
case "${1:-}" in
  "") ;;
  --long) SECONDSHORE_FRESH=${SECONDSHORE_SEED:-$(od -An -N8 -tx8 /dev/urandom | tr -d ' ')} ;;
  *) echo "check.sh knows --long, and not '$1': run it as bash eng/check.sh [--long]."; exit 2 ;;
esac

step() { # step NAME COMMAND...: runs a check that counts as one test
  local name=$1; shift
  echo "== $name"
  if "$@"; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED: $name"; fi
}

install() { # install PACKAGE: for those who may
  [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1 || return 0
  echo "== installing $1"
  apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq "$1" >/dev/null
}

have_browser() { [ -n "${SECONDSHORE_CHROMIUM:-}" ] || command -v chromium >/dev/null 2>&1; }
have_postgres() { [ -n "${SECONDSHORE_POSTGRES_BIN:-}" ] || ls /usr/lib/postgresql/*/bin/initdb >/dev/null 2>&1; }

counter() { sed -n "s/.* $1=\"\([0-9]*\)\".*/\1/p" <<<"$2"; }

count_trx() { # count_trx FOLDER: adds the counters of every result file; what was not executed was skipped
  local line file
  while IFS= read -r file; do
    line=$(grep -o '<Counters [^>]*' "$file" | head -n 1)
    passed=$((passed + $(counter passed "$line")))
    failed=$((failed + $(counter failed "$line") + $(counter error "$line") + $(counter aborted "$line")))
    skipped=$((skipped + $(counter total "$line") - $(counter executed "$line")))
  done < <(find "$1" -name '*.trx' 2>/dev/null)
}

say_failures() { # say_failures FOLDER: what each failed test said, so that the last page printed is enough to begin with
  find "$1" -name '*.trx' -exec awk '
    BEGIN { RS = "<UnitTestResult " }
    /^[^>]*outcome="Failed"/ {
      name = $0; sub(/.*testName="/, "", name); sub(/".*/, "", name)
      said = $0; if (!sub(/.*<Message>/, "", said)) said = "(said nothing)"; sub(/<\/Message>.*/, "", said)
      print "FAILED: " name "\n  " substr(said, 1, 1500)
    }' {} \;
}

tests() { # tests NAME ARGS...: one run of dotnet test, counted; a run that fails without a failed test counts as one
  local name=$1 before=$failed start=$SECONDS; shift
  echo "== $name"
  SECONDSHORE_RESULTS=$results/$name dotnet test "$@" --nologo -v q
  local code=$?
  count_trx "$results/$name"
  say_failures "$results/$name"
  if [ $code -ne 0 ] && [ "$failed" = "$before" ]; then failed=$((failed + 1)); echo "FAILED: $name"; fi
  echo "== $name took $((SECONDS - start)) s"
}

smoke() { # the README's first command, on the demo lake
  local out; out=$(mktemp -d)
  (cd "$out" && dotnet run -c Release --project "$OLDPWD/src/Cli" -- demo ketterfold --plan) \
    && ls -l "$out/ketterfold/plan" && [ "$(find "$out/ketterfold/plan" -name '*.gpx' | wc -l)" -ge 1 ]
  local code=$?
  rm -rf "$out"
  return $code
}

have_browser || install chromium
have_postgres || install postgresql
# What is here must run; a machine of builders must have both.
if have_browser || [ "${CI:-}" = true ]; then export SECONDSHORE_NEED_BROWSER=1; fi
if have_postgres || [ "${CI:-}" = true ]; then export SECONDSHORE_NEED_POSTGRES=1; fi
if [ -n "${SECONDSHORE_FRESH:-}" ]; then
  export SECONDSHORE_FRESH
  echo "== fresh seed; SECONDSHORE_SEED=$SECONDSHORE_FRESH bash eng/check.sh --long draws the same cases again"
fi

echo "== build"
# Analysers and style run in a Debug build, where their warnings are errors. bench is no part of what dotnet test builds.
if ! dotnet build SecondShore.slnx -c Debug -v q --nologo || ! dotnet build bench -c Debug -v q --nologo; then
  echo "FAILED: build"; echo "0 passed, 1 failed"; exit 1
fi
rules_in_release() { # a plain Release build leaves the rules out, and some projects are built in Release alone
  local project
  for project in src/Cli src/App/FirstAnswers bench/InBrowser; do dotnet build "$project" -c Release -p:RunAnalyzers=true -v q --nologo || return 1; done
}
step "rules in Release" rules_in_release
step "format" dotnet format whitespace SecondShore.slnx --verify-no-changes --no-restore
step "defences: each removal fits the code" bash eng/defences.sh --fresh
step "smoke: the README's first command" smoke
tests quick
SECONDSHORE_LONG=1 tests long --no-build --filter "Check=Long|Check=Longer"
echo
if [ "$skipped" -gt 0 ]; then echo "$passed passed, $failed failed, $skipped skipped"; else echo "$passed passed, $failed failed"; fi
[ "$failed" = 0 ]
