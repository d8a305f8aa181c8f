// Bundles the app's TypeScript for the browser. Called by the .NET build: node build.mjs Debug|Release
import { build } from "esbuild";
import { copyFile, mkdir, rm } from "node:fs/promises";

const release = process.argv[2] !== "Debug";
const www = new URL("../wwwroot/", import.meta.url).pathname;

for (const folder of ["js", "css"]) await rm(www + folder, { recursive: true, force: true });
const common = {
  bundle: true,
  minify: release,
  sourcemap: release ? false : "linked",
  target: "es2022",
  legalComments: release ? "linked" : "none",
  logLevel: "warning",
};
await build({
  ...common,
  entryPoints: { app: "src/app.ts", worker: "src/worker/worker.ts" },
  outdir: `${www}js`,
  format: "esm",
  splitting: true,
  chunkNames: "part-[hash]",
  external: ["../_framework/dotnet.js"],
});
await build({ ...common, entryPoints: { app: "styles/app.css" }, outdir: `${www}css`, external: ["../fonts/*"], legalComments: "none" });
await build({ ...common, entryPoints: { "service-worker": "src/offline/service-worker.ts" }, outdir: www, format: "iife", sourcemap: false, legalComments: "none" });

await mkdir(`${www}fonts`, { recursive: true });
for (const [from, to] of [
  ["besley/files/besley-latin-wght-normal", "besley"],
  ["besley/files/besley-latin-wght-italic", "besley-italic"],
  ["archivo/files/archivo-latin-wdth-normal", "archivo"],
]) await copyFile(new URL(`node_modules/@fontsource-variable/${from}.woff2`, import.meta.url), `${www}fonts/${to}.woff2`);
