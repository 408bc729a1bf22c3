import ExcelJS from 'exceljs';
import { english, paper } from '#papers';
import type { Plan } from '#planning';
import { workbookBytes } from '#workbook';
import { plannedWith } from '../workbook/planned.js';
import { readPdf, textOf } from './read-pdf.js';

describe('a plan with one building of a contractor', () => {
  let plan: Plan;
  beforeAll(async () => void (plan = await plannedWith((p) => ({ ...p, settings: { ...p.settings, crewSize: 3 }, buildings: p.buildings.map((b) => (b.id === 'QA' ? { ...b, crew: 'contractor', contractor_cents_m2: 2_000, contractorVisit_cents: 5_000 } : b)) }))), 120_000);

  it('gives his building days of his own and the other one days of the own crew', () => {
    expect([...new Set(plan.calendar.days.map((d) => `${d.building} ${d.isContractor === true ? 'contractor' : String(d.crew)}`))].sort()).toEqual(['QA contractor', 'QB 1']);
    // What he asks for a visit pays for loading and keys; his crew has them all the same: 60 person-minutes are assumed where the survey gives none.
    const asked = plan.buildings.find((b) => b.id === 'QA')!.visitMinutes ?? 60;
    expect(plan.calendar.days.filter((d) => d.isContractor === true).every((d) => d.mobilisation_min === asked)).toBe(true);
  });

  it('says what is assumed of his crew: one of two persons, not the three of the own', () => {
    expect(plan.assumed.filter((a) => a.subject === 'contractor').map((a) => [a.field, a.value, a.basis])).toEqual([['crews side by side', '1', 'assumed'], ['persons of the crew', '2', 'assumed']]);
  });

  it.each(['crew', 'kit'] as const)('says on %s who films, on the pages of his building alone', async (name) => {
    const pages = readPdf((await paper(name, plan, { printed: new Date('2026-07-02T09:30:00Z'), format: null, texts: english })).bytes).map(textOf);
    const first = pages.filter((text) => text.includes('Building Q'));
    expect(first.map((text) => text.includes('Building QA')).sort()).toEqual(expect.arrayContaining([true, false]));
    for (const text of first) expect(/Filmed by\s+contractor/.test(text)).toBe(text.includes('Building QA'));
  });

  it('has "contractor" for the number of the crew on the sheet of the calendar', async () => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.load((await workbookBytes(plan)).buffer as ArrayBuffer);
    const rows: string[][] = [];
    book.getWorksheet('Calendar')!.eachRow((row) => void rows.push(Array.from({ length: row.cellCount }, (_, i) => row.getCell(i + 1).text)));
    const head = rows.find((row) => row.includes('Crew'))!;
    const at = (row: readonly string[], name: string): string => row[head.indexOf(name)] ?? '';
    const crews = rows.filter((row) => /^Q[AB]$/.test(at(row, 'Building'))).map((row) => `${at(row, 'Building')} ${at(row, 'Crew')}`);
    expect([...new Set(crews)].sort()).toEqual(['QA contractor', 'QB 1']);
    expect(rows.flat().join(' ')).toContain('1 crew of 2 persons, assumed');
  });

  it('counts the person-minutes of the own crew alone in the load', () => {
    const own = plan.workOrders.filter((o) => o.building === 'QB');
    const [load] = plan.calendar.load;
    expect(load!.personMinutes.best).toBe(Math.round(own.filter((o) => o.phase === load!.phase).reduce((sum, o) => sum + o.minutes.best, 0)));
  });
});
