import fc from 'fast-check';
import { pieceOfPane } from './piece.js';

describe('a pane gives a rough cut size and a finished size', () => {
  it('adds nothing to a size that stands on an eighth of an inch already', () => {
    for (let eighths = 80; eighths < 800; eighths++) {
      const piece = pieceOfPane({ width_mm: eighths * 3.175, height_mm: 500, trimPerEdge_mm: 12.7 });
      expect(piece.width_mm).toBeCloseTo((eighths + 8) * 3.175, 9);
    }
  });

  it('never cuts short, and never adds a whole eighth', () => {
    fc.assert(
      fc.property(fc.double({ min: 50, max: 4000, noNaN: true }), fc.double({ min: 0, max: 50, noNaN: true }), (width_mm, trimPerEdge_mm) => {
        const cut = pieceOfPane({ width_mm, height_mm: 900, trimPerEdge_mm }).width_mm;
        const asked = width_mm + 2 * trimPerEdge_mm;
        // The entered size is first put in whole ticks of 1/320 mm, twice the trim in two.
        return cut >= asked - 2 / 320 && cut < asked + 3.175 + 2 / 320;
      }),
    );
  });

  it('refuses sizes and allowances that cannot be', () => {
    expect(() => pieceOfPane({ width_mm: 0, height_mm: 900 })).toThrow(RangeError);
    expect(() => pieceOfPane({ width_mm: 900, height_mm: Number.NaN })).toThrow(RangeError);
    expect(() => pieceOfPane({ width_mm: 900, height_mm: 900, trimPerEdge_mm: -1 })).toThrow(RangeError);
    expect(() => pieceOfPane({ width_mm: 3, height_mm: 900 })).toThrow(/edge gap/);
  });
});
