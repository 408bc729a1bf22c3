import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chapters } from './checks/all-checks.js';
import { check } from './checks/check.js';
import { keptOutcome, outcomeOf } from './checks/page.js';
import type { ReferenceTable } from './reference-table.js';

const here = dirname(fileURLToPath(import.meta.url));
const page = readFileSync(join(here, '..', '..', 'docs', 'validation.md'), 'utf8');
const checks = chapters.flatMap((chapter) => chapter.checks);

type Table = ReferenceTable<unknown, unknown>;
const isTable = (value: unknown): value is Table => typeof value === 'object' && value !== null && 'rows' in value && 'tolerance' in value && 'seen' in value;

/** Every table that stands beside this file, by its file and name. */
async function tables(): Promise<{ name: string; table: Table }[]> {
  const files = readdirSync(here).filter((name) => name.endsWith('.ts') && !name.endsWith('.spec.ts'));
  const found = await Promise.all(files.map(async (file) => Object.entries((await import(`./${file}`)) as Record<string, unknown>).map(([name, table]) => ({ name: `${file} ${name}`, table }))));
  return found.flat().flatMap(({ name, table }) => (isTable(table) ? [{ name, table }] : []));
}

describe('docs/validation.md', () => {
  it('has every row of every table of this folder in a check', async () => {
    const compared = new Set<unknown>(checks.flatMap(({ table }) => table.rows.map((row) => (row as Table['rows'][number]).expect)));
    const all = await tables();
    expect(all.length).toBeGreaterThan(60);
    expect(all.flatMap(({ name, table }) => (table.rows.every((row) => compared.has(row.expect)) ? [] : [name]))).toEqual([]);
  });

  it('has a line in the summary and a section for every check, none twice and none left over', () => {
    const titles = checks.map(({ title }) => title);
    expect(new Set(titles).size).toBe(titles.length);
    const sections = [...page.matchAll(/^### (.+)$/gm)].map(([, title]) => title);
    expect(sections).toEqual(titles);
    for (const { title, table } of checks) {
      expect(page).toContain(`\n| ${title} | ${table.of} | ${table.rows.length} | `);
      expect(page).toContain(`\n### ${title}\n\`${table.of}\`. Source: ${table.source}. `);
    }
    expect([...page.matchAll(/^## (.+)$/gm)].map(([, title]) => title)).toEqual(['Summary', ...chapters.map(({ title }) => title)]);
  });

  it('says of every miss why', () => {
    expect(page).not.toContain('not explained');
    for (const { title, misses } of checks) {
      const from = page.indexOf(`\n### ${title}\n`);
      const section = page.slice(from, page.indexOf('\n### ', from + 1));
      for (const { why } of Object.values(misses)) expect(section).toContain(`**misses**: ${why}`);
    }
  });
});

describe('a check', () => {
  const table: Table = { of: 'calc/none', source: 'made up', seen: 'from memory', tolerance: { abs: 1, why: 'made up' }, rows: [{ given: { a: 1 }, expect: 5, place: 'first' }, { given: { a: 2 }, expect: 5, place: 'second' }] };
  const made = (isHere: boolean) => check({ title: 'Made up', table, isHere: () => isHere, compare: ({ given }) => [{ what: 'b', expected: 5, ours: (given as { a: number }).a * 4.5 }] });

  it('shows a figure that misses as a miss, with the difference', () => {
    const { line, section } = outcomeOf(made(true), '');
    expect(line).toBe('| Made up | calc/none | 2 | 2 | 4 (b) | 1 | 400 % | **1** |');
    expect(section).toContain('| first | b | a 1 | 5 | 4.5 | 0.5 | 1 | met |');
    expect(section).toContain('| second | b | a 2 | 5 | 9 | 4 | 1 | **misses**: not explained |');
  });

  it('whose files are not there keeps what the page says of it, or says that it was not run', () => {
    const before = `${['# Page', outcomeOf(made(true), '').line, '', outcomeOf(made(true), ' Run on a day.').section, '', '## Next'].join('\n')}\n`;
    expect(keptOutcome(made(false), before).section).toContain('Run on a day.');
    expect(keptOutcome(made(false), before).section).toContain('| second | b |');
    expect(keptOutcome(made(false), before).section).not.toContain('## Next');
    expect(keptOutcome(made(false), '# Page\n').section).toContain('Not run here');
  });
});
