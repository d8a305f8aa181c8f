// The plain bar of a chart's scale: a round length and its name.
const metresPerFoot = 0.3048, metresPerMile = 1609.344;

/** The longest round length that is not longer than so many metres, m, and its name. */
export function scaleBar(mostM: number, metric: boolean): [lengthM: number, name: string] {
  const name = (value: number, unit: string): string => `${value.toLocaleString(navigator.language)} ${unit}`;
  if (metric) {
    const m = round(mostM);
    return [m, m < 1000 ? name(m, "m") : name(m / 1000, "km")];
  }
  const miles = mostM / metresPerMile;
  if (miles >= 0.25) {
    const long = miles < 0.5 ? 0.25 : miles < 1 ? 0.5 : round(miles);
    return [long * metresPerMile, name(long, "mi")];
  }
  const feet = round(mostM / metresPerFoot);
  return [feet * metresPerFoot, name(feet, "ft")];
}

// 1, 2 or 5 times a power of ten, at most the value.
function round(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value)), first = value / power;
  return power * (first >= 5 ? 5 : first >= 2 ? 2 : 1);
}
