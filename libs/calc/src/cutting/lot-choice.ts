import type { CutJob } from './job.js';
import { type Elevation, fitsOne, type LayJob, type Lot } from './lot-shop.js';

/** Which elevations are cut from which lot in stock; those not named are cut from what is bought. */
export type LotChoice = ReadonlyMap<Elevation, Lot>;

/** What choices are made of. */
export interface LotShop {
  readonly job: CutJob;
  readonly lay: LayJob;
  readonly lots: readonly Lot[];
  readonly elevations: readonly Elevation[];
  /** Area the free cutting takes from stock, by name of elevation. */
  readonly freelyFromStock_mm2: ReadonlyMap<string, number>;
}

/** Rounds of the search that tells whether a lot holds some elevations. */
export const TEST_ROUNDS = 40;
/** Tests over all choices of one job: a set number, so that the same job gives the same choice on every machine. */
const MOST_TESTS = 80;
/** Parts of a lot's area tried for whole elevations, until its rolls really hold them. */
const SHARES = [1, 0.93, 0.86, 0.75, 0.6, 0.45, 0.3];
/** Elevations tried one by one for what is left of a lot. */
const MOST_MORE = 4;

type Take = (from: readonly Elevation[], room_mm2: number) => Elevation[];

/** In the order given, each that still has room by area. */
const inTurn = (order: (a: Elevation, b: Elevation) => number): Take => (from, room_mm2) => {
  let room = room_mm2;
  return [...from].sort((a, b) => Number(a.canBeBought) - Number(b.canBeBought) || order(a, b) || (a.name < b.name ? -1 : 1)).filter((e) => {
    if (e.area_mm2 > room) return false;
    room -= e.area_mm2;
    return true;
  });
};

const CELLS = 500;

/** The elevations that together come closest to the room from below. */
const fullest: Take = (from, room_mm2) => {
  const cells = from.map((e) => Math.ceil((e.area_mm2 / room_mm2) * CELLS));
  const by = new Int32Array(CELLS + 1).fill(-1);
  const reached = new Uint8Array(CELLS + 1);
  reached[0] = 1;
  cells.forEach((need, n) => {
    for (let x = CELLS; x >= need; x--) {
      if (reached[x] === 1 || reached[x - need] === 0) continue;
      reached[x] = 1;
      by[x] = n;
    }
  });
  const taken: Elevation[] = [];
  for (let x = reached.lastIndexOf(1); x > 0; x -= cells[by[x]!]!) taken.push(from[by[x]!]!);
  return taken;
};

/** Several ways to give whole elevations to the lots in stock, each held by the lot's rolls as really cut and found when it is asked for; the last takes nothing from stock. */
export function* lotChoices(shop: LotShop): Generator<LotChoice, void, undefined> {
  const tests = { left: MOST_TESTS };
  const freely = (e: Elevation): number => (shop.freelyFromStock_mm2.get(e.name) ?? 0) / e.area_mm2;
  const ways: Take[] = [inTurn((a, b) => freely(b) - freely(a) || b.area_mm2 - a.area_mm2), fullest, inTurn((a, b) => b.area_mm2 - a.area_mm2), inTurn((a, b) => a.area_mm2 - b.area_mm2)];
  const bySize = [...shop.lots].sort((a, b) => a.area_mm2 - b.area_mm2);
  const seen = new Set<string>();
  for (const take of ways) {
    for (const lots of [bySize.toReversed(), bySize]) {
      const choice = choiceOf(shop, { lots, take, tests });
      const key = [...choice].map(([e, lot]) => `${e.name}>${lot.name}`).sort().join('|');
      if (key === '' || seen.has(key)) continue;
      seen.add(key);
      yield choice;
    }
  }
  yield new Map();
}

function choiceOf(shop: LotShop, of: { readonly lots: readonly Lot[]; readonly take: Take; readonly tests: { left: number } }): LotChoice {
  const choice = new Map<Elevation, Lot>();
  for (const lot of of.lots) {
    const able = shop.elevations.filter((e) => !choice.has(e) && e.area_mm2 <= lot.area_mm2 && e.pieces.every((p) => fitsOne(p, lot.rolls)));
    for (const elevation of heldBy(shop, { lot, able, take: of.take, tests: of.tests })) choice.set(elevation, lot);
  }
  return choice;
}

/** As many of the able elevations as the lot's rolls hold when they are really cut. */
function heldBy(shop: LotShop, of: { readonly lot: Lot; readonly able: readonly Elevation[]; readonly take: Take; readonly tests: { left: number } }): Elevation[] {
  const { lot, able, tests } = of;
  const holds = (some: readonly Elevation[]): boolean => {
    tests.left--;
    return shop.lay({ ...shop.job, pieces: some.flatMap((e) => e.pieces), rolls: lot.rolls, rounds: TEST_ROUNDS, bounds: false }).unplaced.length === 0;
  };
  let held: Elevation[] = [];
  let before = '';
  for (const share of SHARES) {
    const some = of.take(able, lot.area_mm2 * share);
    const key = some.map((e) => e.name).join('|');
    if (some.length === 0 || tests.left <= 0) break;
    if (key === before) continue;
    before = key;
    if (holds(some)) {
      held = some;
      break;
    }
  }
  const room = (): number => lot.area_mm2 - held.reduce((sum, e) => sum + e.area_mm2, 0);
  const more = able.filter((e) => !held.includes(e)).sort((a, b) => b.area_mm2 - a.area_mm2 || (a.name < b.name ? -1 : 1)).filter((e) => e.area_mm2 <= room());
  for (const e of more.slice(0, MOST_MORE)) if (tests.left > 0 && e.area_mm2 <= room() && holds([...held, e])) held = [...held, e];
  return held;
}
