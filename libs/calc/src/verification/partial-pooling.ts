/** What one meter says, and where it belongs. */
export interface PooledMember {
  readonly building: string;
  readonly planType: string;
  readonly value: number;
  readonly standardError: number;
}

/** Spreads (one standard deviation) expected before any bill is seen. */
export interface PoolingSpreads {
  /** Of the portfolio's own value about zero: how wrong the model may be as a whole. */
  readonly portfolio: number;
  readonly building: number;
  readonly planType: number;
  /** From one tenant to the next in equal dwellings. */
  readonly tenant: number;
}

/** A value with its standard deviation. */
export interface Posterior {
  readonly mean: number;
  readonly standardDeviation: number;
  readonly members: number;
}

/** Values of every group, the narrower ones drawn towards the wider ones. */
export interface Pooled {
  readonly portfolio: Posterior;
  readonly buildings: ReadonlyMap<string, Posterior>;
  /** By `building|plan type`. */
  readonly planTypes: ReadonlyMap<string, Posterior>;
  /** Spreads as used: those expected, moved towards those seen. */
  readonly spreads: PoolingSpreads;
}

interface Belief {
  readonly mean: number;
  readonly precision: number;
}

interface Seen {
  readonly value: number;
  readonly variance: number;
}

/** So many members count as much as the spread expected beforehand. */
const PRIOR_MEMBERS = 4;
const NOTHING: Belief = { mean: 0, precision: 0 };

const together = (beliefs: readonly Belief[]): Belief => {
  const precision = beliefs.reduce((sum, b) => sum + b.precision, 0);
  return precision === 0 ? NOTHING : { precision, mean: beliefs.reduce((sum, b) => sum + b.precision * b.mean, 0) / precision };
};
/** A belief passed across a step of the tree. */
const across = (belief: Belief, variance: number): Belief => (belief.precision === 0 ? NOTHING : { mean: belief.mean, precision: 1 / (1 / belief.precision + variance) });
const without = (all: Belief, own: Belief): Belief => {
  const precision = all.precision - own.precision;
  return precision <= 1e-12 * all.precision ? NOTHING : { precision, mean: (all.precision * all.mean - own.precision * own.mean) / precision };
};

/** Variance between the members of groups beyond their own errors, by moments over all groups; and how many comparisons it rests on. */
function between(groups: readonly (readonly Seen[])[]): { readonly variance: number; readonly degrees: number } {
  let [excess, scale, degrees] = [0, 0, 0];
  for (const group of groups) {
    if (group.length < 2) continue;
    const weights = group.map((g) => 1 / g.variance);
    const sum = weights.reduce((a, b) => a + b, 0);
    const mean = group.reduce((total, g, i) => total + weights[i]! * g.value, 0) / sum;
    excess += group.reduce((total, g, i) => total + weights[i]! * (g.value - mean) ** 2, 0) - (group.length - 1);
    scale += sum - weights.reduce((total, w) => total + w * w, 0) / sum;
    degrees += group.length - 1;
  }
  return { variance: scale > 0 ? Math.max(0, excess / scale) : 0, degrees };
}

const moved = (expected: number, seen: { readonly variance: number; readonly degrees: number }): number => Math.sqrt((PRIOR_MEMBERS * expected ** 2 + seen.degrees * seen.variance) / (PRIOR_MEMBERS + seen.degrees));

function groupsOf<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return groups;
}

const typeKey = (m: Pick<PooledMember, 'building' | 'planType'>): string => `${m.building}|${m.planType}`;
const posterior = (belief: Belief, members: number): Posterior => ({ mean: belief.mean, standardDeviation: Math.sqrt(1 / belief.precision), members });

/**
 * Partial pooling of what meters say, by plan type, building and portfolio.
 *
 *   value = portfolio + building + plan type + tenant + error;  every step normal with its own spread
 *
 * Spreads are those expected beforehand, moved towards those seen between tenants, plan types and buildings by (4 × expected² + d × seen²) /
 * (4 + d), with d comparisons. The tenant's own part is not given back: the tenant leaves, the film stays.
 *
 * @param members values with standard errors above 0
 * @param expected spreads before any bill is seen, above 0
 * @returns the value of every group with its standard deviation; nothing of a group without members, which then has its building's
 * @throws RangeError when there is no member, a value is not finite or an error or spread is not above 0
 * @source empirical Bayes with known variances, exact on the tree; spreads by moments as DerSimonian & Laird, Controlled Clinical Trials 7 (1986), from memory
 */
export function partialPooling(members: readonly PooledMember[], expected: PoolingSpreads): Pooled {
  if (members.length === 0) throw new RangeError('members must hold at least one');
  for (const m of members) if (!(Number.isFinite(m.value) && m.standardError > 0 && Number.isFinite(m.standardError))) throw new RangeError(`members must have finite values and errors above 0, got ${m.value} ± ${m.standardError}`);
  for (const [name, spread] of Object.entries(expected)) if (!(spread > 0)) throw new RangeError(`${name} must be above 0, got ${String(spread)}`);
  const byType = groupsOf(members, typeKey);
  const tenant = moved(expected.tenant, between([...byType.values()].map((g) => g.map((m) => ({ value: m.value, variance: m.standardError ** 2 })))));
  const said = new Map([...byType].map(([key, g]) => [key, together(g.map((m) => ({ mean: m.value, precision: 1 / (m.standardError ** 2 + tenant ** 2) })))]));
  const typesOf = groupsOf([...byType.keys()], (key) => byType.get(key)![0]!.building);
  const asSeen = (belief: Belief): Seen => ({ value: belief.mean, variance: 1 / belief.precision });
  const planType = moved(expected.planType, between([...typesOf.values()].map((keys) => keys.map((key) => asSeen(said.get(key)!)))));
  const ofBuilding = new Map([...typesOf].map(([b, keys]) => [b, together(keys.map((key) => across(said.get(key)!, planType ** 2)))]));
  const building = moved(expected.building, between([[...ofBuilding.values()].map(asSeen)]));
  const top = together([{ mean: 0, precision: 1 / expected.portfolio ** 2 }, ...[...ofBuilding.values()].map((b) => across(b, building ** 2))]);
  const buildings = new Map<string, Posterior>();
  const planTypes = new Map<string, Posterior>();
  for (const [id, own] of ofBuilding) {
    const fromAbove = across(without(top, across(own, building ** 2)), building ** 2);
    const whole = together([own, fromAbove]);
    buildings.set(id, posterior(whole, typesOf.get(id)!.reduce((sum, key) => sum + byType.get(key)!.length, 0)));
    for (const key of typesOf.get(id)!) {
      const mine = said.get(key)!;
      planTypes.set(key, posterior(together([mine, across(without(whole, across(mine, planType ** 2)), planType ** 2)]), byType.get(key)!.length));
    }
  }
  return { portfolio: posterior(top, members.length), buildings, planTypes, spreads: { portfolio: expected.portfolio, building, planType, tenant } };
}
