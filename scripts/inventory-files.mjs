// Writes docs/inventory-files.md from the column definitions. Build first: `npm run build && node scripts/inventory-files.mjs`.
// Without a build: node --import tsx --conditions=source scripts/inventory-files.mjs
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { inventoryFilesGuide } from '#intake';

writeFileSync(join(dirname(fileURLToPath(import.meta.url)), '..', 'docs', 'inventory-files.md'), inventoryFilesGuide());
