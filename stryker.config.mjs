// Mutation testing of calc, on demand: `npm run mutation -- libs/calc/src/glass`. One folder a run, with the fast specs that speak of it;
// specs that read weather files or search for long are left to `npm test`.
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
/** Where a whole run of the specs takes a second or so, figures worked out once on loading are mutated too. */
const QUICK = ['units', 'money', 'labour', 'lifecycle', 'tariff'];
const SLOW = { cutting: ['cut', 'together'], selection: ['properties'] };

const folder = process.env.FILM_ROLLOUT_MUTATE ?? 'libs/calc/src/units';
const name = basename(folder);
const parts = EXACT_PARTS[name];
const slow = SLOW[name] ?? [];
const own = `libs/calc/src/${name}/(?!(${[...slow, '-'].join('|')})\\.spec).*\\.spec\\.ts$`;

export default {
  packageManager: 'npm',
  mutate: [...(parts ? parts.map((part) => `${folder}/${part}.ts`) : [`${folder}/*.ts`]), '!**/*.spec.ts', '!**/*.bench.ts', '!**/index.ts'],
  plugins: ['@stryker-mutator/jest-runner', './scripts/mutation-words.mjs'],
  ignorers: ['words'],
  testRunner: 'jest',
  coverageAnalysis: 'perTest',
  ignoreStatic: !QUICK.includes(name),
  warnings: { slow: false },
  jest: {
    configFile: 'jest.config.mjs',
    enableFindRelatedTests: false,
    config: {
      roots: ['<rootDir>/libs/calc', '<rootDir>/test'],
      testRegex: [own, ...(TABLES[name] ?? []).map((table) => `test/reference/${table}\\.spec\\.ts$`)],
    },
  },
  concurrency: 2,
  timeoutMS: 20000,
  timeoutFactor: 2,
  incremental: true,
  incrementalFile: `reports/mutation/${name}.incremental.json`,
  reporters: ['clear-text', 'json'],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false, reportScoreTable: true },
  jsonReporter: { fileName: `reports/mutation/${name}.json` },
  tempDirName: '.stryker-tmp',
  ignorePatterns: ['dist', 'out', 'reports', 'apps', 'docs', '.ci'],
};
