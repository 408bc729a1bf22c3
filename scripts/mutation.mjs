// `npm run mutation -- libs/calc/src/glass`: mutation tests of the folders named, one after the other; without a name, of all of calc.
// Each run is kept in reports/mutation and taken up where it was left; docs/mutation.md is written from all that were run.
// `--write` runs nothing and only writes the page again.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from './install.mjs';
import { MUTATION_FOLDERS, writeMutationPage } from './mutation-page.mjs';

const named = process.argv.slice(2).filter((each) => !each.startsWith('--'));
const folders = named.length > 0 ? named : MUTATION_FOLDERS.map((name) => `libs/calc/src/${name}`);
const stryker = join(root, 'node_modules', '@stryker-mutator', 'core', 'bin', 'stryker.js');
if (!process.argv.includes('--write')) {
  for (const folder of folders) {
    const { status } = spawnSync(process.execPath, [stryker, 'run'], { cwd: root, stdio: 'inherit', env: { ...process.env, FILM_ROLLOUT_MUTATE: folder.replace(/\/$/, '') } });
    if (status !== 0) process.exitCode = 1;
  }
}
writeMutationPage();
