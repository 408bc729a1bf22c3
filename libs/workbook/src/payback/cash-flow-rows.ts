import type { Plan } from '#planning';
import { costOf } from './lines-sheet.js';
import { type MoneyModel, type PhaseMoney, takenOff, toCent } from './money-model.js';
import { spentInPhase } from './phase-spending.js';

/** What a row of the cash flow holds. */
export type FlowKind = 'film work' | 'belongs to the phase' | 'rebates' | 'saving' | 'taking film off';

/** One stream of money: whose it is, where it comes from, and what it comes to by year of the study at the plan's own inputs. */
export interface FlowRow {
  readonly kind: FlowKind;
  readonly ownerEntity: string;
  readonly phase: PhaseMoney;
  /** Row of the phase in the spending table, from 0. */
  readonly phaseAt: number;
  /** Empty where it belongs to the phase and not to a building. */
  readonly building: string;
  readonly payer: 'owner' | 'tenants';
  readonly now: readonly number[];
  /** Years in which film comes off; absent for what is no taking off. */
  readonly endYears?: ReadonlySet<number>;
}

type Place = Pick<FlowRow, 'ownerEntity' | 'phase' | 'phaseAt'>;

function buildingRows(model: MoneyModel, at: Place & { readonly building: string }): FlowRow[] {
  const { phase, building } = at;
  const mine = model.lines.filter((l) => l.line.phase === phase.result.phase.id && l.line.building === building);
  const inYear = (amount: number): number[] => model.years.map((y) => (y === phase.workYear ? amount : 0));
  const effect = model.effect.get(phase.workYear);
  const saved = (part: (l: (typeof mine)[number], y: number) => number): number[] => model.years.map((y) => toCent(mine.reduce((sum, l) => sum + part(l, y), 0) * (effect?.[y] ?? 0) * model.price[y]!));
  const given = model.rebates.reduce((sum, r) => sum + (r.rebate.phase === phase.result.phase.id && r.rebate.building === building ? r.amount : 0), 0);
  const ends = new Set(mine.flatMap((l) => (l.filmAtEnd_m2 > 0 ? [l.endYear] : [])));
  return [
    { ...at, kind: 'film work', payer: 'owner', now: inYear(-1 * mine.reduce((sum, l) => sum + costOf(l, model), 0)) },
    ...(model.rebates.length > 0 ? [{ ...at, kind: 'rebates', payer: 'owner', now: inYear(given) } satisfies FlowRow] : []),
    { ...at, kind: 'saving', payer: 'owner', now: saved((l, y) => l.owner[y] ?? 0) },
    { ...at, kind: 'saving', payer: 'tenants', now: saved((l, y) => (l.whole[y] ?? 0) - (l.owner[y] ?? 0)) },
    ...(ends.size > 0 ? [{ ...at, kind: 'taking film off', payer: 'owner', endYears: ends, now: model.years.map((y) => -1 * takenOff(mine, y, model.inputs.endRemoval)) } satisfies FlowRow] : []),
  ];
}

/** Every stream of the plan's money by owner entity, phase, building and payer. */
export function flowRows(plan: Plan, model: MoneyModel): FlowRow[] {
  return model.phases.flatMap((phase, phaseAt): FlowRow[] => {
    const place: Place = { ownerEntity: phase.result.phase.ownerEntity, phase, phaseAt };
    const buildings = [...new Set(plan.lines.filter((l) => l.phase === phase.result.phase.id).map((l) => l.building))].sort();
    const work = model.lines.reduce((sum, l) => sum + (l.line.phase === phase.result.phase.id ? costOf(l, model) : 0), 0);
    const rest = work - spentInPhase(phase, model);
    if (buildings.length === 0 && Math.abs(rest) < 0.005) return [];
    return [...buildings.flatMap((building) => buildingRows(model, { ...place, building })), { ...place, kind: 'belongs to the phase', building: '', payer: 'owner', now: model.years.map((y) => (y === phase.workYear ? rest : 0)) }];
  });
}
