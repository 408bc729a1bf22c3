import { openStore } from '#store';
import { fileOfText } from './files/inventory-file.js';
import { IntakeService } from './intake.service.js';

const HEAD = 'day,kind,building,dwelling,person_minutes\n';

/** Findings of rows of site records sent on a day. */
async function recorded(rows: readonly string[], at = '2026-08-05T16:00:00Z') {
  const store = await openStore({ database: ':memory:' });
  const intake = new IntakeService(store);
  await intake.import('test/inventories/ok/two-buildings', '2026-07-01T08:00:00Z');
  const sent = [fileOfText('site-records.csv', HEAD + rows.join('\n'))];
  const dry = await intake.check(sent, { only: 'siteRecords', today: at.slice(0, 10) });
  const { findings, rejected } = await intake.import(sent, at, { only: 'siteRecords' });
  const { siteRecords } = await store.load();
  await store.close();
  expect(dry.findings).toEqual(findings);
  return { findings, rejected, minutes: siteRecords.map((r) => [r.day, r.personMinutes]) };
}

describe('records of site as they are taken in', () => {
  it('of a day yet to come are taken, and said at once with row, column and what to do', async () => {
    const { findings, rejected, minutes } = await recorded(['2026-08-04,minutes,QA,101,60', '2026-08-05,minutes,QA,101,45', '2062-08-04,minutes,QA,101,30']);
    expect(findings).toMatchObject([{ file: 'site-records.csv', row: 4, column: 'day', value: '2062-08-04', severity: 'warning', code: 'day-ahead', expected: 'a day up to 2026-08-05' }]);
    expect(findings[0]!.whatToDo).toContain('correct it if it is mistyped');
    expect(rejected).toBe(0);
    expect(minutes).toEqual([['2026-08-04', 60], ['2026-08-05', 45], ['2062-08-04', 30]]);
  });

  it('two rows of minutes of one dwelling and day are to be added up in one row', async () => {
    const { findings, minutes } = await recorded(['2026-08-04,minutes,QA,101,60', '2026-08-04,minutes,QA,101,45']);
    expect(findings).toMatchObject([{ row: 3, severity: 'error', code: 'duplicate-id' }]);
    expect(findings[0]!.whatToDo).toContain('add them up in one row');
    expect(minutes).toEqual([['2026-08-04', 60]]);
    const same = await recorded(['2026-08-04,minutes,QA,101,60', '2026-08-04,minutes,QA,101,60']);
    expect(same.findings).toMatchObject([{ row: 3, severity: 'warning', code: 'exact-duplicate' }]);
    expect(same.findings[0]!.whatToDo).toContain('add them up in one row');
  });

  it('other rows sent twice are the same record, and nothing is to be added up', async () => {
    const { findings } = await recorded(['2026-08-04,done,QA,101,', '2026-08-04,done,QA,101,']);
    expect(findings).toMatchObject([{ code: 'exact-duplicate' }]);
    expect(findings[0]!.whatToDo).not.toContain('add');
  });
});
