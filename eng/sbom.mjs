// CycloneDX from NuGet's project.assets.json and npm's package-lock.json: node sbom.mjs OUT LOCK ASSETS...
import { readFile, writeFile } from "node:fs/promises";

const [out, lock, runtimes, ...assets] = process.argv.slice(2);
const components = new Map();
const add = (component) => components.set(component.purl, component);

for (const file of assets) {
  const json = JSON.parse(await readFile(file, "utf8"));
  // What only helps to build ends up in no release.
  const used = new Set(Object.values(json.targets).flatMap((target) => Object.entries(target)
    .filter(([, part]) => ["runtime", "runtimeTargets", "native"].some((kind) => Object.keys(part[kind] ?? {}).some((path) => !path.endsWith("_._"))))
    .map(([key]) => key)));
  for (const [key, library] of Object.entries(json.libraries)) {
    if (library.type !== "package" || !used.has(key)) continue;
    const [name, version] = key.split("/");
    add({
      type: "library", "bom-ref": `pkg:nuget/${name}@${version}`, name, version, purl: `pkg:nuget/${name}@${version}`,
      hashes: library.sha512 ? [{ alg: "SHA-512", content: Buffer.from(library.sha512, "base64").toString("hex") }] : [],
    });
  }
}

// The runtime that a self-contained release carries.
for (const line of runtimes.split("\n").filter(Boolean)) {
  const [name, version] = line.split(" ");
  add({ type: "framework", "bom-ref": `pkg:generic/${name}@${version}`, name, version, purl: `pkg:generic/${name}@${version}`, hashes: [] });
}

const npm = JSON.parse(await readFile(lock, "utf8"));
for (const [path, entry] of Object.entries(npm.packages ?? {})) {
  if (!path || entry.dev || entry.link) continue;
  const name = path.slice(path.lastIndexOf("node_modules/") + "node_modules/".length);
  const purl = `pkg:npm/${name.replace("@", "%40")}@${entry.version}`;
  const [algorithm, digest] = (entry.integrity ?? "").split("-");
  add({
    type: "library", "bom-ref": purl, name, version: entry.version, purl,
    hashes: algorithm === "sha512" ? [{ alg: "SHA-512", content: Buffer.from(digest, "base64").toString("hex") }] : [],
    ...(entry.license ? { licenses: [{ expression: entry.license }] } : {}),
  });
}

const sorted = [...components.values()].sort((a, b) => (a.purl < b.purl ? -1 : 1));
if (sorted.length === 0) throw new Error("No package was found; restore the projects first.");
await writeFile(out, JSON.stringify({
  bomFormat: "CycloneDX", specVersion: "1.6", version: 1,
  metadata: { component: { type: "application", name: "second-shore" } },
  components: sorted,
}, null, 2) + "\n");
console.log(`${sorted.length} packages are listed in ${out}.`);
