// Makes src/Atlas/land.bin: which country each quarter of a degree of land belongs to.
// Source: Natural Earth 1:50m countries (public domain), as packed in the npm package world-atlas 2.0.2 (ISC):
//   npm pack world-atlas@2.0.2 && tar xzf world-atlas-2.0.2.tgz && node eng/tables/land.mjs package/countries-50m.json src/Atlas/land.bin
// Layout, deflated: a byte with the number of countries, for each a byte of length and its name in UTF-8; then 720 rows
// from north to south, each a list of runs (country, 0 for sea; length as one or two bytes, 7 bits each, low first).
import { readFileSync, writeFileSync } from "node:fs";
import { deflateRawSync } from "node:zlib";

const [source, target] = process.argv.slice(2);
const atlas = JSON.parse(readFileSync(source, "utf8"));
const { scale, translate } = atlas.transform;
const arcs = atlas.arcs.map((arc) => {
  let x = 0, y = 0;
  return arc.map(([dx, dy]) => [(x += dx) * scale[0] + translate[0], (y += dy) * scale[1] + translate[1]]);
});
const ringOf = (indices) => indices.flatMap((i) => (i >= 0 ? arcs[i] : [...arcs[~i]].reverse()));
const columns = 1440, rows = 720, cell = 0.25;
const grid = new Uint8Array(columns * rows);
const names = [];

for (const country of atlas.objects.countries.geometries) {
  names.push(country.properties.name);
  const polygons = country.type === "Polygon" ? [country.arcs] : country.type === "MultiPolygon" ? country.arcs : [];
  for (const polygon of polygons) fill(polygon.map(ringOf), names.length);
}

/** Even-odd filling along the middle of each row; a ring too small for any middle still marks the cell of its first point. */
function fill(rings, id) {
  for (let row = 0; row < rows; row++) {
    const lat = 90 - (row + 0.5) * cell, cuts = [];
    for (const ring of rings) {
      for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
        const [ax, ay] = ring[j], [bx, by] = ring[i];
        if (ay > lat !== by > lat) cuts.push(ax + ((lat - ay) * (bx - ax)) / (by - ay));
      }
    }
    cuts.sort((a, b) => a - b);
    for (let k = 0; k + 1 < cuts.length; k += 2) {
      const from = Math.ceil((cuts[k] + 180) / cell - 0.5), to = Math.floor((cuts[k + 1] + 180) / cell - 0.5);
      for (let c = Math.max(0, from); c <= Math.min(columns - 1, to); c++) grid[row * columns + c] = id;
    }
  }
  const [x, y] = rings[0][0];
  const at = Math.min(rows - 1, Math.floor((90 - y) / cell)) * columns + Math.min(columns - 1, Math.max(0, Math.floor((x + 180) / cell)));
  if (grid[at] === 0) grid[at] = id;
}

const bytes = [names.length];
for (const name of names) {
  const text = Buffer.from(name, "utf8");
  bytes.push(text.length, ...text);
}
for (let row = 0; row < rows; row++) {
  for (let c = 0; c < columns;) {
    let end = c;
    while (end < columns && grid[row * columns + end] === grid[row * columns + c]) end++;
    let run = end - c;
    bytes.push(grid[row * columns + c]);
    if (run > 127) bytes.push((run & 127) | 128, run >> 7);
    else bytes.push(run);
    c = end;
  }
}
const packed = deflateRawSync(Buffer.from(bytes), { level: 9 });
writeFileSync(target, packed);
console.log(`${names.length} countries, ${bytes.length} bytes, ${packed.length} packed`);
