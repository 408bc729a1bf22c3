import { rebate_cents, type Rebate } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import { rebateIn } from '../options/rebates.js';
import type { ProjectRebate } from './payback.js';
import type { PricedPhase } from '../rolls/price-by-rolls.js';

/** The offers the lines of a plan count on, taken project by project: a cap holds once and a least area is met together. */
export function projectRebates(phases: readonly PricedPhase[], rebates: readonly Rebate[]): ProjectRebate[] {
  const terms = new Map(rebates.map((r) => [r.id, r]));
  const counted = phases.flatMap(({ phase, lines }) =>
    lines.flatMap(({ option }) => {
      const offer = rebateIn(option.rebates, phase);
      return offer === null ? [] : [{ offer, option, phase: phase.id, key: `${offer.rebate}|${option.building}|${phase.id}` }];
    }),
  );
  return [...grouped(sortedBy(counted, (c) => `${c.key}|${c.option.dwelling}`), (c) => c.key).values()].map((project): ProjectRebate => {
    const { offer, option, phase } = project[0]!;
    const fund = terms.get(offer.rebate);
    if (fund === undefined) throw new RangeError(`rebate must be among the offers, got ${offer.rebate}`);
    const sum = (part: (c: (typeof project)[number]) => number): number => project.reduce((total, c) => total + part(c), 0);
    const [area_m2, cost_cents, byLine_cents] = [sum((c) => c.offer.area_m2), sum((c) => c.option.cost.total_cents), sum((c) => c.offer.cents)];
    const tooSmall = area_m2 < (fund.areaAtLeast_m2 ?? 0);
    const cents = tooSmall ? 0 : Math.round(rebate_cents({ area_m2, cost_cents }, fund));
    const why = tooSmall ? `its ${area_m2.toFixed(1)} m² are below the least area of the offer` : cents < Math.round(byLine_cents) ? 'the limit of the offer holds for the project as a whole' : null;
    return { rebate: offer.rebate, building: option.building, phase, area_m2, cost_cents: Math.round(cost_cents), byLine_cents: Math.round(byLine_cents), cents, why };
  });
}
