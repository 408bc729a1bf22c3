import { cut } from './cut.js';
import type { CutJob, CutResult, Placement } from './job.js';
import { checkLayout } from './layout-check.js';

const job: CutJob = {
  pieces: [
    { id: 'a', width_mm: 400, length_mm: 700, count: 3, mayRotate: false },
    { id: 'b', width_mm: 500, length_mm: 300, count: 2, mayRotate: true },
  ],
  rolls: [{ width_mm: 1000, length_mm: 5000 }],
};
const good = cut(job);
const withPlacement = (index: number, change: Partial<Placement>): CutResult => ({
  ...good,
  placements: good.placements.map((at, k) => (k === index ? { ...at, ...change } : at)),
});
const faultsOf = (result: CutResult): string => checkLayout(job, result).faults.join('; ');

describe('the layout check finds what it is there for', () => {
  it('passes a good layout', () => expect(faultsOf(good)).toBe(''));
  it('a piece left out', () => expect(faultsOf({ ...good, placements: good.placements.slice(1) })).toMatch(/stands 2 times, asked 3|stands 1 times, asked 2/));
  it('a piece over the side', () => expect(faultsOf(withPlacement(0, { x_mm: 900 }))).toMatch(/leaves roll/));
  it('a piece of the wrong size', () => expect(faultsOf(withPlacement(0, { width_mm: 399 }))).toMatch(/not as asked/));
  it('a piece turned that may not be', () => {
    const a = good.placements.findIndex((at) => at.piece === 'a');
    expect(faultsOf(withPlacement(a, { width_mm: 700, length_mm: 400 }))).toMatch(/not as asked/);
  });
  it('two pieces on one another', () => {
    const first = good.placements[0]!;
    expect(faultsOf(withPlacement(1, { x_mm: first.x_mm, y_mm: first.y_mm, roll: first.roll }))).toMatch(/overlap/);
  });
  it('a piece past the end of what is used', () => expect(faultsOf(withPlacement(0, { y_mm: 4900 }))).toMatch(/pieces end at/));
  it('film that was not paid for', () => expect(faultsOf({ ...good, boughtArea_mm2: good.boughtArea_mm2 / 2 })).toMatch(/boughtArea_mm2/));
  it('a roll that is not listed', () => expect(faultsOf(withPlacement(0, { roll: 7 }))).toMatch(/not listed/));

  it('five pieces round a hole, which no straight cut frees', () => {
    const wheel: CutJob = { pieces: [2, 1].map((n) => ({ id: `w${n}`, width_mm: n === 2 ? 200 : 100, length_mm: 100, count: n === 2 ? 4 : 1, mayRotate: true })), rolls: [{ width_mm: 300 }] };
    const at = (piece: string, box: [number, number, number, number]): Placement => ({ piece, roll: 0, x_mm: box[0], y_mm: box[1], width_mm: box[2], length_mm: box[3], rotated: box[2] < box[3] });
    const placements = [at('w2', [0, 0, 200, 100]), at('w2', [200, 0, 100, 200]), at('w2', [100, 200, 200, 100]), at('w2', [0, 100, 100, 200]), at('w1', [100, 100, 100, 100])];
    const layout = { ...cut(wheel), placements, rolls: [{ offer: 0, width_mm: 300, length_mm: null, source: 'bought' as const, runningLength_mm: 300, boughtLength_mm: 300, leftLength_mm: 0 }] };
    const { faults } = checkLayout(wheel, { ...layout, boughtArea_mm2: 90_000, usedArea_mm2: 90_000, pieceArea_mm2: 90_000 });
    expect(faults).toEqual([expect.stringContaining('no straight cut')]);
  });

  it('pieces closer than the kerf', () => {
    expect(checkLayout({ ...job, kerf_mm: 3 }, good).faults.join()).toMatch(/no straight cut/);
  });

  it('says ok with no faults and not ok with one, and stops at fifty', () => {
    expect(checkLayout(job, good)).toEqual({ ok: true, faults: [] });
    expect(checkLayout(job, { ...good, boughtArea_mm2: 1 }).ok).toBe(false);
    const many: CutJob = { ...job, pieces: Array.from({ length: 60 }, (_, k) => ({ id: `m${String(k)}`, width_mm: 10, length_mm: 10, count: 1, mayRotate: false })) };
    expect(checkLayout(many, { ...good, placements: [] }).faults).toHaveLength(50);
  });

  it('counts pieces that are said to be left out', () => {
    const left = good.placements[0]!.piece;
    const fewer: CutResult = { ...good, placements: good.placements.slice(1), unplaced: [{ piece: left, count: 1, why: 'test' }] };
    expect(faultsOf(fewer)).not.toMatch(/stands/);
    expect(faultsOf({ ...good, unplaced: [{ piece: left, count: 2, why: 'test' }] })).toMatch(/stands/);
    expect(faultsOf({ ...fewer, unplaced: [{ piece: left, count: 1, why: 'x' }, { piece: left, count: 1, why: 'y' }] })).toMatch(/stands/);
  });

  it('a piece nobody asked for', () => expect(faultsOf(withPlacement(0, { piece: 'z' }))).toMatch(/z/));
  it('a piece turned that may be turned passes', () => {
    const own: CutJob = { pieces: [{ id: 'b', width_mm: 500, length_mm: 300, count: 1, mayRotate: true }], rolls: [{ width_mm: 300 }] };
    expect(checkLayout(own, cut(own)).faults).toEqual([]);
  });

  it('a roll that is none of the job, or is said to be longer', () => {
    const rolls = (change: object): CutResult => ({ ...good, rolls: good.rolls.map((roll) => ({ ...roll, ...change })) });
    expect(faultsOf(rolls({ width_mm: 1001 }))).toMatch(/not one of the job/);
    expect(faultsOf(rolls({ length_mm: 5001 }))).toMatch(/not one of the job/);
    expect(faultsOf(rolls({ offer: 1 }))).toMatch(/not one of the job/);
    expect(faultsOf(rolls({ boughtLength_mm: 4999 }))).toMatch(/pays/);
  });

  it('a bound above what is bought, and areas that are not the sum of their parts', () => {
    expect(faultsOf({ ...good, lowerBoundArea_mm2: good.boughtArea_mm2 + 1 })).toMatch(/lower bound/);
    expect(faultsOf({ ...good, usedArea_mm2: good.usedArea_mm2 + 1 })).toMatch(/usedArea_mm2/);
    expect(faultsOf({ ...good, pieceArea_mm2: good.pieceArea_mm2 - 1 })).toMatch(/pieceArea_mm2/);
  });

  it.each([
    ['a number of rolls', 2, ''],
    ['one roll fewer', 1, '2 rolls of row 0 are taken from stock, which holds 1'],
    ['true for one roll', true, '2 rolls of row 0 are taken from stock, which holds 1'],
    ['none', undefined, '2 rolls of row 0 are taken from stock, which holds 0'],
    ['false for none', false, '2 rolls of row 0 are taken from stock, which holds 0'],
  ])('stock taken beyond what lies there: %s', (_, stock, fault) => {
    const two: CutJob = { pieces: [{ id: 'a', width_mm: 900, length_mm: 900, count: 2, mayRotate: false }], rolls: [{ width_mm: 1000, length_mm: 1000, stock: 2 }] };
    expect(checkLayout({ ...two, rolls: [{ ...two.rolls[0]!, stock }] }, cut(two)).faults.join()).toBe(fault);
  });

  it('a roll bought of a kind that only lies in stock', () => {
    const own: CutJob = { pieces: [{ id: 'a', width_mm: 900, length_mm: 900, count: 1, mayRotate: false }], rolls: [{ width_mm: 1000, length_mm: 1000 }] };
    const stocked = (change: object): CutJob => ({ ...own, rolls: [{ ...own.rolls[0]!, ...change }] });
    expect(checkLayout(stocked({ stock: 1 }), cut(own)).faults.join()).toBe('row 0 is stock only, yet a roll of it is bought');
    expect(checkLayout(stocked({ stock: 1, price_cents: 10 }), cut(own)).faults).toEqual([]);
  });

  it('overlaps that are not beside each other in the list, and none where pieces touch', () => {
    const laid = (boxes: readonly (readonly [number, number])[]): CutResult => ({
      ...good, placements: boxes.map(([x_mm, y_mm], k): Placement => ({ piece: `q${String(k)}`, roll: 0, x_mm, y_mm, width_mm: 300, length_mm: 300, rotated: false })),
    });
    expect(faultsOf(laid([[0, 0], [300, 0], [600, 250], [0, 299]]))).toMatch(/q0 and q3 overlap/);
    expect(faultsOf(laid([[0, 0], [300, 0], [600, 0], [0, 300]]))).not.toMatch(/overlap/);
  });
});
