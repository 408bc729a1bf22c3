import { type MeteredPeriod, seeded } from '#calc';

/** A made-up row of homes with a meter each, before and after film went on the first of them. */
export interface MeteredHome {
  readonly id: string;
  readonly treated: boolean;
  readonly baseline: readonly MeteredPeriod[];
  readonly reporting: readonly MeteredPeriod[];
  /** Share of the use after that film really took away: known, since the homes are made up. */
  readonly trueShare: number;
}

export interface HomeTerms {
  readonly seed: number;
  readonly treated: number;
  readonly untreated: number;
  /** Share of the cooling that film takes away. */
  readonly effect: number;
  /** One standard deviation of a bill, of a home's own change over the year, and of what the year changed for everybody. */
  readonly billNoise: number;
  readonly homeDrift: number;
  readonly commonDrift: number;
}

/** Standard normal numbers from a seed (Box and Muller). */
export function normals(seed: number): () => number {
  const next = seeded(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

const month = (daily_degC: readonly number[]): MeteredPeriod => ({ use_kWh: 0, days: daily_degC.length, daily_degC, outdoor_degC: daily_degC.reduce((a, b) => a + b, 0) / daily_degC.length });

/** Twelve months of days about a warm mean, warmer or cooler by the year's own offset. */
function year(offset_K: number, normal: () => number): MeteredPeriod[] {
  return Array.from({ length: 12 }, (_, m) => month(Array.from({ length: 30 }, (_, d) => 20 + offset_K - 9 * Math.cos(((m * 30 + d) / 360) * 2 * Math.PI) + 2.5 * normal())));
}

/** Degree days above a balance point. */
const cooling_K = (days: readonly number[], balance_degC: number): number => days.reduce((sum, t) => (t > balance_degC ? sum + t - balance_degC : sum), 0);

/** Homes whose use follows degree days, with noise on every bill, drifting weather, drifting people and a known film effect. */
export function meteredHomes(terms: HomeTerms): MeteredHome[] {
  const normal = normals(terms.seed);
  const before = year(normal() * 0.8, normal);
  const after = year(0.6 + normal() * 0.8, normal);
  const common = Math.exp(terms.commonDrift * normal());
  return Array.from({ length: terms.treated + terms.untreated }, (_, i): MeteredHome => {
    const treated = i < terms.treated;
    const [base, slope, balance] = [9 * Math.exp(0.25 * normal()), 2.4 * Math.exp(0.3 * normal()), 18 + normal()];
    const own = common * Math.exp(terms.homeDrift * normal());
    const effect = treated ? terms.effect : 0;
    const billed = (p: MeteredPeriod, of: { readonly scale: number; readonly kept: number }): MeteredPeriod => ({ ...p, use_kWh: of.scale * (base * p.days + of.kept * slope * cooling_K(p.daily_degC!, balance)) * Math.exp(terms.billNoise * normal()) });
    const cools = after.reduce((sum, p) => sum + slope * cooling_K(p.daily_degC!, balance), 0);
    const all = after.reduce((sum, p) => sum + base * p.days, 0) + cools;
    return {
      id: `H${String(i + 1).padStart(3, '0')}`,
      treated,
      baseline: before.map((p) => billed(p, { scale: 1, kept: 1 })),
      reporting: after.map((p) => billed(p, { scale: own, kept: 1 - effect })),
      trueShare: (effect * cools) / all,
    };
  });
}
