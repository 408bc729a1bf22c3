// `npm run bench -- --selection` measures the choice. `npm run bench`: dwelling-years per second on one core, beside a plain twin in the same run. What is timed is the built program; the
// bench files are not part of it and are turned into JavaScript beside it here.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from './build.mjs';
import { install, root } from './install.mjs';

if (process.argv.includes('--selection')) {
  // The choice under the caps beside the mixed-integer solver and two spreadsheets; figures after the option are handed on.
  const bench = spawnSync('npx', ['tsx', '--conditions=source', join('libs', 'workers', 'src', 'selection.bench.ts'), ...process.argv.slice(process.argv.indexOf('--selection') + 1)], { cwd: root, stdio: 'inherit' });
  process.exit(bench.status ?? 1);
}
install();
build();
const { default: ts } = await import('typescript');
const place = join('libs', 'calc', 'src', 'cooling');
const options = { target: ts.ScriptTarget.ES2023, module: ts.ModuleKind.ESNext, verbatimModuleSyntax: false };
mkdirSync(join(root, 'dist', place), { recursive: true });
for (const name of ['plain-year.bench', 'dwelling-year.bench']) {
  const { outputText } = ts.transpileModule(readFileSync(join(root, place, `${name}.ts`), 'utf8'), { compilerOptions: options });
  writeFileSync(join(root, 'dist', place, `${name}.js`), outputText);
}
const { status } = spawnSync(process.execPath, [join(root, 'dist', place, 'dwelling-year.bench.js')], { cwd: root, stdio: 'inherit' });
process.exitCode = status ?? 1;
