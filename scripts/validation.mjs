// `npm run validation`: works out every check of test/reference and writes docs/validation.md. Checks whose files are not there keep what the page says of them.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { validationPage } from '../test/reference/checks/page.ts';

const page = join(dirname(fileURLToPath(import.meta.url)), '..', 'docs', 'validation.md');
const before = existsSync(page) ? readFileSync(page, 'utf8') : '';
const text = validationPage({ today: new Date().toISOString().slice(0, 10), before, said: (line) => console.warn(line) });
writeFileSync(page, text);
console.log(`${page}: ${text.split('\n').length} lines`);
const unexplained = text.split('\n').filter((line) => line.includes('not explained'));
for (const line of unexplained) console.error(line);
if (unexplained.length > 0) process.exitCode = 1;
