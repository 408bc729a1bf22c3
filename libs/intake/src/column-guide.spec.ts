import { readFileSync } from 'node:fs';
import { inventoryFilesGuide, templateOf } from './column-guide.js';
import { fileOfText } from './files/inventory-file.js';
import { LISTS, TABLES } from './gathered.js';
import { readInventory } from './read-inventory.js';

describe('the guide to inventory files', () => {
  it('docs/inventory-files.md is what the column definitions say; run scripts/inventory-files.mjs', () => {
    expect(readFileSync('docs/inventory-files.md', 'utf8')).toBe(inventoryFilesGuide());
  });

  it('every example cell of every table is read without a word', async () => {
    const files = LISTS.map((list) => fileOfText(`${TABLES[list].name}.csv`, templateOf(TABLES[list].name) ?? ''));
    const { findings, rejects } = await readInventory(files);
    const about = findings.filter(({ severity, code }) => severity === 'error' && code !== 'orphan');
    expect(about).toEqual([]);
    expect(rejects.map(({ of }) => of)).not.toContain('dwellings.csv');
  });
});
