import type { Block, Laid, Rect } from './block.js';
import { SAME_ticks, type ReadyJob } from './ready-job.js';

/** A strip being filled: pieces in order of type, on one offer. */
export interface StripStart {
  readonly order: Int32Array;
  readonly offer: number;
  /** By place in the order: 1 where the piece, laid at the open end, starts a column of its own instead of a shelf; default shelves only. */
  readonly columns?: Uint8Array;
}

/** A filled strip; `sunk` is the mean height of its film, by which equal lengths are told apart. */
export interface Strip {
  readonly block: Block;
  readonly sunk: number;
}

const OPEN = 1e15;

/**
 * Fills one stretch of a roll by straight cuts: each piece in turn goes to the free rectangle that leaves the shortest side over; only
 * when none holds it the stretch grows.
 */
export class StripFill {
  private readonly liesOf: readonly (readonly number[])[];
  private x = new Float64Array(64);
  private y = new Float64Array(64);
  private w = new Float64Array(64);
  private h = new Float64Array(64);
  private size = 0;

  constructor(private readonly ready: ReadyJob) {
    this.liesOf = ready.types.map((_, t) => ready.lies.flatMap((lie, k) => (lie.type === t ? [k] : [])));
  }

  /** The strip, or null where a piece does not fit the offer or the strip gets longer than its roll. */
  fill(start: StripStart): Strip | null {
    const offer = this.ready.offers[start.offer]!;
    this.size = 0;
    this.push({ x: 0, y: 0, w: offer.width, h: OPEN });
    const laid: Laid[] = [];
    let length = 0;
    let moment = 0;
    let area = 0;
    for (let n = 0; n < start.order.length; n++) {
      const found = this.place(start.order[n]!, start.columns?.[n] === 1);
      if (found === null) return null;
      laid.push(found);
      const lie = this.ready.lies[found.lie]!;
      length = Math.max(length, found.y + lie.along);
      area += lie.across * lie.along;
      moment += lie.across * lie.along * (found.y + lie.along / 2);
      if (length > offer.length + SAME_ticks) return null;
    }
    return { block: { offer: start.offer, length, laid }, sunk: area > 0 ? moment / area : 0 };
  }

  private place(type: number, isColumn: boolean): Laid | null {
    let bestRect = -1;
    let bestLie = -1;
    let least = Infinity;
    for (const k of this.liesOf[type]!) {
      const { across, along } = this.ready.lies[k]!;
      for (let r = 0; r < this.size; r++) {
        const right = this.w[r]! - across;
        const above = this.h[r]! - along;
        if (right < -SAME_ticks || above < -SAME_ticks) continue;
        // The open end comes last; there the way round and the column that end lowest are better.
        const over = above > OPEN / 2 ? OPEN + this.y[r]! + along : Math.min(right, above);
        if (over < least) {
          least = over;
          bestRect = r;
          bestLie = k;
        }
      }
    }
    if (bestRect < 0) return null;
    const at = { lie: bestLie, x: this.x[bestRect]!, y: this.y[bestRect]! };
    this.split(bestRect, this.ready.lies[bestLie]!, isColumn);
    return at;
  }

  private split(r: number, lie: { readonly across: number; readonly along: number }, isColumn: boolean): void {
    const x = this.x[r]!;
    const y = this.y[r]!;
    const w = this.w[r]!;
    const h = this.h[r]!;
    const right = w - lie.across;
    const above = h - lie.along;
    const straightAcross = h > OPEN / 2 ? !isColumn : right <= above;
    this.size--;
    this.x[r] = this.x[this.size]!;
    this.y[r] = this.y[this.size]!;
    this.w[r] = this.w[this.size]!;
    this.h[r] = this.h[this.size]!;
    this.push({ x: x + lie.across, y, w: right, h: straightAcross ? lie.along : h });
    this.push({ x, y: y + lie.along, w: straightAcross ? w : lie.across, h: h > OPEN / 2 ? OPEN : above });
  }

  private push({ x, y, w, h }: Rect): void {
    if (w <= SAME_ticks || h <= SAME_ticks) return;
    if (this.size === this.x.length) this.grow();
    this.x[this.size] = x;
    this.y[this.size] = y;
    this.w[this.size] = w;
    this.h[this.size] = h;
    this.size++;
  }

  private grow(): void {
    const twice = (old: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> => {
      const more = new Float64Array(2 * old.length);
      more.set(old);
      return more;
    };
    this.x = twice(this.x);
    this.y = twice(this.y);
    this.w = twice(this.w);
    this.h = twice(this.h);
  }
}
