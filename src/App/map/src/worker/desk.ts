// What crosses between the desk and the browser's side. Written from the records in src/Desk by tests/Desk.Tests: change those, then
// SECONDSHORE_DRAW=1 dotnet test tests/Desk.Tests

/** Names of the questions; what else they hold only the two runtimes read. */
export type QuestionKind =
  | "open"
  | "outlook"
  | "slice"
  | "rank"
  | "shorePapers"
  | "wind"
  | "point"
  | "windPapers"
  | "pointPapers"
  | "plan"
  | "others"
  | "hold"
  | "papers"
  | "rig"
  | "learn"
  | "jig"
  | "trailer"
  | "drop"
  | "inspect"
  | "adopt"
  | "unpack"
  | "export"
  | "takeWeather"
  | "fetchWeather";

export interface BeltDrawing {
  draws: "belt";
  belt: number[] | null;
  spots: SpotMark[] | null;
  passes: PassMark[] | null;
  whatIf: boolean;
}

export interface ChartFrame {
  westM: number;
  southM: number;
  cellM: number;
  nx: number;
  ny: number;
}

export interface ChartMark {
  kind: string;
  name: string;
  xM: number;
  yM: number;
}

export type Drawing = WaterDrawing | BeltDrawing | WindDrawing | RouteDrawing;

export interface FirstAnswer {
  name: string;
  json: string;
  drawing: Drawing | null;
}

export interface PassMark {
  letter: string;
  points: number[];
}

export interface RecordRow {
  id: string;
  lake: string;
  kind: string;
  at: string;
  replaces: string | null;
  removed: boolean;
  json: string;
}

export interface RouteDrawing {
  draws: "route";
  legs: number[][];
  passes: PassMark[];
  stops: SpotMark[];
  next: string;
}

export interface SpotMark {
  letter: string;
  name: string;
  xM: number;
  yM: number;
  depthM: number;
}

export interface WaterDrawing {
  draws: "water";
  frame: ChartFrame | null;
  maxDepthM: number;
  marks: ChartMark[];
}

export interface WindDrawing {
  draws: "wind";
  frame: ChartFrame;
  hours: number;
  belt: number[] | null;
  places: SpotMark[];
  fromDeg: number[];
  windMps: number[];
}
