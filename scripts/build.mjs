// TypeScript to dist/ in one pass over both apps and all libs: `npm run build`. Does nothing when no source has changed.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root, startedHere, stop } from './install.mjs';

const dist = join(root, 'dist');
const stamp = join(dist, 'built-from.json');

/** Every source with its size and time; a file that is gone shows too. */
function sources() {
  const found = {};
  const take = (path) => {
    const { size, mtimeMs } = statSync(join(root, path));
    found[path] = `${size} ${mtimeMs}`;
  };
  for (const top of ['apps', 'libs']) {
    for (const path of readdirSync(join(root, top), { recursive: true })) {
      if (/\.ts$/.test(path) && !/\.(spec|bench)\.ts$/.test(path)) take(join(top, path));
    }
  }
  ['tsconfig.json', 'tsconfig.build.json', 'package.json', 'package-lock.json'].forEach(take);
  return found;
}

/** Builds what has changed. */
export function build() {
  const now = sources();
  const before = existsSync(stamp) ? JSON.parse(readFileSync(stamp, 'utf8')) : {};
  const same = Object.keys(now).length === Object.keys(before).length && Object.keys(now).every((path) => now[path] === before[path]);
  if (same) return;
  // What a vanished source left behind would still be found by its importers.
  if (Object.keys(before).some((path) => !(path in now))) rmSync(dist, { recursive: true, force: true });
  console.error('Building …');
  const started = Date.now();
  const tsc = join(root, 'node_modules', 'typescript', 'bin', 'tsc');
  const args = [tsc, '-p', 'tsconfig.build.json', '--incremental', '--tsBuildInfoFile', 'dist/tsc.tsbuildinfo'];
  const { status } = spawnSync(process.execPath, args, { cwd: root, stdio: ['ignore', 2, 2] });
  if (status !== 0) stop('The build failed: the compiler says above what is wrong.');
  writeFileSync(stamp, JSON.stringify(now));
  console.error(`Built in ${((Date.now() - started) / 1000).toFixed(1)} s.`);
}

if (startedHere(import.meta.url)) build();
