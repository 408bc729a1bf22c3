import { type CutPiece, inchesText, type LayoutCheck, type Placement, relay, type SiteRecord, ticksOf_mm } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import type { Plan } from '../plan/plan.js';
import type { FilmCut, PlacedPiece } from './cut-types.js';
import { pieceOf } from './cut-list.js';
import type { OpenedFilmRoll } from './cut-types.js';
import { inEnglish, told } from '../words/told.js';

/** A pane whose measured size differs from the survey. */
export interface ReMeasured {
  readonly pane: string;
  readonly dwelling: string;
  readonly planned: string;
  readonly needed: string;
  /** The piece as planned still covers the glass with trim to spare: it keeps its place. */
  readonly keeps: boolean;
}

/** A roll laid out again. */
export interface RelaidRoll {
  readonly phase: string;
  readonly film: string;
  readonly roll: string;
  /** Straight cut before which nothing moved. */
  readonly line_mm: number;
  readonly pieces: readonly PlacedPiece[];
  readonly moved: readonly string[];
  readonly left_mm: number;
  readonly check: LayoutCheck;
}

/** What field sizes make of the plan's rolls. */
export interface RelaidPlan {
  readonly plan: string;
  readonly measured: readonly ReMeasured[];
  readonly rolls: readonly RelaidRoll[];
  /** Panes no opened roll of the film holds any more. */
  readonly unplaced: readonly { readonly pane: string; readonly size: string; readonly why: string }[];
  /** Sizes of windows the plan does not cut. */
  readonly notInPlan: readonly string[];
}

export interface RelayRequest {
  readonly plan: Pick<Plan, 'id' | 'cuts' | 'terms' | 'films'>;
  readonly sizes: readonly SiteRecord[];
  /** How far each roll has been run off, mm; a roll not named is whole. */
  readonly cutTo_mm: ReadonlyMap<string, number>;
}

/** Film that must stand over the glass on each edge to be trimmed on the pane, 1/8 in: common practice, no source. */
const LEAST_TRIM_mm = 3.175;

const inches = (mm: number): string => inchesText(ticksOf_mm(mm));
const sizeOf = (p: { readonly width_mm: number; readonly length_mm: number }): string => `${inches(p.width_mm)} × ${inches(p.length_mm)}`;

/** The newest field size of each pane of the plan; a size of the window holds for all its panes. */
function sizesByPane(sizes: readonly SiteRecord[], pieces: readonly PlacedPiece[]): Map<string, SiteRecord> {
  const found = new Map<string, SiteRecord>();
  const told = sortedBy(sizes.filter((s) => s.kind === 'field-size' && s.window !== null), (s) => `${s.day}|${s.pane === null ? '0' : '1'}|${s.id}`);
  for (const size of told) for (const p of pieces) if (p.window === size.window && (size.pane === null || size.pane === p.paneNo)) found.set(p.piece, size);
  return found;
}

/** A planned piece with its own sides: as laid it may be turned. */
function ownSides(p: PlacedPiece): { readonly width_mm: number; readonly length_mm: number; readonly rotated: boolean } {
  const rotated = inches(p.width_mm) !== p.cutWidth;
  return rotated ? { width_mm: p.length_mm, length_mm: p.width_mm, rotated } : { width_mm: p.width_mm, length_mm: p.length_mm, rotated };
}

interface Change {
  readonly measured: ReMeasured;
  readonly piece: CutPiece;
}

function changeOf(p: PlacedPiece, size: SiteRecord, of: RelayRequest & { readonly mayRotate: boolean }): Change {
  const own = ownSides(p);
  // A side not measured stays as planned: its sight size is the finished size less the gaps, so the piece itself says what it needs.
  const sight = { width_mm: size.width?.mm ?? own.width_mm - 2 * of.plan.terms.trimPerEdge_mm, height_mm: size.height?.mm ?? own.length_mm - 2 * of.plan.terms.trimPerEdge_mm };
  const needed = pieceOf(sight, of.plan.terms);
  const covers = own.width_mm >= sight.width_mm + 2 * LEAST_TRIM_mm && own.length_mm >= sight.height_mm + 2 * LEAST_TRIM_mm;
  return {
    measured: { pane: p.piece, dwelling: p.dwelling, planned: sizeOf(own), needed: sizeOf(needed), keeps: covers },
    piece: { id: p.piece, width_mm: needed.width_mm, length_mm: needed.length_mm, count: 1, mayRotate: of.mayRotate },
  };
}

const placementOf = (p: PlacedPiece): Placement => ({ piece: p.piece, roll: 0, x_mm: p.x_mm, y_mm: p.y_mm, width_mm: p.width_mm, length_mm: p.length_mm, rotated: ownSides(p).rotated });

