import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { SURVEY_COLUMNS } from '../../libs/papers/src/sheets/survey-sheet.js';

/** Stand once above the rows of the sheet. */
const ABOVE = ['building', 'dwelling', 'plan_type'];

it('the survey sheet has a column for every header of windows.csv', () => {
  const files = readFileSync(join(process.cwd(), 'docs/inventory-files.md'), 'utf8');
  const section = files.slice(files.indexOf('## windows.csv')).split('\n## ')[0] ?? '';
  const headers = [...section.matchAll(/^\| `([^`]+)`/gm)].map((m) => m[1]!);
  expect(headers.length).toBeGreaterThan(20);
  expect([...ABOVE, ...SURVEY_COLUMNS.map(([head]) => head)].sort()).toEqual([...headers].sort());
});
