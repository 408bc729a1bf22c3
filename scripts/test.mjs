// `npm test`: from a bare clone to the totals. What follows `--` goes on to jest. The last line is `N passed, N failed`, alone.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from './build.mjs';
import { install, root } from './install.mjs';

install();
build();
const folder = mkdtempSync(join(tmpdir(), 'film-rollout-totals-'));
const totals = join(folder, 'totals.json');
const jest = join(root, 'node_modules', 'jest', 'bin', 'jest.js');
const reporters = ['--reporters=default', `--reporters=${join(root, 'scripts', 'totals-reporter.cjs')}`];
const { status } = spawnSync(process.execPath, [jest, ...reporters, ...process.argv.slice(2)], {
  cwd: root,
  stdio: 'inherit',
  env: { ...process.env, FILM_ROLLOUT_TOTALS: totals },
});
// A run that ended before it could count has failed, whatever it would have said.
const { passed, failed } = existsSync(totals) ? JSON.parse(readFileSync(totals, 'utf8')) : { passed: 0, failed: 1 };
rmSync(folder, { recursive: true, force: true });
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = status ?? 1;
