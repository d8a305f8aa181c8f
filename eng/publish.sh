#!/usr/bin/env bash
# Publishes the release: self-contained single files of host and command line, and the app as a static site.
#   bash eng/publish.sh OUT [linux-x64 win-x64 osx-arm64 ...]      ONLY=Host leaves out the command line and the static site
# The version is the nearest tag (v1.2.3); N commits after it 1.2.4-after.N, which sorts between the two; without a tag, that of
# Directory.Build.props. The same commit gives the same bytes, in whatever folder it is built: paths are mapped, archives are sorted and stamped with the
# commit's time.
set -euo pipefail
cd "$(dirname "$0")/.."
out=$(realpath -m "${1:?where to: bash eng/publish.sh OUT [platform...]}"); shift
platforms=("$@"); [ ${#platforms[@]} -gt 0 ] || platforms=(linux-x64 linux-arm64 win-x64 osx-arm64)
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 TZ=UTC LC_ALL=C
stamp=$(git log -1 --format=%ct 2>/dev/null || echo 946684800)

version_properties() {
  local tag
  tag=$(git describe --tags --match 'v[0-9]*' --long 2>/dev/null) || return 0
  local base=${tag%-*-*} rest=${tag#"${tag%-*-*}"-}
  local since=${rest%%-*}
  local version=${base#v}
  if [ "$since" = 0 ]; then echo "-p:Version=$version"; else echo "-p:Version=${version%.*}.$((${version##*.} + 1))-after.$since"; fi
}

pack() { # pack FOLDER ARCHIVE: the same files give the same archive
  (cd "$1" && find . -type f -print0 | sort -z | tar --null --no-recursion --mtime="@$stamp" --owner=0 --group=0 --numeric-owner --mode='u+rwX,go+rX,go-w' -cf - -T - | gzip -n -9 > "$2")
}

common=(-c Release -v q -nologo -p:ContinuousIntegrationBuild=true -p:DeterministicSourcePaths=true "-p:PathMap=$PWD=/src" -p:DebugType=none -p:SatelliteResourceLanguages=en)
mapfile -t version < <(version_properties)
rm -rf "$out"; mkdir -p "$out"
for platform in "${platforms[@]}"; do
  for project in ${ONLY:-Host Cli}; do
    dotnet publish "src/$project" "${common[@]}" "${version[@]}" -p:PublishProfile=single-file -r "$platform" -o "$out/work/$platform"
  done
  pack "$out/work/$platform" "$out/second-shore-$platform.tar.gz"
done
if [ -z "${ONLY:-}" ]; then
  dotnet publish src/App "${common[@]}" "${version[@]}" -o "$out/work/site"
  pack "$out/work/site/wwwroot" "$out/second-shore-site.tar.gz"
fi
rm -rf "$out/work"
(cd "$out" && sha256sum -- *.tar.gz | tee SHA256SUMS)
