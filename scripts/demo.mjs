// `npm run demo`: from a bare clone to out/rollout.xlsx.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { build } from './build.mjs';
import { install, root } from './install.mjs';

install();
build();
const command = join('dist', 'apps', 'cli', 'src', 'main.js');
const asked = process.argv.slice(2);
const { status } = spawnSync(process.execPath, [command, 'run', 'data/demo', '--out', 'out/rollout.xlsx', ...asked], { cwd: root, stdio: 'inherit' });
process.exitCode = status ?? 1;
