import { partialPooling, type Pooled, type PooledMember, type PoolingSpreads, type Posterior } from '#calc';
import type { DefaultOf } from '../job/assumption-book.js';

export const NO_PLAN_TYPE = 'no plan type';
export const SEVERAL_TYPES = 'several plan types';

/** Spreads expected before any bill, from the assumptions. */
export function poolingSpreads(defaultOf: DefaultOf): PoolingSpreads {
  const value = (key: string): number => defaultOf<number>(key).value;
  return { portfolio: value('pooling.portfolio'), building: value('pooling.building'), planType: value('pooling.planType'), tenant: value('pooling.tenant') };
}

/** What a group of dwellings is brought to, and how far the bills decide it. */
export interface GroupValue extends Posterior {
  readonly weight: number;
}

/** Looks the value of a plan type in a building up; of its building where the plan type has no meter of its own; null where the building has none. */
export interface PooledBills {
  readonly of: (building: string, planType: string) => GroupValue | null;
  readonly seen: (building: string, planType: string) => readonly PooledMember[];
}

const squares = (...spreads: readonly number[]): number => spreads.reduce((sum, s) => sum + s * s, 0);

function valueOf(pooled: Pooled, building: string, planType: string): GroupValue | null {
  const { portfolio, building: between, planType: types } = pooled.spreads;
  const expected = squares(portfolio, between, types);
  const own = pooled.planTypes.get(`${building}|${planType}`);
  const whole = pooled.buildings.get(building);
  const posterior = own ?? (whole === undefined ? undefined : { ...whole, standardDeviation: Math.hypot(whole.standardDeviation, types), members: 0 });
  return posterior === undefined ? null : { ...posterior, weight: Math.min(1, Math.max(0, 1 - posterior.standardDeviation ** 2 / expected)) };
}

/** Pools what the meters say by plan type, building and portfolio. */
export function pooledBills(members: readonly PooledMember[], spreads: PoolingSpreads): PooledBills {
  if (members.length === 0) return { of: () => null, seen: () => [] };
  const pooled = partialPooling(members, spreads);
  return { of: (building, planType) => valueOf(pooled, building, planType), seen: (building, planType) => members.filter((m) => m.building === building && m.planType === planType) };
}
