// `npm run layers`: who imports whom, whether calc compiles without Node, and whether the rules still bite.
import { spawnSync } from 'node:child_process';
import { copyFileSync, cpSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from './install.mjs';

const SETTINGS = ['.dependency-cruiser.cjs', 'package.json', 'tsconfig.json', 'tsconfig.build.json'];
const node = (cwd, args) => spawnSync(process.execPath, args, { cwd, encoding: 'utf8' });
const cruise = (cwd, ...of) =>
  node(cwd, [join(root, 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs'), '--config', '.dependency-cruiser.cjs', ...of]);

// A wrong import each, with the rule that must name it.
const PLANTED = [
  { path: 'libs/calc/src/units/planted.ts', text: "export * from '../glass/index.js';\n", rule: 'calc-flow-units' },
  { path: 'libs/calc/src/glass/planted.ts', text: "export { readFileSync } from 'node:fs';\n", rule: 'calc-pure' },
  { path: 'libs/catalogue/src/planted.ts', text: "export * from '#store';\n", rule: 'catalogue-imports-only-calc' },
  { path: 'libs/planning/src/planted.ts', text: "export * from '../../store/src/turns.js';\n", rule: 'front-door-only' },
  { path: 'libs/workbook/src/planted.ts', text: "export { DataSource } from 'typeorm';\n", rule: 'edge-files-only' },
];

/** Names the planted imports that no rule complains of, in a copy of the sources. */
function missedPlants() {
  const copy = mkdtempSync(join(tmpdir(), 'film-rollout-layers-'));
  try {
    cpSync(join(root, 'libs'), join(copy, 'libs'), { recursive: true });
    SETTINGS.forEach((name) => copyFileSync(join(root, name), join(copy, name)));
    symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'), 'junction');
    PLANTED.forEach(({ path, text }) => writeFileSync(join(copy, path), text));
    const { stdout } = cruise(copy, ...PLANTED.map(({ path }) => path));
    return PLANTED.filter(({ path, rule }) => !stdout.includes(`error ${rule}: ${path} `));
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
}

let failed = false;
function report(what, good, said) {
  console.log(`${good ? 'ok  ' : 'FAIL'} ${what}`);
  if (!good && said) console.log(said);
  failed ||= !good;
}

const imports = cruise(root, 'apps', 'libs');
report('imports go one way', imports.status === 0, imports.stdout + imports.stderr);
const calc = node(root, [join(root, 'node_modules', 'typescript', 'bin', 'tsc'), '-p', 'libs/calc/tsconfig.lib.json', '--noEmit']);
report('calc compiles without Node and without a browser', calc.status === 0, calc.stdout);
const missed = missedPlants();
report(`${PLANTED.length} planted wrong imports are found`, missed.length === 0, missed.map(({ path, rule }) => `${path}: rule ${rule} said nothing`).join('\n'));
process.exitCode = failed ? 1 : 0;
