// Arithmetic on the depth grid. Rows run from the south, columns from the west; values belong to cell centres.
export interface Frame { westM: number; southM: number; cellM: number; nx: number; ny: number }

/**
 * Depth with the land beside the water filled by negative mirror depths, so that the water's edge can be drawn as a
 * smooth zero line instead of cell corners. Land farther off is -3.
 */
export function withLandFilled(depthM: Float32Array, nx: number, ny: number): Float32Array {
  const out = new Float32Array(depthM.length);
  for (let iy = 0; iy < ny; iy++) {
    for (let ix = 0; ix < nx; ix++) {
      const i = iy * nx + ix, here = depthM[i] ?? NaN;
      if (here > 0) { out[i] = here; continue; }
      let sum = 0, count = 0;
      for (let dy = -1; dy <= 1; dy++) {
        for (let dx = -1; dx <= 1; dx++) {
          const x = ix + dx, y = iy + dy;
          if (x < 0 || y < 0 || x >= nx || y >= ny) continue;
          const d = depthM[y * nx + x] ?? NaN;
          if (d > 0) { sum += d; count++; }
        }
      }
      out[i] = count > 0 ? -Math.min(3, Math.max(0.3, sum / count)) : -3;
    }
  }
  return out;
}

/** Depth at a place in the plane, m, bilinear; negative on land, NaN outside. */
export function depthAt(field: Float32Array, f: Frame, xM: number, yM: number): number {
  const c = (xM - f.westM) / f.cellM - 0.5, r = (yM - f.southM) / f.cellM - 0.5;
  const x0 = Math.floor(c), y0 = Math.floor(r);
  if (x0 < 0 || y0 < 0 || x0 + 1 >= f.nx || y0 + 1 >= f.ny) return NaN;
  const i = y0 * f.nx + x0, tx = c - x0, ty = r - y0;
  const a = field[i] ?? NaN, b = field[i + 1] ?? NaN, d = field[i + f.nx] ?? NaN, e = field[i + f.nx + 1] ?? NaN;
  return (a + (b - a) * tx) * (1 - ty) + (d + (e - d) * tx) * ty;
}

/** Slope of the bottom at a place: change of depth per metre eastward and northward. */
export function slopeAt(field: Float32Array, f: Frame, xM: number, yM: number): [number, number] {
  const h = f.cellM;
  return [
    (depthAt(field, f, xM + h, yM) - depthAt(field, f, xM - h, yM)) / (2 * h),
    (depthAt(field, f, xM, yM + h) - depthAt(field, f, xM, yM - h)) / (2 * h),
  ];
}
