import { cut } from './cut.js';
import type { CutJob, CutPiece, CutResult, Placement, UsedRoll } from './job.js';
import { fineTicks, readyJob, SAME_ticks, type Offer, type ReadyJob } from './ready-job.js';
import { totalsOf } from './result.js';

/** A job whose pieces belong to groups (dwellings, visits) that stay on one stretch of one roll each. */
export interface TogetherJob extends CutJob {
  /** Group of each piece by piece id; a piece without one is a group of its own. */
  readonly groupOf: Readonly<Record<string, string>>;
  /** Groups in the order the crew works; rolls are then filled in this order, groups not named last. */
  readonly crewOrder?: readonly string[] | undefined;
}

/** The layout by groups and what the rule costs against cutting all pieces together. */
export interface TogetherResult extends CutResult {
  readonly pooledArea_mm2: number;
  /** More film than the pooled layout; below 0 where the search was luckier with groups. */
  readonly extraArea_mm2: number;
  readonly extraCost_cents: number | null;
}

/**
 * Cuts each group on one stretch of one roll, and says what that rule costs in film.
 *
 *   extra = bought with groups together − bought with all pieces pooled
 *
 * @param job pieces, rolls, the group of each piece, and the crew's order if rolls are to follow it
 * @returns a layout as of `cut`, each group's pieces one after the other along its roll, with the price of the rule
 * @throws RangeError as `cut`
 */
export function cutTogether(job: TogetherJob): TogetherResult {
  const pooled = cut(job);
  const ready = readyJob(job);
  const groups = groupsOf(job, new Set(pooled.unplaced.map((each) => each.piece)));
  const bench = new Bench(job, ready);
  const stretches = groups.map((pieces) => bench.stretches(pieces));
  // Without an order the longest stretches go first, so that short ones fill the ends.
  if (job.crewOrder === undefined) stretches.sort((a, b) => longest(b) - longest(a));
  for (const each of stretches) bench.lay(each);
  const { rolls, placements, unplaced } = bench.finished();
  const bounds = { area_mm2: unplaced.length === 0 ? pooled.lowerBoundArea_mm2 : 0, cost_cents: unplaced.length === 0 ? pooled.lowerBoundCost_cents : null };
  const totals = totalsOf(job, ready, { rolls, placements, bounds });
  return {
    placements,
    rolls,
    ...totals,
    unplaced: [...pooled.unplaced, ...unplaced],
    pooledArea_mm2: pooled.boughtArea_mm2,
    extraArea_mm2: totals.boughtArea_mm2 - pooled.boughtArea_mm2,
    extraCost_cents: totals.cost_cents === null || pooled.cost_cents === null ? null : totals.cost_cents - pooled.cost_cents,
  };
}

/** One group laid on one kind of roll. */
interface Stretch {
  readonly offer: number;
  readonly length: number;
  readonly placements: readonly Placement[];
  readonly pieces: readonly CutPiece[];
}

const longest = (stretches: readonly Stretch[]): number => Math.max(0, ...stretches.map((each) => each.length));

function groupsOf(job: TogetherJob, out: ReadonlySet<string>): CutPiece[][] {
  const groups = new Map<string, CutPiece[]>();
  for (const piece of [...job.pieces].sort((a, b) => (a.id < b.id ? -1 : 1))) {
    if (out.has(piece.id) || piece.count === 0) continue;
    const group = job.groupOf[piece.id] ?? `piece ${piece.id}`;
    groups.set(group, [...(groups.get(group) ?? []), piece]);
  }
  const place = new Map((job.crewOrder ?? []).map((group, n) => [group, n]));
  const placeOf = (group: string): number => place.get(group) ?? Infinity;
  const names = [...groups.keys()].sort((a, b) => (placeOf(a) === placeOf(b) ? (a < b ? -1 : 1) : placeOf(a) - placeOf(b)));
  return names.map((name) => groups.get(name)!);
}

interface OpenRoll {
  readonly offer: number;
  running: number;
  readonly stretches: Stretch[];
}

/** Rolls being filled group by group. */
class Bench {
  private readonly open: OpenRoll[] = [];
  private readonly short: CutPiece[] = [];
  private readonly known = new Map<string, CutResult>();

