import type { Plan } from '#planning';

export interface Size {
  readonly dwellings: number;
  readonly lines: number;
}

/** Copies of a list until there are so many, each copy with dwellings of its own. */
function copies<T>(of: readonly T[], count: number, buildings: readonly string[]): T[] {
  if (of.length === 0) return [];
  const text = of.map((each) => JSON.stringify(each));
  const ids = new RegExp(`"((?:[^"]* )?(?:${buildings.join('|')})/[^/"|, ]+)`, 'g');
  return Array.from({ length: count }, (_, i) => {
    const copy = Math.floor(i / of.length);
    return JSON.parse(copy === 0 ? text[i % of.length]! : text[i % of.length]!.replaceAll(ids, `"$1-${String(copy)}`)) as T;
  });
}

/** A plan of the size asked for, made of copies of a small one: for the size of its papers, not for what they say. */
export function replicatedPlan(plan: Plan, size: Size): Plan {
  const buildings = plan.buildings.map((b) => b.id);
  const all = <T>(of: readonly T[]): T[] => copies(of, Math.round((of.length * size.dwellings) / plan.dwellings.length), buildings);
  const planned = <T>(of: readonly T[]): T[] => copies(of, Math.round((of.length * size.lines) / Math.max(1, plan.lines.length)), buildings);
  return {
    ...plan,
    dwellings: all(plan.dwellings),
    rankedDwellings: all(plan.rankedDwellings),
    rankedFacades: all(plan.rankedFacades),
    meters: all(plan.meters),
    energy: { ...plan.energy, options: all(plan.energy.options), glass: all(plan.energy.glass) },
    lines: planned(plan.lines),
    workOrders: planned(plan.workOrders),
    cuts: plan.cuts.map((c) => ({ ...c, pieces: planned(c.pieces) })),
    payback: { ...plan.payback, lines: planned(plan.payback.lines) },
    uses: planned(plan.uses),
    outlook: plan.outlook === null ? null : { ...plan.outlook, lines: planned(plan.outlook.lines) },
    calendar: { ...plan.calendar, days: planned(plan.calendar.days) },
  };
}
