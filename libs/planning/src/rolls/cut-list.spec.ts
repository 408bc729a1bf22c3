import type { Roll } from '#calc';
import { optionWindow } from '../../../../test/portfolios/film-option.js';
import { cutFilm, type CutRequest } from './cut-list.js';

const offer: Roll = { id: 'A-48', film: 'A', width: { entered: '48', mm: 1219.2 }, length_mm: 30_480, price_cents: 44_000, inStock: 0, lot: null, inventoryRow: { file: 'rolls.csv', row: 2 } };
const request = (change: Partial<CutRequest> = {}): CutRequest => ({
  phase: 'P1',
  ownerEntity: 'O',
  film: 'A',
  mayRotate: false,
  windows: [
    { dwelling: 'B1/1', window: optionWindow({ window: 'B1/1/W1', paneCount: 2 }) },
    { dwelling: 'B1/2', window: optionWindow({ window: 'B1/2/W1', width_mm: 600, height_mm: 800 }) },
  ],
  offers: [offer],
  stock: [],
  terms: { trimPerEdge_mm: 12.7, edgeGap_mm: 1.5875 },
  widest_mm: null,
  ...change,
});
const PANES = ['B1/1/W1/1', 'B1/1/W1/2', 'B1/2/W1/1'];

describe('the cut list of one film in one phase', () => {
  it('holds every pane exactly once', () => {
    const { cut } = cutFilm(request());
    expect(cut.pieces.map((p) => p.piece).sort()).toEqual(PANES);
    expect(cut.unplaced).toEqual([]);
  });

  it('buys whole rolls and says what they cost', () => {
    expect(cutFilm(request()).cut).toMatchObject({ cost_cents: 44_000, bought: [{ roll: 'A-48', count: 1, cost_cents: 44_000 }] });
  });

  it('takes stock first, and buys nothing where it is enough', () => {
    const { cut } = cutFilm(request({ stock: [{ roll: 'S1', film: 'A', width_mm: 1219.2, length_mm: 6_000, lot: 'L7' }] }));
    expect(cut.pieces.map((p) => p.piece).sort()).toEqual(PANES);
    expect(new Set(cut.pieces.map((p) => p.roll))).toEqual(new Set(['S1']));
    expect(cut).toMatchObject({ cost_cents: 0, bought: [] });
  });

  it('hands on what is left of a bought roll, shorter by what was cut', () => {
    const { stockAfter } = cutFilm(request());
    expect(stockAfter).toHaveLength(1);
    expect(stockAfter[0]!.length_mm).toBeLessThan(30_480 - 1_000);
    expect(stockAfter[0]!.length_mm).toBeGreaterThan(27_000);
  });

  it('leaves stock it did not touch as it was', () => {
    const narrow = { roll: 'S0', film: 'A', width_mm: 300, length_mm: 5_000, lot: null };
    expect(cutFilm(request({ stock: [narrow] })).stockAfter).toContainEqual(narrow);
  });

  it('takes no roll wider than gets into the building', () => {
    const wide: Roll = { ...offer, id: 'A-60', width: { entered: '60', mm: 1524 }, price_cents: 100 };
    expect(cutFilm(request({ offers: [offer, wide], widest_mm: 1219.2 })).cut.bought.map((b) => b.roll)).toEqual(['A-48']);
  });

  it('says which pane fits no roll, and never leaves one out in silence', () => {
    const { cut } = cutFilm(request({ windows: [{ dwelling: 'B1/1', window: optionWindow({ width_mm: 1_500, height_mm: 1_500 }) }] }));
    expect(cut.pieces).toEqual([]);
    expect(cut.unplaced).toHaveLength(1);
    expect(cut.unplaced[0]!.why).not.toBe('');
  });

  it('calls the rolls bought for a phase one lot, told apart from ends of an earlier order for it', () => {
    const lots = (stock: CutRequest['stock']): (string | null)[] => cutFilm(request({ stock })).cut.rolls.map((r) => r.lot);
    expect(lots([])).toEqual(['order for P1']);
    expect(lots([{ roll: 'S1', film: 'A', width_mm: 300, length_mm: 500, lot: 'order for P1' }])).toEqual(['order for P1, 2']);
    expect(cutFilm(request()).stockAfter[0]!.lot).toBe('order for P1');
  });

  it('cuts ends of one earlier order as one lot: both panes of a side, one from each end', () => {
    // Cut 36 1/2 in wide and 48 1/4 in long: each end holds one.
    const end = (roll: string, lot: string | null) => ({ roll, film: 'A', width_mm: 1219.2, length_mm: 1_300, lot });
    const windows = [{ dwelling: 'B1/1', window: optionWindow({ window: 'B1/1/W1', paneCount: 2 }) }];
    expect(cutFilm(request({ windows, stock: [end('E1', 'order for P0'), end('E2', 'order for P0')] })).cut).toMatchObject({ cost_cents: 0, fromStock: [{ roll: 'E1' }, { roll: 'E2' }] });
    expect(cutFilm(request({ windows, stock: [end('E1', null), end('E2', null)] })).cut).toMatchObject({ cost_cents: 44_000, fromStock: [] });
    expect(cutFilm(request({ windows, stock: [end('E1', null), end('E2', null)], lots: 'any lot' })).cut).toMatchObject({ cost_cents: 0 });
  });
});
