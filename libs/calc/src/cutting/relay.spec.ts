import fc from 'fast-check';
import { cut, type CutPiece, type OpenedRoll, type Placement, relay } from './index.js';

const at = (piece: string, [x_mm, y_mm]: readonly [number, number], [width_mm, length_mm]: readonly [number, number]): Placement => ({ piece, roll: 0, x_mm, y_mm, width_mm, length_mm, rotated: false });
const piece = (id: string, width_mm: number, length_mm: number): CutPiece => ({ id, width_mm, length_mm, count: 1, mayRotate: false });
// A roll of 1,000 × 5,000: a and b side by side on 0…1,000, c on 1,000…2,000, d and e side by side on 2,000…2,800.
const roll: OpenedRoll = { width_mm: 1000, length_mm: 5000, laid: [at('a', [0, 0], [500, 1000]), at('b', [500, 0], [500, 900]), at('c', [0, 1000], [900, 1000]), at('d', [0, 2000], [500, 800]), at('e', [500, 2000], [500, 800])] };
const laidOf = (result: { placements: readonly Placement[] }, id: string) => result.placements.find((p) => p.piece === id);

describe('the rest of an opened roll', () => {
  it('stays as it is where nothing changed', () => {
    const result = relay(0, { roll, changed: [], mayRotate: false });
    expect(result).toMatchObject({ moved: [], unplaced: [], runningLength_mm: 2800, leftLength_mm: 2200, check: { ok: true } });
    expect(result.placements).toEqual(roll.laid);
  });

  it('is laid again behind the cut: the larger piece has room, nothing before the cut moves', () => {
    const result = relay(1000, { roll, changed: [piece('d', 600, 800)], mayRotate: false });
    for (const id of ['a', 'b']) expect(laidOf(result, id)).toEqual(roll.laid.find((p) => p.piece === id));
    expect(laidOf(result, 'd')).toMatchObject({ width_mm: 600, length_mm: 800 });
    // d and e no longer share a shelf: c 1,000 + d 800 + e 800 behind 1,000.
    expect(result).toMatchObject({ line_mm: 1000, runningLength_mm: 3600, check: { ok: true, faults: [] } });
  });

  it('carries the line on to the end of a piece it runs through', () => {
    const result = relay(1200, { roll, changed: [piece('e', 450, 900)], mayRotate: false });
    expect(result.line_mm).toBe(2000);
    expect(laidOf(result, 'c')).toEqual(roll.laid[2]);
    expect(result.moved).toContain('e');
    expect(result.check.ok).toBe(true);
  });

  it('leaves a piece that is cut as it was cut, whatever was measured since', () => {
    expect(laidOf(relay(1000, { roll, changed: [piece('a', 700, 700)], mayRotate: false }), 'a')).toEqual(roll.laid[0]);
  });

  it('says which piece no longer fits the roll', () => {
    const result = relay(2000, { roll: { ...roll, length_mm: 3000 }, changed: [piece('d', 600, 800)], mayRotate: false });
    expect(result.unplaced).toHaveLength(1);
    expect(result.unplaced[0]!.why).not.toBe('');
    expect(result.check.ok).toBe(true);
    expect(relay(5000, { roll, changed: [piece('n', 10, 10)], mayRotate: false }).unplaced).toMatchObject([{ piece: 'n', why: 'the roll is used up' }]);
  });

  it('takes a new piece in and lets one go', () => {
    const result = relay(2000, { roll, changed: [piece('n', 400, 700)], dropped: ['e'], mayRotate: false });
    expect(result.placements.map((p) => p.piece).sort()).toEqual(['a', 'b', 'c', 'd', 'n']);
    expect(result.runningLength_mm).toBe(2800);
  });

  it('refuses a cut beyond the roll, and two of one piece', () => {
    expect(() => relay(5001, { roll, changed: [], mayRotate: false })).toThrow('cutTo_mm');
    expect(() => relay(0, { roll, changed: [{ ...piece('a', 1, 1), count: 2 }], mayRotate: false })).toThrow('count');
  });

  it('of any roll passes the independent check, and what was cut stays', () => {
    const sizes = fc.array(fc.record({ width_mm: fc.integer({ min: 100, max: 900 }), length_mm: fc.integer({ min: 100, max: 1500 }) }), { minLength: 3, maxLength: 12 });
    fc.assert(fc.property(sizes, fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 0, max: 11 }), (all, share, which) => {
      const pieces = all.map((size, i) => ({ ...size, id: `p${String(i).padStart(2, '0')}`, count: 1, mayRotate: false }));
      const { placements, unplaced } = cut({ pieces, rolls: [{ width_mm: 1000, length_mm: 12_000, stock: 1 }], rounds: 0 });
      const line = share * Math.max(0, ...placements.map((p) => p.y_mm + p.length_mm));
      const changed = pieces.filter((p, i) => i === which && !unplaced.some((u) => u.piece === p.id)).map((p) => ({ ...p, width_mm: p.width_mm + 60 }));
      const result = relay(line, { roll: { width_mm: 1000, length_mm: 12_000, laid: placements }, changed, mayRotate: false });
      expect(result.check.faults).toEqual([]);
      for (const p of placements.filter((each) => each.y_mm < line - 1)) expect(laidOf(result, p.piece)).toEqual({ ...p, roll: 0 });
    }), { numRuns: 25 });
  });
});
