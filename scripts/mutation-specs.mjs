// Which specs speak of a folder of calc, and which of its files are mutated.
import { basename } from 'node:path';

/** Published tables that check a folder, beside its own specs. */
const TABLES = {
  money: ['tariff'],
  sun: ['sun', 'sky'],
  sky: ['sky'],
  shade: ['shade'],
  glass: ['glazing', 'glazing-checks', 'glazing-films'],
  dwelling: ['dwelling-runs'],
  cooling: ['cooling-plant'],
  tariff: ['tariff'],
  lifecycle: ['finance'],
  labour: ['labour'],
  verification: ['bills'],
};
/** The exact parts, where a folder also searches: a search that finds the same answer another way is no error, so its mutants say nothing. */
const EXACT_PARTS = {
  cutting: ['piece', 'purchase', 'layout-check', 'bar-bound', 'bounds', 'straight-cuts'],
  selection: ['certificate-check', 'check-problem', 'choice-check'],
};
/** Specs that search for long. */
const SLOW = { cutting: ['cut', 'together'], selection: ['properties'] };

/** The files of a folder that are mutated, as patterns. */
export function mutatedIn(folder) {
  const parts = EXACT_PARTS[basename(folder)];
  return [...(parts ? parts.map((part) => `${folder}/${part}.ts`) : [`${folder}/*.ts`]), '!**/*.spec.ts', '!**/*.bench.ts', '!**/index.ts'];
}

/** Whether a file is a spec that speaks of the folder. */
export function isSpecOf(folder) {
  const name = basename(folder);
  const tables = (TABLES[name] ?? []).map((table) => `test/reference/${table}.spec.ts`);
  const slow = (SLOW[name] ?? []).map((spec) => `libs/calc/src/${name}/${spec}.spec.ts`);
  return (file) => file.endsWith('.spec.ts') && !slow.includes(file) && (file.startsWith(`libs/calc/src/${name}/`) || tables.includes(file));
}
