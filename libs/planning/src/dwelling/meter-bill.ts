import { isBilledBySums, partsCost_cents, partSums, type TariffClock, yearCost_cents } from '#calc';

/** A part of a meter's hourly use; where the tariff asks for no more, its sums by month and price period stand for the hours. */
export interface UsePart {
  readonly kWh: Float64Array;
  readonly sums: Float64Array | null;
}

/** The bill of one meter while some parts of its use change and the rest stays. */
export interface MeterBill {
  readonly part: (kWh: Float64Array) => UsePart;
  /** The same part, every hour times a ratio; it holds until the next one is asked for. */
  readonly scaled: (part: UsePart, ratio: number) => UsePart;
  /** Cents a year of the rest and these parts together, not rounded. */
  readonly cost_cents: (parts: readonly UsePart[]) => number;
}

/**
 * A meter whose rest (base load, neighbours) is summed once. Under a tariff of kWh alone a bill is then a few dozen sums; a peak, and only a
 * peak, depends on the hours in which parts meet, so under a demand charge the hours are added up.
 *
 * @param rest hourly use that stays, ≥ 0
 * @param use_kWh 8760 hours to work in
 */
export function meterBill(clock: TariffClock, rest: readonly Float64Array[], use_kWh: Float64Array): MeterBill {
  if (!isBilledBySums(clock)) {
    let scaled_kWh: Float64Array | undefined;
    return {
      part: (kWh) => ({ kWh, sums: null }),
      scaled: ({ kWh }, ratio) => {
        scaled_kWh ??= new Float64Array(8760);
        for (let h = 0; h < 8760; h++) scaled_kWh[h] = ratio * kWh[h]!;
        return { kWh: scaled_kWh, sums: null };
      },
      cost_cents: (parts) => {
        useOf([...rest, ...parts.map((p) => p.kWh)], use_kWh);
        return yearCost_cents(clock, use_kWh);
      },
    };
  }
  const still = rest.map((kWh) => partSums(clock, kWh));
  const all = new Float64Array(12 * clock.tariff.energy.length);
  return {
    part: (kWh) => ({ kWh, sums: partSums(clock, kWh) }),
    scaled: ({ kWh, sums }, ratio) => ({ kWh, sums: (sums ?? partSums(clock, kWh)).map((kWhOfBin) => ratio * kWhOfBin) }),
    cost_cents: (parts) => {
      all.fill(0);
      for (const sums of still) add(all, sums);
      for (const { sums } of parts) if (sums !== null) add(all, sums);
      return partsCost_cents(clock, all);
    },
  };
}

/** Hourly use of all parts together. */
export function useOf(parts: readonly Float64Array[], use_kWh: Float64Array): Float64Array {
  use_kWh.fill(0);
  for (const part of parts) add(use_kWh, part);
  return use_kWh;
}

function add(total: Float64Array, part: Float64Array): void {
  for (let i = 0; i < total.length; i++) total[i] = total[i]! + part[i]!;
}
