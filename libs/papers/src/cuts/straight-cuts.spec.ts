import type { NumberedPiece } from './roll-sheets.js';
import { cuttingOrder } from './straight-cuts.js';

const piece = (number: number, at: Pick<NumberedPiece, 'x_mm' | 'y_mm' | 'width_mm' | 'length_mm'>): NumberedPiece => ({
  number, ...at, piece: `P${String(number)}`, window: '', dwelling: '', paneNo: 1, roll: '', cutWidth: '', cutLength: '', finishedWidth: '', finishedLength: '',
});

describe('straight cuts of a roll', () => {
  it('come in the order of the work: a stretch is cut off, then parted', () => {
    // Worked by hand: two pieces side by side, then a wide one, on a roll of 900 mm.
    const { cuts, stretches, freeAfter } = cuttingOrder(
      [piece(1, { x_mm: 0, y_mm: 0, width_mm: 400, length_mm: 500 }), piece(2, { x_mm: 400, y_mm: 0, width_mm: 400, length_mm: 500 }), piece(3, { x_mm: 0, y_mm: 500, width_mm: 800, length_mm: 300 })],
      900,
    );
    expect(stretches).toEqual([{ from_mm: 0, to_mm: 500 }, { from_mm: 500, to_mm: 800 }]);
    expect(cuts.map(({ number, way, at_mm }) => [number, way, at_mm])).toEqual([[1, 'across', 500], [2, 'along', 400], [3, 'along', 800], [4, 'across', 800], [5, 'along', 800]]);
    expect([...freeAfter]).toEqual([[1, 2], [2, 3], [3, 5]]);
  });

  it('trim a short piece after its neighbour is off', () => {
    const { cuts } = cuttingOrder([piece(1, { x_mm: 0, y_mm: 0, width_mm: 500, length_mm: 600 }), piece(2, { x_mm: 500, y_mm: 0, width_mm: 400, length_mm: 450 })], 900);
    expect(cuts.map(({ way, at_mm, from_mm, to_mm }) => [way, at_mm, from_mm, to_mm])).toEqual([['across', 600, 0, 900], ['along', 500, 0, 600], ['across', 450, 500, 900]]);
  });

  it('say so where no straight cut frees the pieces', () => {
    const mill = [
      piece(1, { x_mm: 0, y_mm: 0, width_mm: 200, length_mm: 100 }), piece(2, { x_mm: 200, y_mm: 0, width_mm: 100, length_mm: 200 }),
      piece(3, { x_mm: 100, y_mm: 200, width_mm: 200, length_mm: 100 }), piece(4, { x_mm: 0, y_mm: 100, width_mm: 100, length_mm: 200 }),
    ];
    expect(() => cuttingOrder(mill, 300)).toThrow(RangeError);
  });
});
