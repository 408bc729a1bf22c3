import type { Roll, SiteRecord } from '#calc';
import { optionWindow, planTermsOf } from '../../../../test/portfolios/film-option.js';
import type { Plan } from '../plan/plan.js';
import { cutFilm } from './cut-list.js';
import { relayPlan } from './relay-plan.js';

const inventoryRow = { file: 'sizes.csv', row: 2 };
const offer: Roll = { id: 'A-48', film: 'A', width: { entered: '48', mm: 1219.2 }, length_mm: 6_000, price_cents: 44_000, inStock: 0, lot: null, inventoryRow };
const windows = ['B1/1', 'B1/2', 'B1/3'].map((dwelling) => ({ dwelling, window: optionWindow({ window: `${dwelling}/W1` }) }));
const { cut } = cutFilm({ phase: 'P1', ownerEntity: 'O', film: 'A', mayRotate: false, windows, offers: [offer], stock: [], terms: planTermsOf(), widest_mm: null });
const plan = { id: 'p1', cuts: [cut], terms: planTermsOf(), films: [] } as unknown as Plan;
const size = (window: string, width_mm: number | null, height_mm: number | null): SiteRecord =>
  ({ id: window, day: '2026-08-04', kind: 'field-size', dwelling: null, window, pane: null, width: width_mm === null ? null : { entered: '', mm: width_mm }, height: height_mm === null ? null : { entered: '', mm: height_mm }, inventoryRow }) as unknown as SiteRecord;
const relaid = (sizes: SiteRecord[], cutTo_mm = new Map<string, number>()) => relayPlan({ plan, sizes, cutTo_mm });

describe('field sizes against the plan', () => {
  // Planned 900 × 1,200: cut 927.1 × 1,225.55. Glass up to 927.1 − 2 × 3.175 = 920.75 wide is still covered.
  it('a piece within the allowance keeps its place, and no roll is laid again', () => {
    const result = relaid([size('B1/1/W1', 920, 1_200)]);
    expect(result.measured).toMatchObject([{ pane: 'B1/1/W1/1', planned: '36 1/2 × 48 1/4', keeps: true }]);
    expect(result.rolls).toEqual([]);
    expect(relaid([size('B1/1/W1', 921, 1_200)]).measured[0]!.keeps).toBe(false);
  });

  // 1,000 × 1,300 needs 1,000 + 25.4 → 40 3/8 = 1,025.525 and 1,300 + 25.4 → 52 1/4 = 1,327.15: three shelves of 1,327.15 + 2 × 1,225.55.
  it('a larger pane is cut at its size and the rest of its roll laid again, checked', () => {
    const result = relaid([size('B1/2/W1', 1_000, 1_300)]);
    expect(result.measured[0]).toMatchObject({ needed: '40 3/8 × 52 1/4', keeps: false });
    const [roll] = result.rolls;
    expect(roll!.check).toEqual({ ok: true, faults: [] });
    expect(roll!.left_mm).toBeCloseTo(6_000 - 1327.15 - 2 * 1225.55, 6);
    expect(roll!.pieces.find((p) => p.piece === 'B1/2/W1/1')).toMatchObject({ cutWidth: '40 3/8', cutLength: '52 1/4' });
    expect(roll!.pieces.map((p) => p.piece).sort()).toEqual(['B1/1/W1/1', 'B1/2/W1/1', 'B1/3/W1/1']);
  });

  it('moves nothing that is cut', () => {
    const before = cut.pieces.find((p) => p.y_mm === 0)!;
    const later = cut.pieces.find((p) => p.y_mm > 2_000)!;
    const [roll] = relaid([size(later.window, 1_000, 1_300)], new Map([[cut.rolls[0]!.roll, 1_000]])).rolls;
    expect(roll!.line_mm).toBeCloseTo(1225.55, 6);
    expect(roll!.pieces.find((p) => p.piece === before.piece)).toEqual(before);
  });

  it('does not move the others for a pane its roll can never hold', () => {
    const result = relaid([size('B1/2/W1', 1_300, 1_200)]);
    expect(result.unplaced).toMatchObject([{ pane: 'B1/2/W1/1' }]);
    expect(result.rolls[0]).toMatchObject({ moved: [], check: { ok: true } });
  });

  it('names what no opened roll holds any more, and windows the plan does not cut', () => {
    expect(relaid([size('B1/2/W1', 1_000, 6_500)]).unplaced).toMatchObject([{ pane: 'B1/2/W1/1', size: '40 3/8 × 257' }]); // the roll is 236 in long
    // 4,000 mm of glass take 4,025.9 of the 6,000; of the two others one has room left.
    expect(relaid([size('B1/2/W1', 1_000, 4_000)]).unplaced).toMatchObject([{ size: '36 1/2 × 48 1/4' }]);
    expect(relaid([size('B1/9/W1', 900, 1_200)]).notInPlan).toEqual(['B1/9/W1']);
  });

  it('takes the side that was not measured as it was planned', () => expect(relaid([size('B1/1/W1', null, 1_300)]).measured[0]!.needed).toBe('36 1/2 × 52 1/4'));
});
