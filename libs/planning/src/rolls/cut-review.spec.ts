import type { Roll } from '#calc';
import { onePhase, optionWindow } from '../../../../test/portfolios/film-option.js';
import { type CutMade, cutFilm, type CutRequest } from './cut-list.js';
import { cutReviews } from './cut-review.js';
import type { PricedPhase } from './price-by-rolls.js';

const offer = (id: string, width: readonly [string, number], length_mm: number): Roll => ({ id, film: 'A', width: { entered: width[0], mm: width[1] }, length_mm, price_cents: 44_000, inStock: 0, lot: null, inventoryRow: { file: 'rolls.csv', row: 2 } });
const SHORT_48 = offer('A-48', ['48', 1219.2], 1_300);
const made = (change: Partial<CutRequest> = {}): CutMade =>
  cutFilm({
    phase: 'P1', ownerEntity: 'O', film: 'A', mayRotate: false, offers: [SHORT_48], stock: [], terms: { trimPerEdge_mm: 12.7, edgeGap_mm: 1.5875 }, widest_mm: null,
    // 22 3/4 × 48 1/4 in each: two lie side by side on 48 in, one after the other they are longer than a roll of 1,300 mm.
    windows: ['B1/1', 'B1/2'].map((dwelling) => ({ dwelling, window: optionWindow({ window: `${dwelling}/W1`, width_mm: 550 }) })),
    ...change,
  }).made;
const phase = (...all: CutMade[]): PricedPhase => ({ phase: onePhase(0), lines: [], visits: [], cuts: all.map((m) => m.cut), made: all, spending: null as never, over_cents: 0 });
const review = (change: Partial<CutRequest> = {}) => cutReviews([phase(made(change))]);

