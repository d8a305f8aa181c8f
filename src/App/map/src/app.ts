// What the page's .NET code calls. Charts and the lake chart load when first shown.
import { changed, model } from "./chart/model";
import { depthAt } from "./chart/field";
import { takeDrawing } from "./chart/listen";
import { engine, type ProgressListener } from "./worker/client";
import * as lakeStore from "./store/lakes";
import * as recordStore from "./store/records";
import * as linkStore from "./store/links";
import type { AnswerRow, LinkRow, RecordRow } from "./store/database";
import type { ChartListener } from "./chart/lake-chart";
import { handOut } from "./device/files";
import type { QuestionKind, RouteDrawing } from "./worker/desk";
import { play, type HourListener } from "./chart/play";

export { showHour as windHour, stop as stopWind } from "./chart/play";
export const playWind = (listener: HourListener): void => play(listener);
export { saveSetting, setting, removeSetting, askToPersist } from "./store/records";
export { nameLake, removeLake } from "./store/lakes";
export { forgetLinks } from "./store/links";
export { keepsNothing } from "./store/database";
export { hostCall, hostTry } from "./host/calls";
export { basedFile, fetchFile, hashedFiles, sendFile } from "./host/files";
export { changeFiles, weatherFromHost } from "./host/weather";
export { fetchFirst, first, keepFirst } from "./store/first";
export { forgetLake } from "./chart/listen";
export { keepOffline, takeUpdate } from "./offline/updates";
export { listenToTabs } from "./store/tabs";
export { locale } from "./device/locale";
export { applyTheme, storedTheme, systemDark } from "./device/theme";
export { follow, leave, stayAwake } from "./device/boat";
export { guardWet } from "./device/wet";
export { printPage } from "./device/print";
export { askWithFiles, download, saveMade, takeFiles, unpackOwn } from "./device/files";

export const lakesJson = async (): Promise<string> => JSON.stringify(await lakeStore.lakes());
export const recordsJson = async (lake: string): Promise<string> => JSON.stringify(await recordStore.records(lake));
export const fileRecordsJson = async (lake: string): Promise<string> =>
  JSON.stringify((await recordStore.allRecords(lake)).filter((row) => row.kind === "file"));
export const allRecordsJson = async (lake: string): Promise<string> => JSON.stringify(await recordStore.allRecords(lake));
export const addRecordsJson = (json: string): Promise<number> => recordStore.addRecords(JSON.parse(json) as RecordRow[]);
export const exchangeRecordsJson = (old: string, now: string): Promise<void> =>
  recordStore.exchangeRecords(JSON.parse(old) as RecordRow[], JSON.parse(now) as RecordRow[]);
export const linksJson = async (): Promise<string> => JSON.stringify(await linkStore.links());
export const saveLinkJson = (json: string): Promise<void> => linkStore.saveLink(JSON.parse(json) as LinkRow);
export const waitingJson = async (lake: string, most: number): Promise<string> => JSON.stringify(await linkStore.waiting(lake, most));
export const waitingCountsJson = async (): Promise<string> => JSON.stringify(await linkStore.waitingCounts());
export const settleJson = (lake: string, epoch: string, cursor: number, json: string): Promise<void> => {
  const { acknowledged, refused } = JSON.parse(json) as { acknowledged: string[]; refused: string[] };
  return linkStore.settle(lake, epoch, cursor, acknowledged, refused);
};
export const storageJson = async (): Promise<string> => JSON.stringify(await recordStore.storageUse());

export const stopEngine = (): void => engine.stop();
/** Whose words the answers are in from now on. */
export const setReader = (reader: string): void => engine.readBy(reader);

/**
 * Asks the engine. The answer's JSON goes to the page unread; its drawing and arrays went to the chart.
 * With a name and a stamp it is kept for the next cold start.
 */
export async function ask(
  kind: QuestionKind, question: string, lake: string | null, opener: string | null, listener: ProgressListener | null,
  name: string | null, stamp: string | null,
): Promise<string> {
  const { json, drawing, arrays } = await engine.request(kind, question, { lake, opener, listener });
  if (lake && name && stamp) void recordStore.keepAnswer({ lake, verb: name, stamp, json, drawing, arrays });
  return json;
}

/** The last kept answer, shown at once on a cold start; null when there is none of this version of the app. */
export async function recall(lake: string, name: string, stamp: string): Promise<string | null> {
  const row = await recordStore.lastAnswer(lake, name);
  if (!row || row.stamp !== stamp) return null;
  const drawing = row.drawing === undefined ? olderRoute(row) : row.drawing;
  if (drawing) takeDrawing(drawing, row.arrays);
  return row.json;
}