  constructor(
    private readonly job: TogetherJob,
    private readonly ready: ReadyJob,
  ) {}

  /** The group on each kind of roll that can hold all of it. */
  stretches(pieces: readonly CutPiece[]): Stretch[] {
    return this.ready.offers.flatMap((offer, o) => {
      const laid = this.laid(pieces, offer);
      const length = laid.rolls[0] === undefined ? 0 : fineTicks(laid.rolls[0].runningLength_mm) + this.ready.kerf;
      if (laid.unplaced.length > 0 || length > offer.length + SAME_ticks) return [];
      const named = new Map(pieces.map((piece, n) => [String(n), piece.id]));
      return [{ offer: o, length, pieces, placements: laid.placements.map((at) => ({ ...at, piece: named.get(at.piece)! })) }];
    });
  }

  lay(stretches: readonly Stretch[]): void {
    const ways = stretches.flatMap((stretch) => this.wayOf(stretch));
    ways.sort((a, b) => a.cost - b.cost || a.room - b.room);
    const way = ways[0];
    if (way === undefined) {
      this.short.push(...(stretches[0]?.pieces ?? []));
      return;
    }
    if (!this.open.includes(way.roll)) this.open.push(way.roll);
    way.roll.stretches.push(way.stretch);
    way.roll.running += way.stretch.length;
  }

  finished(): { rolls: UsedRoll[]; placements: Placement[]; unplaced: { piece: string; count: number; why: string }[] } {
    const placements: Placement[] = [];
    const rolls = this.open.map((roll, index) => {
      let along = 0;
      for (const stretch of roll.stretches) {
        for (const at of stretch.placements) placements.push({ ...at, roll: index, y_mm: at.y_mm + along / 320 });
        along += stretch.length;
      }
      return this.usedRoll(roll);
    });
    return { rolls, placements, unplaced: this.short.map((piece) => ({ piece: piece.id, count: piece.count, why: 'no roll holds its whole group on one stretch' })) };
  }

  private laid(pieces: readonly CutPiece[], offer: Offer): CutResult {
    const width_mm = this.job.rolls[offer.row]!.width_mm;
    const key = `${width_mm}|${pieces.map((p) => `${p.width_mm} ${p.length_mm} ${p.count} ${p.mayRotate ? 1 : 0}`).join('|')}`;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const own = pieces.map((piece, n) => ({ ...piece, id: String(n) }));
    const result = cut({ pieces: own, rolls: [{ width_mm }], kerf_mm: this.job.kerf_mm, seed: this.job.seed, rounds: Math.min(this.job.rounds ?? 100, 100), bounds: false });
    this.known.set(key, result);
    return result;
  }

  /** Where a stretch can go: the open roll with least room that holds it, in crew order only the last one of its kind, or a new roll. */
  private wayOf(stretch: Stretch): { stretch: Stretch; roll: OpenRoll; cost: number; room: number }[] {
    const offer = this.ready.offers[stretch.offer]!;
    const own = this.open.filter((roll) => roll.offer === stretch.offer);
    const tried = this.job.crewOrder === undefined ? own : own.slice(-1);
    const fits = tried.filter((roll) => roll.running + stretch.length <= offer.length + SAME_ticks);
    fits.sort((a, b) => b.running - a.running);
    const roll = fits[0] ?? (own.length < offer.supply ? { offer: stretch.offer, running: 0, stretches: [] } : null);
    if (roll === null) return [];
    return [{ stretch, roll, cost: offer.rate * stretch.length, room: offer.length - roll.running - stretch.length }];
  }

  private usedRoll(roll: OpenRoll): UsedRoll {
    const offer = this.ready.offers[roll.offer]!;
    const row = this.job.rolls[offer.row]!;
    const runningLength_mm = Math.max(0, roll.running - this.ready.kerf) / 320;
    const length_mm = row.length_mm ?? null;
    const boughtLength_mm = offer.stock ? 0 : (length_mm ?? runningLength_mm);
    const leftLength_mm = length_mm === null ? 0 : Math.max(0, length_mm - roll.running / 320);
    return { offer: offer.row, width_mm: row.width_mm, length_mm, source: offer.stock ? 'stock' : 'bought', runningLength_mm, boughtLength_mm, leftLength_mm };
  }
}
