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

  it('gives the sizes of the trade example: glass 35 1/2 × 47 3/8 in, half an inch on each edge, 1/16 in left bare', () => {
    const piece = pieceOfPane({ width_mm: 35.5 * 25.4, height_mm: 47.375 * 25.4 });
    expect(piece).toMatchObject({ widthText: '36 1/2', lengthText: '48 3/8', finishedWidthText: '35 3/8', finishedLengthText: '47 1/4' });
    expect(piece.width_mm).toBeCloseTo(36.5 * 25.4, 9);
    expect(piece.finishedLength_mm).toBeCloseTo(47.25 * 25.4, 9);
  });

  it('takes no trim and no gap where that is asked, and names what is wrong', () => {
    expect(pieceOfPane({ width_mm: 317.5, height_mm: 635, trimPerEdge_mm: 0, edgeGap_mm: 0 })).toMatchObject({ width_mm: 317.5, length_mm: 635, finishedWidth_mm: 317.5, finishedLength_mm: 635 });
    expect(() => pieceOfPane({ width_mm: 900, height_mm: 900, trimPerEdge_mm: -0.1 })).toThrow(/^trimPerEdge_mm must be ≥ 0, got -0.1$/);
    expect(() => pieceOfPane({ width_mm: 900, height_mm: 900, edgeGap_mm: Number.POSITIVE_INFINITY })).toThrow(/^edgeGap_mm must be ≥ 0/);
    expect(() => pieceOfPane({ width_mm: 900, height_mm: 0 })).toThrow(/^height_mm must be > 0, got 0$/);
    expect(() => pieceOfPane({ width_mm: 3.175, height_mm: 900 })).toThrow(/^width_mm must be more than twice the edge gap/); // just twice 1/16 in
  });
});