// A plan outlives an update of the app: one kept by an earlier version holds its way within.
function olderRoute(row: AnswerRow): RouteDrawing | null {
  const chart = (JSON.parse(row.json) as { chart?: Omit<RouteDrawing, "draws"> | null }).chart;
  return chart?.legs ? { ...chart, draws: "route" } : null;
}

/** Hands out a file of the kept plan's papers. */
export async function downloadPaper(lake: string, stamp: string, file: string, fileName: string): Promise<boolean> {
  const bytes = await paper(lake, stamp, file);
  if (bytes) handOut(new Blob([bytes as Uint8Array<ArrayBuffer>]), fileName);
  return bytes !== null;
}

// Papers of another plan than the one asked for are none.
async function paper(lake: string, stamp: string, file: string): Promise<Uint8Array | null> {
  const row = await recordStore.lastAnswer(lake, "papers");
  return row?.stamp === stamp ? row.arrays[`file:${file}`] ?? null : null;
}

/** Shows the printed sheet of the kept day inside an element, untouched by the page's own styles. */
export async function showSheet(host: HTMLElement, lake: string, stamp: string): Promise<boolean> {
  const bytes = await paper(lake, stamp, "day.html");
  if (bytes) await (await import("./device/paper")).show(host, new TextDecoder().decode(bytes));
  return bytes !== null;
}

export async function setUnits(metric: boolean): Promise<void> {
  model.metric = metric;
  model.indexStepM = metric ? 10 : 50 * 0.3048;
  if (model.frame) await engine.contours(metric);
  changed("marks");
}

/** Depth of the bottom at a place, m; negative on land or outside. */
export function depthHere(xM: number, yM: number): number {
  const depthM = model.frame ? depthAt(model.field, model.frame, xM, yM) : NaN;
  return depthM > 0 ? depthM : -1;
}
export function goToStop(letter: string): void {
  if (model.route) model.route = { ...model.route, next: letter };
  changed("marks");
}
export function choose(letter: string): void { model.chosen = letter; changed("marks"); }
/** Marks the place whose hours are looked at; none without coordinates. */
export function markPlace(xM: number | null, yM: number | null): void {
  model.looked = xM !== null && yM !== null ? [xM, yM] : null;
  changed("marks");
}
export function setPosition(xM: number, yM: number, headingDeg: number | null, accuracyM: number): void {
  model.position = { xM, yM, headingDeg, accuracyM };
  changed("position");
}

const numbers = (text: string): number[] => text.split(" ").filter((part) => part.length > 0).map(Number);

/** The boat's way as x, y pairs, and the jig's place behind it; no place while that is not known. */
export function setTrack(way: string, jig: string): void {
  const [x, y] = numbers(jig);
  model.track = numbers(way);
  model.jig = x !== undefined && y !== undefined ? [x, y] : null;
  changed("position");
}

const chartModule = () => import("./chart/index");
let chartModuleNow: Awaited<ReturnType<typeof chartModule>> | undefined;
export async function openChart(host: HTMLElement, options: string, listener: ChartListener | null): Promise<number> {
  chartModuleNow = await chartModule();
  return chartModuleNow.open(host, options, listener);
}
export const closeChart = (id: number): void => chartModuleNow?.close(id);
export const chartWhole = (id: number): void => chartModuleNow?.find(id)?.whole();
export const chartGoTo = (id: number, xM: number, yM: number, pixelM: number): void => chartModuleNow?.find(id)?.goTo(xM, yM, pixelM);
export const chartRoute = (id: number): void => chartModuleNow?.find(id)?.wholeRoute();
export const chartZoom = (id: number, by: number): void => chartModuleNow?.find(id)?.zoom(by);
export const chartNorth = (id: number): void => chartModuleNow?.find(id)?.north();

export async function drawChart(host: HTMLElement, kind: string, json: string): Promise<void> {
  (await import("./charts/index")).draw(host, kind, json);
}
export const focusOn = (selector: string): void => document.querySelector<HTMLElement>(selector)?.focus();
export const savePicture = async (host: HTMLElement, head: string, caption: string, name: string, kind: string): Promise<void> =>
  (await import("./device/picture")).savePicture(host, head, caption, name, kind);
export const now = (): number => Date.now();

// The engine wakes at once, next to the page's own runtime.
engine.start();
