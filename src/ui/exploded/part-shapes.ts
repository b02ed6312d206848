import { coil, drum, groove, ribs, round, teeth, through } from "./outlines.ts";

/** One stroke of a drawing: a filled face, a hole that shows the paper, a line, or a wire with a core. */
export interface Stroke {
  readonly as: "face" | "hole" | "line" | "wire";
  readonly d: string;
}

const face = (d: string): Stroke => ({ as: "face", d });
const hole = (d: string): Stroke => ({ as: "hole", d });
const line = (d: string): Stroke => ({ as: "line", d });
const wire = (d: string): Stroke => ({ as: "wire", d });

/** A ring or washer: a low cylinder with a hole. */
const ring = (r: number, high: number, bore: number): readonly Stroke[] => [face(drum(r, -high / 2, high / 2)), line(round(r, -high / 2)), hole(round(bore, -high / 2))];

/** What the parts of a reel look like from above at a slant, each around an upright axis and between -22 and 22 high. */
const SHAPES = {
  bearing: [...ring(21, 9, 9), line(round(15.5, -4.5))],
  bush: ring(13, 14, 8),
  washer: ring(22, 2, 8),
  eared: [face(through([[-27, -3], [-19, -6], [-19, 4], [-27, 2]])), face(through([[27, -3], [19, -6], [19, 4], [27, 2]])), ...ring(21, 2, 8)],
  "soft washer": [...ring(22, 5, 8), line(groove(22, 0))],
  "spring washer": [face(drum(12, -4, 4, 23)), line(round(12, -4)), hole(round(8, -4))],
  seal: [wire(round(18))],
  "long seal": [wire("M-30 0c0-9 10-9 18-7s14-1 24-1 18 1 18 7-8 9-18 8-15 1-24 1-18-1-18-8z")],
  clip: [wire("M-7 5.5C-30 5-22-7 0-7s30 12 7 12.5")],
  spring: [wire(coil(12, -16, 16, 4))],
  "small spring": [wire(coil(8, -11, 11, 3))],
  "leg spring": [wire("M-26-9L-6-5"), wire(coil(10, -6, 9, 3)), wire("M8 9L27 13")],
  gear: [face(teeth(27, 4, 22, 3)), face(teeth(27, 4, 22, -3)), line(round(15, -3)), hole(round(6, -3))],
  "small gear": [face(teeth(17, 4, 12, 3)), face(teeth(17, 4, 12, -3)), hole(round(5, -3))],
  pinion: [face(drum(7, -19, 19)), face(drum(12, -2, 15)), line(ribs(12, -2, 15, 7)), line(round(12, -2)), line(round(7, -19)), hole(round(3.5, -19))],
  shaft: [face(drum(5, -20, 20)), line(round(5, -20)), line(groove(5, 12))],
  worm: [face(drum(6, -20, 20)), line(round(6, -20)), line("M-6-14L6-6M-6-6L6 2M-6 2L6 10M-6 10L6 18M6-14L-6-6M6-6L-6 2M6 2L-6 10M6 10L-6 18")],
  rail: [face(drum(3, -20, 20)), line(round(3, -20))],
  screw: [face(drum(4, -3, 17)), line(groove(4, 3)), line(groove(4, 8)), line(groove(4, 13)), face(drum(10, -11, -4)), line(round(10, -11)), line("M-6-12.5L6-9.5")],
  nut: [face(through([[-18, -5], [-9, -10], [9, -10], [18, -5], [18, 5], [9, 10], [-9, 10], [-18, 5]])), line("M-18-5L-9 0L9 0L18-5M-9 0V10M9 0V10"), hole(round(7, -5))],
  "one-way clutch": [face(drum(22, -9, 9)), line(ribs(22, -9, 9, 9)), line(round(22, -9)), hole(round(11, -9)), line(round(15, -9))],
  sleeve: [face(drum(12, -14, 14)), line(round(12, -14)), hole(round(8, -14))],
  rollers: [-20, -10, 0, 10, 20].flatMap((x) => [face(`M${x - 3}-7v15a3 1.4 0 0 0 6 0v-15a3 1.4 0 0 0-6 0z`)]),
  lever: [face(through([[-27, 4], [-20, -5], [-4, -4], [12, -11], [26, -7], [25, 0], [12, -2], [0, 7], [-20, 10]])), hole(round(5, 1, -15))],
  pawl: [face(through([[-11, -14], [4, -14], [6, -2], [15, 4], [11, 12], [-2, 8], [-9, 10]])), hole(round(4, -7, -3))],
  slider: [face(through([[-22, -8], [20, -8], [26, -1], [26, 9], [-16, 9], [-22, 2]])), line(through([[-22, 2], [-16, 9], [26, 9]], false)), hole(round(8, -2, 2))],
  knob: [face(drum(17, -13, 13, 21)), line(ribs(19, -8, 12, 9)), line(round(17, -13)), line(round(8, -13))],
  cap: [face("M-20 8C-20-12-12-15 0-15S20-12 20 8a20 6.4 0 0 1-40 0z"), line(groove(20, 8))],
  grip: [face("M-9-18c-8 6-13 14-10 26 2 7 7 11 19 11s17-4 19-11c3-12-2-20-10-26-4-3-14-3-18 0z"), line(groove(18, 8)), hole(round(4, -18))],
  crank: [face(through([[-34, 3], [-29, -5], [-20, -5], [22, -11], [31, -11], [34, -3], [27, 3], [-22, 10], [-31, 10]])), hole(round(5, -4, 26)), hole(round(4, 3, -27))],
  joint: [face(drum(9, -12, 12)), line(round(9, -12)), face(through([[9, -3], [30, -7], [30, 2], [9, 6]]))],
  spool: [face(drum(27, 13, 17)), line(round(27, 13)), face(drum(19, -12, 13)), line(groove(19, -3)), line(groove(19, 4)), face(drum(27, -18, -14)), line(round(27, -18)), hole(round(8, -18))],
  roller: [face(drum(16, -10, 10)), line("M-16-10C-10-3-10 3-16 10M16-10C10-3 10 3 16 10"), line(round(16, -10)), hole(round(7, -10))],
  bail: [wire("M-31 14C-34-12-16-20 4-18S33-4 30 13")],
  rotor: [face("M-30-20h9v20a21 6.7 0 0 0 42 0v-20h9v24c0 10-14 15-30 15s-30-5-30-15z"), line(groove(21, 0)), hole(round(7, 2))],
  weight: [face(through([[-15, -7], [8, -7], [15, -2], [15, 8], [-8, 8], [-15, 3]]))],
  ratchet: [face(teeth(21, 6, 9, 2)), face(teeth(21, 6, 9, -2)), hole(round(6, -2))],
  body: [face("M-30-12c0-5 8-8 20-8h20c14 0 20 6 20 16v8c0 10-8 16-20 16h-20c-12 0-20-4-20-10z"), line("M-30-6c0 6 9 8 20 8h20c12 0 20-4 20-9"), hole(round(11, -11))],
  cover: [face("M-30-4c0-8 12-11 28-11s32 3 32 11v6c0 9-14 13-30 13s-30-5-30-13z"), line("M-30-4c0 8 14 11 30 11s30-4 30-11"), hole(round(9, -3))],
  plate: [...ring(31, 4, 9), hole(round(2.4, -2, -21)), hole(round(2.4, -2, 21)), hole(round(2.4, 5, 3))],
  frame: [face(drum(30, 13, 18)), line(round(30, 13)), hole(round(22, 13)), face("M-29-14v28h5v-28zM24-14v28h5v-28zM-3 -6v28h6v-28z"), ...[face(drum(30, -18, -13)), line(round(30, -18)), hole(round(22, -18))]],
  foot: [face(through([[-6, -18], [6, -18], [8, 6], [32, 10], [30, 15], [-30, 15], [-32, 10], [-8, 6]])), line("M-8 6L8 6")],
  guard: [face("M-26-14c0 24 10 30 26 30s26-6 26-30l-8 2c0 14-6 19-18 19s-18-5-18-19z")],
  guide: [face(through([[-18, 13], [-12, 4], [12, 4], [18, 13]])), wire("M-8 4C-12-18 12-18 8 4")],
  blocks: [-21, -7, 7, 21].map((x) => face(`M${x - 4.5}-5h9v10h-9z`)),
  plug: [face(drum(6, 0, 12)), face(drum(10, -8, 0)), line(round(10, -8))],
  board: [face(through([[-28, 7], [-14, -12], [28, -12], [14, 7]])), line("M-14 2L-8-6M-4 2L2-6M6 2L12-6")],
  motor: [face(drum(18, -14, 14)), line(round(18, -14)), face(drum(4, -20, -14)), line(groove(18, 6))],
} satisfies Record<string, readonly Stroke[]>;

export type Shape = keyof typeof SHAPES;
export const SHAPE_NAMES = Object.keys(SHAPES) as readonly Shape[];

/** The strokes of a shape, in the order to draw them. */
export const strokesOf = (shape: Shape): readonly Stroke[] => SHAPES[shape];
