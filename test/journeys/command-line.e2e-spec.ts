import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const ROOT = join(__dirname, '..', '..');
const SURVEY = join(ROOT, 'test', 'inventories', 'ok', 'two-buildings');
let folder: string;

/** Runs the program from source as a person would, on a database of its own. */
function rollout(...args: string[]): { readonly code: number | null; readonly out: string; readonly said: string } {
  const done = spawnSync(process.execPath, ['--import', 'tsx', '--conditions=source', 'apps/cli/src/main.ts', ...args], { cwd: ROOT, encoding: 'utf8' });
  return { code: done.status, out: done.stdout, said: done.stderr };
}
const kept = (...args: string[]) => rollout(...args, '--database', join(folder, 'rollout.sqlite'));
const json = (...args: string[]): unknown => JSON.parse(kept(...args, '--json').out);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'rollout-'));
  expect(kept('import', SURVEY, '--rejects', join(folder, 'rejects')).out).toMatch(/Written to the database\.$/m);
  expect(kept('plan', '--draws', '0', '--seconds', '1', '--quiet').code).toBe(0);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a manager on the command line', () => {
  it('sees a dwelling of the plan explained as the ranked list has it', () => {
    const [first] = json('rank') as { dwelling: string; inPlan: string }[];
    const { reason } = json('explain', first?.dwelling ?? '') as { reason: { phase: string | null } };
    expect(first?.inPlan).toBe(reason.phase);
  }, 120_000);

  it('gets JSON of bills, their split, the ledger and the verification that parses', () => {
    expect(json('bills', 'show')).toHaveProperty('bills');
    expect(Array.isArray(json('bills', 'fit'))).toBe(true);
    expect(json('ledger', '--on', '2026-09-01')).toMatchObject({ on: '2026-09-01' });
    expect(json('verify')).toHaveProperty('verification');
  }, 120_000);
});

describe('exit codes', () => {
  it('are 2 for an option, a value or a file that cannot be used, said in a sentence', () => {
    expect(rollout('check', join(folder, 'nowhere'))).toMatchObject({ code: 2, said: `There is no file or folder ${join(folder, 'nowhere')}.\n` });
    expect(rollout('plan', '--cap', 'much')).toMatchObject({ code: 2, said: '--cap must be dollars, got much\n' });
    expect(kept('explain', 'NO/1').code).toBe(2);
    expect(kept('rank', '--most', 'all').code).toBe(2);
    expect(rollout('rank', '--colour').code).toBe(2);
  }, 120_000);

  it('are 2 for a database that is not there, and none is made by a command that only reads', () => {
    const missing = join(folder, 'mistyped.sqlite');
    const asks = [['rank'], ['plan'], ['export'], ['explain', 'QA/101'], ['papers', '--out', folder], ['calendar'], ['verify'], ['ledger'], ['receipt', '--list'], ['now', '--hours', '3', '--dwellings', 'QA/101'], ['relay'], ['bills', 'show'], ['bills', 'fit'], ['sign', 'p'], ['record', join(folder, 'r.csv')], ['check', SURVEY], ['shadow-line', '--dwelling', 'QA/101', '--window', 'W01', '--at', '2026-07-15T15:30']];
    writeFileSync(join(folder, 'r.csv'), 'day,kind,dwelling\n2026-07-15,done,QA/101\n');
    for (const ask of asks) {
      expect([ask[0], rollout(...ask, '--database', missing)]).toMatchObject([ask[0], { code: 2, out: '', said: `There is no database at ${missing}; import first: rollout import <folder> --database ${missing}\n` }]);
      expect(existsSync(missing)).toBe(false);
    }
  }, 240_000);

  it('are 1 where there is nothing to work on yet, and 3 where rows were rejected', () => {
    expect(rollout('rank', '--database', ':memory:').code).toBe(1);
    const bad = join(folder, 'bills.csv');
    writeFileSync(bad, 'meter,first_day,last_day,use_kWh\nNO-METER,2026-01-01,2026-01-31,much\n');
    expect(kept('bills', 'import', bad, '--dry-run', '--rejects', join(folder, 'rejects'))).toMatchObject({ code: 3, out: expect.stringContaining('Looked at only: nothing was written.') as string });
  }, 120_000);
});
