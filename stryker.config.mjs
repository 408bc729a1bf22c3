// Mutation testing of calc, on demand: `npm run mutation -- libs/calc/src/glass`. One folder a run, with the fast specs that speak of it;
// specs that read weather files or search for long are left to `npm test`.
import { basename } from 'node:path';
import { LOADS_LONG, mutatedIn } from './scripts/mutation-specs.mjs';

const folder = (process.env.FILM_ROLLOUT_MUTATE ??= 'libs/calc/src/units');
const name = basename(folder);

export default {
  packageManager: 'npm',
  mutate: mutatedIn(folder),
  plugins: ['./scripts/mutation-runner.mjs', './scripts/mutation-words.mjs'],
  ignorers: ['words'],
  testRunner: 'specs',
  coverageAnalysis: 'perTest',
  ignoreStatic: LOADS_LONG.includes(name),
  concurrency: 2,
  timeoutMS: 20000,
  timeoutFactor: 2,
  incremental: true,
  incrementalFile: `reports/mutation/${name}.incremental.json`,
  reporters: ['clear-text', 'progress-append-only', 'json'],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false, reportScoreTable: true },
  jsonReporter: { fileName: `reports/mutation/${name}.json` },
  tempDirName: '.stryker-tmp',
  ignorePatterns: ['dist', 'out', 'reports', 'apps', 'docs', '.ci'],
};
