#!/usr/bin/env bash
# The one script that builds, checks and tests, for people and for machines alike: bash eng/check.sh
# Prints the run of each step and ends with a plain line "N passed, N failed[, N skipped]" from the real results.
set -uo pipefail
cd "$(dirname "$0")/.."
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 MSBUILDDISABLENODEREUSE=1
results=artifacts/test-results
rm -rf "$results"; mkdir -p "$results"
passed=0; failed=0; skipped=0

step() { # step NAME COMMAND...: runs a check that counts as one test
  local name=$1; shift
  echo "== $name"
  if "$@"; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED: $name"; fi
}

install_browser() { # the browser tests drive Debian's Chromium
  command -v chromium >/dev/null 2>&1 && return 0
  [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1 || return 0
  apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq chromium >/dev/null
}

install_postgres() { # the store's tests run on PostgreSQL as well, a server of their own
  ls /usr/lib/postgresql/*/bin/initdb >/dev/null 2>&1 && return 0
  [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1 || return 0
  apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq postgresql >/dev/null
}

count_trx() { # adds the counters of every result file
  local line
  for file in "$results"/*.trx; do
    [ -e "$file" ] || continue
    line=$(grep -o '<Counters [^>]*' "$file" | head -n 1)
    passed=$((passed + $(sed -n 's/.* passed="\([0-9]*\)".*/\1/p' <<<"$line")))
    failed=$((failed + $(sed -n 's/.* failed="\([0-9]*\)".*/\1/p' <<<"$line")))
    skipped=$((skipped + $(sed -n 's/.* notExecuted="\([0-9]*\)".*/\1/p' <<<"$line")))
  done
}

smoke() { # the README's main command, on the demo lake
  local out; out=$(mktemp -d)
  dotnet run --project src/Cli -c Release --no-build -- demo "$out/ketterfold" \
    && dotnet run --project src/Cli -c Release --no-build -- day "$out/ketterfold" --out "$out/plan" \
    && ls -l "$out/plan" && [ "$(find "$out/plan" -name '*.gpx' | wc -l)" -ge 1 ]
  local code=$?
  rm -rf "$out"
  return $code
}

[ "${CI:-}" = true ] && { install_browser; install_postgres; export SECONDSHORE_NEED_BROWSER=1 SECONDSHORE_NEED_POSTGRES=1; }

echo "== restore and build"
# Everything in Debug, where the analysers run; in Release what the smoke run needs.
if ! dotnet build SecondShore.slnx -c Debug -v q || ! dotnet build src/Cli -c Release -v q; then
  echo "FAILED: build"; echo "0 passed, 1 failed"; exit 1
fi
# Style and analysers are held by the build itself, where warnings are errors.
step "format" dotnet format whitespace SecondShore.slnx --verify-no-changes --no-restore
step "defences: each removal fits the code" bash eng/defences.sh --fresh
step "smoke: the README's main command" smoke
for project in tests/*.Tests; do
  name=$(basename "$project")
  echo "== $name"
  dotnet test "$project" -c Debug --no-build --logger "trx;LogFileName=$name.trx" --results-directory "$results" \
    || { [ -e "$results/$name.trx" ] || failed=$((failed + 1)); }
done
count_trx
echo
if [ "$skipped" -gt 0 ]; then echo "$passed passed, $failed failed, $skipped skipped"; else echo "$passed passed, $failed failed"; fi
[ "$failed" = 0 ]
