#!/usr/bin/env bash
# Asks the package source for known weaknesses in every package used, transitive ones included. Ends with 1 when there are
# any; where the source does not tell, it says so and ends with 0.
set -uo pipefail
cd "$(dirname "$0")/.."
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
said=$(dotnet list SecondShore.slnx package --vulnerable --include-transitive 2>&1); code=$?
echo "$said"
if grep -q "has the following vulnerable packages" <<<"$said"; then echo "There are packages with known weaknesses: raise their versions."; exit 1; fi
if [ $code -ne 0 ] || grep -qiE "NU1900|unable to load|vulnerability data" <<<"$said"; then
  echo "The package source does not tell of weaknesses: nothing is known either way."; exit 0
fi
echo "No package used has a known weakness."
