import type { AssumedValue } from '#calc';

/** A default with where it came from. */
export interface Default<T> {
  readonly value: T;
  readonly unit: string;
  readonly source: string;
  readonly basis: 'measured' | 'published' | 'assumed';
}

/** Looks a default up by key; every key exists in data/assumptions. */
export type DefaultOf = <T extends string | number | boolean>(key: string) => Default<T>;

/** Fills gaps with defaults and keeps the list of what was filled, for every sheet that shows a figure resting on it. */
export interface AssumptionBook {
  /**
   * The value given, or the default, noted.
   *
   * @param at the group the subject belongs to (a building), and the field in words
   */
  readonly take: <T extends string | number | boolean>(at: { readonly group: string; readonly field: string }, given: T | null, fallback: Default<T>) => T;
  /** One row per group, field and value, with how many subjects took it. */
  readonly list: () => AssumedValue[];
}

interface Taken {
  readonly group: string;
  readonly field: string;
  readonly fallback: Default<string | number | boolean>;
  count: number;
}

export function assumptionBook(): AssumptionBook {
  const taken = new Map<string, Taken>();
  return {
    take: (at, given, fallback) => {
      if (given !== null) return given;
      const key = [at.group, at.field, String(fallback.value), fallback.unit].join('\u0000');
      const before = taken.get(key);
      if (before === undefined) taken.set(key, { group: at.group, field: at.field, fallback, count: 1 });
      else before.count += 1;
      return fallback.value;
    },
    list: () =>
      [...taken.values()].map(({ group, field, fallback, count }) => ({
        subject: count === 1 ? group : `${group} (${count} times)`,
        field,
        value: String(fallback.value),
        unit: fallback.unit,
        source: fallback.source,
        basis: fallback.basis,
      })),
  };
}
