import { LakeChart, type ChartListener, type ChartOptions } from "./lake-chart";

const charts = new Map<number, LakeChart>();
let next = 1;

export function open(host: HTMLElement, options: string, listener: ChartListener | null): number {
  const id = next++;
  charts.set(id, new LakeChart(host, JSON.parse(options) as ChartOptions, listener));
  return id;
}

export const find = (id: number): LakeChart | undefined => charts.get(id);

export function close(id: number): void {
  charts.get(id)?.dispose();
  charts.delete(id);
}
