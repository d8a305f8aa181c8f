#!/usr/bin/env bash
# Publishes one platform twice from two fresh clones in different folders and compares every byte.
#   bash eng/reproduce.sh [linux-x64]
set -euo pipefail
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for copy in one "another/deeper"; do
  git clone -q . "$work/$copy"
  (cd "$work/$copy" && bash eng/publish.sh "$work/out-${copy%%/*}" "${1:-linux-x64}")
done
diff "$work/out-one/SHA256SUMS" "$work/out-another/SHA256SUMS" && echo "Both builds are the same, byte for byte."
