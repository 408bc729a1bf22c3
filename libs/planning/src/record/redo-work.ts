import { type Building, type Consent, installMinutes, labour_cents, type Phase, type SiteRecord, type TimeModel } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import type { OptionWindow } from '../options/option.js';
import type { PlanTerms } from '../plan/terms.js';
import { contractorPrice_cents_m2 } from '../options/installed-cost.js';
import type { RedoPane, RedoWork } from './settled-work.js';

/** Panes to be done again, with the window each is of. */
export interface RedoPaneOf extends RedoPane {
  readonly building: string;
  readonly ownerEntity: string;
  readonly of: OptionWindow;
}

export interface RedoRequest {
  readonly panes: readonly RedoPaneOf[];
  readonly records: readonly SiteRecord[];
  readonly consents: readonly Consent[];
  readonly phases: readonly Phase[];
  readonly timeModel: TimeModel;
  readonly terms: PlanTerms;
  /** Buildings of the panes; one a contractor works in is priced at his terms. */
  readonly buildings?: readonly Building[];
  /** A contractor puts right its own faulty panes at no charge for the work; true where it is left out. */
  readonly contractorMakesGood?: boolean;
  /** ISO date. */
  readonly asOf: string;
}

/** A pane that broke takes film once its new glass is there. */
type Glass = 'there' | 'waits' | { readonly from: string };

/**
 * When the new glass of a broken pane is there: the day its size was measured after the break, else the date of a letter on the window that
 * speaks of glass, else nobody knows.
 */
function glassOf(pane: RedoPaneOf, of: Pick<RedoRequest, 'records' | 'consents'>): Glass {
  if (pane.why !== 'broken pane') return 'there';
  const broke = pane.day ?? '';
  const measured = of.records.filter((r) => r.kind === 'field-size' && r.window === pane.window && r.day >= broke && (r.pane === null || `${pane.window}/${String(r.pane)}` === pane.pane)).map((r) => r.day);
  const promised = of.consents.filter((c) => c.window === pane.window && c.date !== null && c.date >= broke && c.state !== 'refused' && /glass|pane/i.test(c.kind)).map((c) => c.date ?? '');
  const from = measured.sort()[0] ?? promised.sort().at(-1);
  return from === undefined ? 'waits' : { from };
}

/** The year the work falls in: that of the line while it lasts, else the owner's next one; null where there is none. */
function phaseFor(pane: RedoPaneOf, from: string, phases: readonly Phase[]): string | null {
  const own = sortedBy(phases.filter((p) => p.ownerEntity === pane.ownerEntity && p.lastDay >= from), (p) => p.firstDay);
  return (own.find((p) => p.id === pane.phase) ?? own[0])?.id ?? null;
}

/** Work at the panes of one dwelling that can be done on one visit. */
function workOf(panes: readonly RedoPaneOf[], glass: Glass, of: RedoRequest): RedoWork {
  const { terms } = of;
  const first = panes[0]!;
  const from = typeof glass === 'object' && glass.from > of.asOf ? glass.from : of.asOf;
  const byWindow = grouped(panes, (p) => `${p.window}|${p.why}`);
  const work = [...byWindow.values()].map((same) => {
    const { width_mm, height_mm, reach, existingFilm } = same[0]!.of;
    // A pane with a fault has its own film to be taken off; new glass has none.
    const hasOldFilm = same[0]!.why === 'defect' || (same[0]!.why === 'not reached' && existingFilm);
    return { count: same.length, area_m2: (width_mm * height_mm) / 1e6, reach: reach as 'floor' | 'ladder' | 'over-furniture', hasOldFilm, isDefect: same[0]!.why === 'defect' };
  });
  const { low, best, high } = installMinutes({ panes: work }, of.timeModel);
  const areaOf = (panes: readonly (typeof work)[number][]): number => panes.reduce((sum, w) => sum + w.count * w.area_m2, 0);
  const price_cents_m2 = contractorPrice_cents_m2(of.buildings?.find((b) => b.id === first.building));
  const charged = of.contractorMakesGood === false ? work : work.filter((w) => !w.isDefect);
  const own_cents = terms.labourIsCash ? labour_cents(best, terms.labour_cents_h) : 0;
  const labour = (price_cents_m2 === null ? own_cents : areaOf(charged) * price_cents_m2) * (1 + terms.labourTaxShare);
  const consumables = areaOf(price_cents_m2 === null ? work : charged) * terms.consumables_cents_m2 * (1 + terms.materialTaxShare);
  return {
    dwelling: first.dwelling, building: first.building, ownerEntity: first.ownerEntity,
    phase: glass === 'waits' ? null : phaseFor(first, from, of.phases),
    panes: panes.map(({ pane, window, dwelling, phase, film, why, note, day }) => ({ pane, window, dwelling, phase, film, why, note, day })),
    windows: [...new Map(panes.map((p) => [p.of.window, p.of])).values()],
    waitsForGlass: glass === 'waits',
    from,
    minutes: { low, best, high },
    work_cents: Math.round(labour + consumables),
    ...(price_cents_m2 === null ? {} : { crew: 'contractor' as const, ...(charged.length === work.length ? {} : { isMadeGood: true as const }) }),
  };
}

/** Panes to be done again as visits: one a dwelling, and one of its own for panes whose new glass comes on another day or on none yet. */
export function redoWork(of: RedoRequest): RedoWork[] {
  const at = of.panes.map((pane) => ({ pane, glass: glassOf(pane, of) }));
  const key = ({ pane, glass }: (typeof at)[number]): string => `${pane.dwelling}|${typeof glass === 'object' ? (glass.from > of.asOf ? glass.from : 'there') : glass}`;
  return [...grouped(sortedBy(at, key), key).values()].map((same) => workOf(same.map((s) => s.pane), same[0]!.glass, of));
}
