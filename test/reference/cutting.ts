import type { ReferenceTable } from './reference-table.js';

/** A film job in quarter inches: pieces as [short side, long side, count], roll widths, and whether pieces may turn. */
export interface FilmJob {
  readonly rollWidths: readonly number[];
  readonly pieces: readonly (readonly [number, number, number])[];
  readonly mayRotate: boolean;
}

/** Area in square quarter inches. */
export interface FilmJobArea {
  readonly lowerBound: number;
  readonly bestKnown: number;
}

const ROLLS = [144, 192, 240, 288];

/** Bound and best known area of film jobs; sold by length, cost = width × length. */
export const filmJobs: ReferenceTable<FilmJob, FilmJobArea> = {
  of: 'calc/cutting/cut',
  source: 'jobs made for this project; bounds by a linear bar relaxation and best areas by an integer program over two-stage shelves, both from a separate program',
  seen: 'computed from the stated formula',
  tolerance: { abs: 2, why: 'the stored bound is floor(LP value × (1 − 1e-8)) − 1' },
  rows: [
    {
      given: { rollWidths: ROLLS, mayRotate: true, pieces: [[122, 230, 5], [98, 170, 2], [137, 199, 3], [110, 244, 2], [77, 177, 6], [132, 226, 6]] },
      expect: { lowerBound: 588576, bestKnown: 600624 },
      place: 'film-5-11, rotation',
    },
    {
      given: { rollWidths: ROLLS, mayRotate: false, pieces: [[122, 230, 5], [98, 170, 2], [137, 199, 3], [110, 244, 2], [77, 177, 6], [132, 226, 6]] },
      expect: { lowerBound: 602782, bestKnown: 620880 },
      place: 'film-5-11, no rotation',
    },
    {
      given: { rollWidths: ROLLS, mayRotate: true, pieces: [[136, 211, 11], [181, 230, 27], [115, 189, 13], [73, 140, 9], [120, 179, 11], [89, 92, 13], [135, 148, 19], [142, 264, 27]] },
      expect: { lowerBound: 3623645, bestKnown: 3663840 },
      place: 'film-20-1, rotation',
    },
    {
      given: { rollWidths: ROLLS, mayRotate: false, pieces: [[136, 211, 11], [181, 230, 27], [115, 189, 13], [73, 140, 9], [120, 179, 11], [89, 92, 13], [135, 148, 19], [142, 264, 27]] },
      expect: { lowerBound: 3694558, bestKnown: 3710208 },
      place: 'film-20-1, no rotation',
    },
    {
      given: { rollWidths: ROLLS, mayRotate: true, pieces: [[181, 230, 104], [115, 189, 23], [73, 140, 53], [120, 179, 61], [135, 148, 38], [142, 264, 19], [149, 267, 89], [108, 118, 73], [132, 144, 173]] },
      expect: { lowerBound: 16262355, bestKnown: 16482960 },
      place: 'film-100-1, rotation',
    },
    {
      given: { rollWidths: ROLLS, mayRotate: false, pieces: [[181, 230, 104], [115, 189, 23], [73, 140, 53], [120, 179, 61], [135, 148, 38], [142, 264, 19], [149, 267, 89], [108, 118, 73], [132, 144, 173]] },
      expect: { lowerBound: 16371286, bestKnown: 17603952 },
      place: 'film-100-1, no rotation',
    },
    {
      given: { rollWidths: ROLLS, mayRotate: true, pieces: [[148, 188, 253], [157, 196, 81], [90, 124, 74], [149, 275, 86], [98, 150, 325], [127, 208, 75], [169, 311, 404], [110, 117, 165], [81, 148, 306], [170, 247, 401], [97, 134, 245], [127, 181, 150]] },
      expect: { lowerBound: 76339421, bestKnown: 77410128 },
      place: 'film-400-3, rotation',
    },
    {
      given: { rollWidths: ROLLS, mayRotate: false, pieces: [[148, 188, 253], [157, 196, 81], [90, 124, 74], [149, 275, 86], [98, 150, 325], [127, 208, 75], [169, 311, 404], [110, 117, 165], [81, 148, 306], [170, 247, 401], [97, 134, 245], [127, 181, 150]] },
      expect: { lowerBound: 76751134, bestKnown: 78520080 },
      place: 'film-400-3, no rotation',
    },
    {
      given: { rollWidths: ROLLS, mayRotate: true, pieces: [[125, 192, 1], [129, 158, 1], [94, 155, 1]] },
      expect: { lowerBound: 59332, bestKnown: 64800 },
      place: 'film-1-7, rotation',
    },
    {
      given: { rollWidths: ROLLS, mayRotate: false, pieces: [[125, 192, 1], [129, 158, 1], [94, 155, 1]] },
      expect: { lowerBound: 65278, bestKnown: 72720 },
      place: 'film-1-7, no rotation',
    },
    {
      given: { rollWidths: ROLLS, mayRotate: true, pieces: [[134, 147, 60], [66, 253, 14], [172, 270, 42], [140, 193, 52], [88, 272, 24], [88, 195, 54], [88, 285, 24], [111, 145, 36], [87, 259, 42]] },
      expect: { lowerBound: 8563731, bestKnown: 8751312 },
      place: 'film-60-5, rotation',
    },
    {
      given: { rollWidths: ROLLS, mayRotate: false, pieces: [[134, 147, 60], [66, 253, 14], [172, 270, 42], [140, 193, 52], [88, 272, 24], [88, 195, 54], [88, 285, 24], [111, 145, 36], [87, 259, 42]] },
      expect: { lowerBound: 8902174, bestKnown: 9031488 },
      place: 'film-60-5, no rotation',
    },
  ],
};

/** Trade examples of sizes. */
export const pieceSizes: ReferenceTable<{ readonly width_in: number; readonly height_in: number }, { readonly cut: string; readonly finished: string }> = {
  of: 'calc/cutting/piece',
  source: 'trade facts collected for this project: cut = glass + total allowance, up to 1/8 in; finished = glass − 2 × gap',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0, why: 'texts are compared whole' },
  rows: [
    { given: { width_in: 35.5, height_in: 47.375 }, expect: { cut: '36 1/2 × 48 3/8', finished: '35 3/8 × 47 1/4' }, place: 'example of the cut-size rule' },
  ],
};

/** Whole pieces against area: 50 panes 46 × 104 in from rolls of 48 in × 100 ft. */
export const wholePieces: ReferenceTable<{ readonly width_in: number; readonly length_in: number; readonly count: number }, { readonly perRoll: number; readonly rolls: number }> = {
  of: 'calc/cutting/cut',
  source: 'a film supplier’s note on whole pieces, worked again here: floor(1200 / 104) = 11 a roll, 50 / 11 = 4.55',
  seen: 'quoted elsewhere',
  tolerance: { abs: 0, why: 'counts' },
  rows: [{ given: { width_in: 46, length_in: 104, count: 50 }, expect: { perRoll: 11, rolls: 5 }, place: 'the 50-pane example' }],
};
