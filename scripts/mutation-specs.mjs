// Which specs speak of a folder of calc, and which of its files are mutated.
import { readFileSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { root } from './install.mjs';

/** Published tables that check a folder, beside its own specs. */
const TABLES = {
  money: ['tariff'],
  sun: ['sun', 'sky'],
  sky: ['sky'],
  shade: ['shade'],
  glass: ['glazing', 'glazing-checks', 'glazing-films', 'glazing-labels'],
  dwelling: ['dwelling-runs'],
  cooling: ['cooling-plant'],
  tariff: ['tariff'],
  lifecycle: ['finance'],
  labour: ['labour'],
  verification: ['bills'],
};
/** Specs beside the catalogue that hold calc's rules to its tables. */
const OTHERS = { glass: ['libs/catalogue/src/suitability.spec.ts'] };
/** The exact parts, where a folder also searches: a search that finds the same answer another way is no error, so its mutants say nothing. */
export const EXACT_PARTS = {
  cutting: ['piece', 'purchase', 'layout-check', 'bar-bound', 'bounds', 'straight-cuts'],
  selection: ['certificate-check', 'check-problem', 'choice-check'],
};
/** Specs that search for long, and where most do, the ones that do not. */
const SLOW = { selection: ['properties'] };
const FAST = { cutting: ['piece', 'purchase', 'layout-check', 'bar-bound'] };
/** Tests that take seconds each: they hold what comes by chance, on hundreds of draws. */
export const SLOW_TESTS = /^(draws of two hundred scopes|the split of a meter holds the true base load|a pooled saving of made-up homes .* placebo)/;
/** Large folders of which a part of the lines is mutated: every line whose number, hashed with its file, falls under the share. */
export const SAMPLED = { glass: 0.5, cooling: 0.5, verification: 0.2, cutting: 0.2 };
/** Folders whose specs work out much on loading: what runs only then is not tried, for each fault would run every spec. */
export const LOADS_LONG = ['verification', 'cutting'];

/** FNV-1a of a text, 0…1: the same lines every time. */
function draw(text) {
  let hash = 0x811c9dc5;
  for (const letter of text) hash = Math.imul(hash ^ letter.codePointAt(0), 0x01000193) >>> 0;
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d) >>> 0;
  return ((hash ^ (hash >>> 13)) >>> 0) / 2 ** 32;
}

const sampledLines = (path, share) =>
  readFileSync(join(root, path), 'utf8').split('\n').flatMap((_, i) => (draw(`${basename(path)}:${i + 1}`) < share ? [`${path}:${i + 1}-${i + 1}`] : []));

/** The files or lines of a folder that are mutated, as patterns. */
export function mutatedIn(folder) {
  const parts = EXACT_PARTS[basename(folder)];
  const share = process.env.FILM_ROLLOUT_MUTATE_ALL === undefined ? SAMPLED[basename(folder)] : undefined;
  if (share !== undefined) {
    const files = readdirSync(join(root, folder)).filter((file) => (parts ? parts.some((part) => file === `${part}.ts`) : file.endsWith('.ts') && !/(\.spec|\.bench|^index)\.ts$/.test(file)));
    return files.flatMap((file) => sampledLines(`${folder}/${file}`, share));
  }
  return [...(parts ? parts.map((part) => `${folder}/${part}.ts`) : [`${folder}/*.ts`]), '!**/*.spec.ts', '!**/*.bench.ts', '!**/index.ts'];
}

/** Whether a file is a spec that speaks of the folder. */
export function isSpecOf(folder) {
  const name = basename(folder);
  const tables = [...(TABLES[name] ?? []).map((table) => `test/reference/${table}.spec.ts`), ...(OTHERS[name] ?? [])];
  const slow = (SLOW[name] ?? []).map((spec) => `libs/calc/src/${name}/${spec}.spec.ts`);
  const fast = FAST[name]?.map((spec) => `libs/calc/src/${name}/${spec}.spec.ts`);
  return (file) => file.endsWith('.spec.ts') && !slow.includes(file) && (fast?.includes(file) ?? true) && (file.startsWith(`libs/calc/src/${name}/`) || tables.includes(file));
}
