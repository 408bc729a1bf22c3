import type { Assumption } from './assumption.js';
import { type AssumptionEntries, assumptionFiles } from './assumption-files.js';
import { readData } from './data-folder.js';

/** Name of a default. */
export type AssumptionKey = keyof AssumptionEntries;

/** What the value of a default is: a number, a word, a truth or a list of hours. */
export type AssumptionValue<Key extends AssumptionKey> = AssumptionEntries[Key]['value'];

/** The defaults that fill what a survey leaves blank. A floor area has none: it must be given. */
export interface AssumptionCatalogue {
  readonly value: <Key extends AssumptionKey>(key: Key) => Assumption<AssumptionValue<Key>>;
  /** By a key put together from words; `null` where there is no such default. */
  readonly find: (key: string) => Assumption<AssumptionValue<AssumptionKey>> | null;
  readonly list: () => readonly (Assumption<AssumptionValue<AssumptionKey>> & { readonly key: AssumptionKey })[];
}

/** SEER class of a split unit or heat pump by the year it was put in; `null` when the year is not known. */
export function splitEfficiencyKey(installedYear: number | null): AssumptionKey | null {
  if (installedYear === null) return null;
  if (installedYear < 1992) return 'splitEfficiency.before-1992';
  if (installedYear < 2006) return 'splitEfficiency.1992-2005';
  return installedYear < 2015 ? 'splitEfficiency.2006-2014' : 'splitEfficiency.2015-on';
}

/**
 * Opens the built-in defaults.
 *
 * @param folder the data folder
 */
export function openAssumptions(folder: string): AssumptionCatalogue {
  const entries: AssumptionEntries = {
    ...assumptionFiles.money.parse(readData(folder, 'assumptions/money.json')).values,
    ...assumptionFiles.dwelling.parse(readData(folder, 'assumptions/dwelling.json')).values,
    ...assumptionFiles.use.parse(readData(folder, 'assumptions/use.json')).values,
    ...assumptionFiles.work.parse(readData(folder, 'assumptions/work.json')).values,
    ...assumptionFiles.realisation.parse(readData(folder, 'assumptions/realisation.json')).values,
  };
  const keys = Object.keys(entries) as AssumptionKey[];
  const isKey = (key: string): key is AssumptionKey => Object.hasOwn(entries, key);
  return {
    value: (key) => entries[key],
    find: (key) => (isKey(key) ? entries[key] : null),
    list: () => keys.map((key) => ({ key, ...entries[key] })),
  };
}
