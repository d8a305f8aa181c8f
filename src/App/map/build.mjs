// Bundles the app's TypeScript for the browser. Called by the .NET build: node build.mjs Debug|Release
import { build } from "esbuild";
import { copyFile, mkdir, readFile, readdir, rm, writeFile } from "node:fs/promises";

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
  ["-variable/besley/files/besley-latin-wght-normal", "besley"],
  ["-variable/archivo/files/archivo-latin-wght-normal", "archivo"],
  ["/besley/files/besley-latin-500-italic", "besley-italic"],
]) await copyFile(new URL(`node_modules/@fontsource${from}.woff2`, import.meta.url), `${www}fonts/${to}.woff2`);

// Notices of everything bundled, as their licences ask.
const bundled = ["ol", "rbush", "quickselect", "earcut", "pbf", "idb", "fake-indexeddb", "d3-array", "d3-contour", "d3-scale", "d3-shape", "d3-path", "d3-color",
  "d3-format", "d3-interpolate", "d3-time", "d3-time-format", "internmap", "@fontsource-variable/archivo", "@fontsource-variable/besley", "@fontsource/besley"];
let notices = "";
for (const name of bundled) {
  const folder = new URL(`node_modules/${name}/`, import.meta.url);
  const file = (await readdir(folder)).find((entry) => /^licen[cs]e/i.test(entry));
  if (file) notices += `${name}\n\n${await readFile(new URL(file, folder), "utf8")}\n\n`;
}
await writeFile(`${www}js/licences.txt`, notices);