/** One film of one phase: rolls with changed pieces first, then ends of the other opened rolls for what no longer fits. */
function relaidCut(cut: FilmCut, changes: ReadonlyMap<string, Change>, of: RelayRequest & { readonly mayRotate: boolean }): { readonly rolls: RelaidRoll[]; readonly unplaced: RelaidPlan['unplaced'] } {
  const byPane = new Map(cut.pieces.map((p) => [p.piece, p]));
  const changed = [...changes.values()].filter((c) => !c.measured.keeps).map((c) => c.piece);
  const rolls = new Map<string, RelaidRoll>();
  let homeless: CutPiece[] = [];
  const lay = (roll: OpenedFilmRoll, pieces: readonly CutPiece[], at: { readonly from_mm: number; readonly dropped?: readonly string[] }): CutPiece[] => {
    const laid = (rolls.get(roll.roll)?.pieces ?? cut.pieces.filter((p) => p.roll === roll.roll)).map(placementOf);
    const result = relay(at.from_mm, { roll: { width_mm: roll.width_mm, length_mm: roll.length_mm, laid }, changed: pieces, dropped: at.dropped ?? [], mayRotate: of.mayRotate });
    const known = new Map([...changed.map((p): [string, CutPiece] => [p.id, p])]);
    const placed = result.placements.map((at): PlacedPiece => {
      const before = byPane.get(at.piece)!;
      const need = known.get(at.piece);
      const text = need === undefined ? {} : { cutWidth: inches(need.width_mm), cutLength: inches(need.length_mm) };
      return { ...before, ...text, roll: roll.roll, x_mm: at.x_mm, y_mm: at.y_mm, width_mm: at.width_mm, length_mm: at.length_mm };
    });
    rolls.set(roll.roll, { phase: cut.phase, film: cut.film, roll: roll.roll, line_mm: result.line_mm, pieces: placed, moved: result.moved, left_mm: result.leftLength_mm, check: result.check });
    const out = new Set(result.unplaced.map((u) => u.piece));
    return [...known.values(), ...cut.pieces.map((p): CutPiece => ({ id: p.piece, ...ownSides(p), count: 1, mayRotate: of.mayRotate }))].filter((p, i, all) => out.has(p.id) && all.findIndex((q) => q.id === p.id) === i);
  };
  for (const roll of cut.rolls) {
    const own = changed.filter((p) => byPane.get(p.id)?.roll === roll.roll);
    if (own.length === 0) continue;
    // What this roll can never hold leaves a hole; the others are not moved for it.
    const tooWide = own.filter((p) => (of.mayRotate ? Math.min(p.width_mm, p.length_mm) : p.width_mm) > roll.width_mm);
    homeless.push(...tooWide, ...lay(roll, own.filter((p) => !tooWide.includes(p)), { from_mm: of.cutTo_mm.get(roll.roll) ?? 0, dropped: tooWide.map((p) => p.id) }));
  }
  for (const roll of [...cut.rolls].sort((a, b) => b.left_mm - a.left_mm)) {
    if (homeless.length === 0) break;
    const end = Math.max(0, ...(rolls.get(roll.roll)?.pieces ?? cut.pieces.filter((p) => p.roll === roll.roll)).map((p) => p.y_mm + p.length_mm));
    const fitting = homeless.filter((p) => p.width_mm <= roll.width_mm && p.length_mm <= roll.length_mm - end);
    if (fitting.length === 0) continue;
    const out = new Set(lay(roll, fitting, { from_mm: Math.max(end, of.cutTo_mm.get(roll.roll) ?? 0) }).map((p) => p.id));
    homeless = homeless.filter((p) => !fitting.includes(p) || out.has(p.id));
  }
  return { rolls: [...rolls.values()], unplaced: homeless.map((p) => ({ pane: p.id, size: sizeOf(p), why: inEnglish(told('relay.noRoom')) })) };
}

/** Field sizes against the plan: pieces within the allowance keep their place, else the rest of the opened roll is laid out again. */
export function relayPlan(request: RelayRequest): RelaidPlan {
  const all = request.plan.cuts.flatMap((c) => c.pieces);
  const sizes = sizesByPane(request.sizes, all);
  const known = new Set(all.map((p) => p.window));
  const cuts = request.plan.cuts.map((cut) => {
    const mayRotate = request.plan.films.find((f) => f.film.id === cut.film)?.film.mayRotate ?? false;
    const of = { ...request, mayRotate };
    const changes = new Map(cut.pieces.flatMap((p): [string, Change][] => (sizes.has(p.piece) ? [[p.piece, changeOf(p, sizes.get(p.piece)!, of)]] : [])));
    return { changes, ...relaidCut(cut, changes, of) };
  });
  return {
    plan: request.plan.id,
    measured: cuts.flatMap((c) => [...c.changes.values()].map((x) => x.measured)),
    rolls: cuts.flatMap((c) => c.rolls),
    unplaced: cuts.flatMap((c) => c.unplaced),
    notInPlan: [...grouped(request.sizes.filter((s) => s.kind === 'field-size' && s.window !== null && !known.has(s.window)), (s) => s.window ?? '').keys()].sort(),
  };
}