describe('what is said of a cut layout', () => {
  it('passes the independent check, and a tampered layout is an error', () => {
    expect(review()).toMatchObject({ reviews: [{ check: { ok: true, faults: [] } }], findings: [] });
    const good = made();
    const placements = good.result.placements.map((p) => ({ ...p, x_mm: 0 }));
    const { reviews, findings } = cutReviews([phase({ ...good, result: { ...good.result, placements } })]);
    expect(reviews[0]!.check.ok).toBe(false);
    expect(findings[0]).toMatchObject({ severity: 'error', subject: 'P1, film A' });
    expect(findings[0]!.text).toContain('overlap');
  });

  it('prices keeping dwellings together: one more roll of 440 dollars here, and none on a long roll', () => {
    expect(review().reviews[0]!.rules).toEqual([
      { rule: 'dwelling together', extraArea_m2: (1219.2 * 1300) / 1e6, extraCost_cents: 44_000, why: null },
      { rule: 'crew order', extraArea_m2: (1219.2 * 1300) / 1e6, extraCost_cents: 44_000, why: null },
    ]);
    expect(review({ offers: [{ ...SHORT_48, length_mm: 30_480 }] }).reviews[0]!.rules[0]).toMatchObject({ extraCost_cents: 0 });
  });

  it('keeps them together where that is asked: two rolls are bought', () => {
    expect(made({ rule: 'dwelling together' }).cut.bought).toMatchObject([{ count: 2, cost_cents: 88_000 }]);
    expect(review({ rule: 'dwelling together' }).reviews[0]).toMatchObject({ rule: 'dwelling together', check: { ok: true }, rules: [{ extraCost_cents: 44_000 }, {}] });
  });

  it('says by how much a pane misses the narrower roll', () => {
    const windows = [{ dwelling: 'B1/1', window: optionWindow({ paneCount: 3 }) }];
    const offers = [offer('A-36', ['36', 914.4], 30_480), { ...SHORT_48, length_mm: 30_480 }];
    expect(review({ windows, offers }).reviews[0]!.nearMisses).toEqual([{ size: '36 1/2 × 48 1/4', panes: 3, roll: '36', over: '1/2' }]);
  });

  it('keeps ends of two feet and more, and names the phase that cuts from them', () => {
    const long = { ...SHORT_48, length_mm: 30_480 };
    const first = made({ offers: [long] });
    const roll = first.cut.rolls[0]!;
    const second = made({ phase: 'P2', offers: [long], stock: [{ roll: roll.roll, film: 'A', width_mm: roll.width_mm, length_mm: roll.left_mm, lot: null }] });
    const { reviews } = cutReviews([phase(first), phase(second)]);
    // 100 ft less a shelf of 48 1/4 in.
    expect(reviews[0]!.offCuts).toEqual([{ roll: roll.roll, width_mm: 1219.2, length_mm: 30_480 - 1225.55, lot: 'order for P1', usedIn: 'P2' }]);
    expect(review().reviews[0]!.offCuts).toEqual([]); // 74 mm are left
  });

  const STOCK = [{ roll: 'S1', film: 'A', width_mm: 700, length_mm: 1_300, lot: 'L7' }];

  it('warns of an elevation cut from two lots where lots may be mixed, and says what keeping them apart costs', () => {
    const { reviews, findings } = review({ stock: STOCK, lots: 'any lot' });
    expect(reviews[0]).toMatchObject({ mixedLots: [{ elevation: 'B1 south', lots: ['L7', 'the new order'] }], oneLot: { rule: 'any lot', extraCost_cents: 0, extraArea_m2: 0 } });
    expect(findings).toMatchObject([{ severity: 'warning' }]);
    expect(findings[0]!.whatToDo).toContain('plan again with one lot a side');
  });

  it('mixes no lots otherwise: the stock holds one of the two panes, both come from the new roll', () => {
    const { reviews, findings } = review({ stock: STOCK });
    expect(reviews[0]).toMatchObject({ mixedLots: [], check: { ok: true }, oneLot: { rule: 'one lot an elevation', extraCost_cents: 0, extraArea_m2: 0, why: null } });
    expect(findings).toEqual([]);
    expect(made({ stock: STOCK }).cut).toMatchObject({ fromStock: [], bought: [{ count: 1 }] });
  });

  it('states the price of one lot: stock that would hold one of two panes stays, and a second roll is bought', () => {
    // Panes of 46 3/4 × 48 1/4 in: one on the part roll, one on each roll of 1,300 mm.
    const windows = ['B1/1', 'B1/2'].map((dwelling) => ({ dwelling, window: optionWindow({ window: `${dwelling}/W1`, width_mm: 1_160 }) }));
    const stock = [{ ...STOCK[0]!, width_mm: 1219.2 }];
    const extra = { extraCost_cents: 44_000, extraArea_m2: (1219.2 * 1300) / 1e6 };
    expect(made({ windows, stock, lots: 'any lot' }).cut.cost_cents).toBe(44_000);
    expect(review({ windows, stock }).reviews[0]!.oneLot).toMatchObject({ rule: 'one lot an elevation', ...extra });
    expect(review({ windows, stock, lots: 'any lot' }).reviews[0]!.oneLot).toMatchObject({ rule: 'any lot', ...extra });
  });

  it('cuts the sides of one building from lots of their own', () => {
    const side = (azimuth_deg: number) => ({ dwelling: 'B1/1', window: optionWindow({ window: `B1/1/${String(azimuth_deg)}`, width_mm: 550, azimuth_deg }) });
    const { cut } = made({ windows: [side(180), side(270)], stock: STOCK });
    const lotOf = (window: string): (string | null | undefined)[] => cut.pieces.filter((p) => p.window === window).map((p) => cut.rolls.find((r) => r.roll === p.roll)?.lot);
    expect([lotOf('B1/1/180'), lotOf('B1/1/270')].flat().sort()).toEqual(['L7', 'order for P1']);
  });

  it('warns where one lot cannot be had: a pane that only the stock is wide enough for', () => {
    const windows = [1_300, 550].map((width_mm) => ({ dwelling: 'B1/1', window: optionWindow({ window: `B1/1/${String(width_mm)}`, width_mm }) }));
    const { findings } = review({ windows, stock: [{ ...STOCK[0]!, width_mm: 1_400 }] });
    expect(findings).toMatchObject([{ severity: 'warning', text: expect.stringContaining('B1 south side is cut from more than one lot (L7; the new order)') as string, whatToDo: expect.stringContaining('no one lot holds all its panes') as string }]);
  });

  it('says of a side begun from another lot in an earlier phase, and not of one that goes on with it', () => {
    const long = { ...SHORT_48, length_mm: 30_480 };
    const first = made({ offers: [long] });
    const left = first.cut.rolls.map((r) => ({ roll: r.roll, film: 'A', width_mm: r.width_mm, length_mm: r.left_mm, lot: r.lot }));
    expect(left[0]!.lot).toBe('order for P1');
    const notes = (stock: CutRequest['stock']): string[] => cutReviews([phase(first), phase(made({ phase: 'P2', offers: [long], stock }))]).findings.map((f) => `${f.severity}: ${f.text}`);
    expect(notes([])).toEqual(['note: begun in an earlier phase from another lot: B1 south (order for P1)']);
    expect(notes(left)).toEqual([]);
  });
});
