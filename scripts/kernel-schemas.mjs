// Writes docs/kernels/NAME.schema.json, the full text of each kernel's contract. Build first: `npm run build && node scripts/kernel-schemas.mjs`.
// With --check nothing is written; the script fails where a file is not what the kernel says.
// Without a build: node --import tsx --conditions=source scripts/kernel-schemas.mjs
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { allKernels } from '#kernels';

const folder = join(dirname(fileURLToPath(import.meta.url)), '..', 'docs', 'kernels');
const check = process.argv.includes('--check');
mkdirSync(folder, { recursive: true });

const files = new Map(allKernels.map((kernel) => [`${kernel.name}.schema.json`, `${JSON.stringify(kernel.schema(), null, 2)}\n`]));
const stale = [...files].filter(([name, text]) => !existsSync(join(folder, name)) || readFileSync(join(folder, name), 'utf8') !== text);
const orphans = readdirSync(folder).filter((name) => name.endsWith('.schema.json') && !files.has(name));

if (check) {
  for (const [name] of stale) console.error(`docs/kernels/${name} is not what its kernel says; run scripts/kernel-schemas.mjs`);
  for (const name of orphans) console.error(`docs/kernels/${name} belongs to no kernel`);
  process.exitCode = stale.length + orphans.length > 0 ? 1 : 0;
} else {
  for (const [name, text] of stale) writeFileSync(join(folder, name), text);
  console.log(`${stale.length} of ${files.size} schemas written`);
}
