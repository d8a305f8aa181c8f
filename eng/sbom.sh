#!/usr/bin/env bash
# Writes a bill of materials (CycloneDX 1.6 JSON) of what host, command line and app really use, from the restored projects.
#   bash eng/sbom.sh OUT.json
set -euo pipefail
cd "$(dirname "$0")/.."
out=$(realpath -m "${1:?where to: bash eng/sbom.sh OUT.json}")
files=()
for project in Host Cli App; do
  file=artifacts/obj/SecondShore.$project/project.assets.json
  [ -e "$file" ] || { echo "$file is missing: build the solution first." >&2; exit 1; }
  files+=("$file")
done
mkdir -p "$(dirname "$out")"
runtimes=$(dotnet --list-runtimes | awk '$1 ~ /^Microsoft\.(NETCore|AspNetCore)\.App$/ && $2 ~ /^10\./ { latest[$1] = $2 } END { for (name in latest) print name, latest[name] }')
[ -n "$runtimes" ] || { echo "dotnet lists no runtime of version 10; install it." >&2; exit 1; }
node eng/sbom.mjs "$out" src/App/map/package-lock.json "$runtimes" "${files[@]}"
