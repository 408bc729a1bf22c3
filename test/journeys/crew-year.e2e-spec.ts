import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { NowAnswer, Plan, PlanCalendar, RelaidPlan } from '#planning';

/** A crew's year through the command line, step by step on one database: each step is a process of its own, as a crew lead starts it. */
const folder = mkdtempSync(join(tmpdir(), 'crew-year-'));
const database = join(folder, 'rollout.sqlite');

function rollout(command: readonly string[], exit = 0): string {
  const ran = spawnSync(process.execPath, ['--import', 'tsx', '--conditions=source', 'apps/cli/src/main.ts', ...command], { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 });
  if (ran.status !== exit) throw new Error(`rollout ${command.join(' ')} ended with ${String(ran.status)}: ${ran.stderr}`);
  return ran.stdout;
}
const asJson = <T>(command: readonly string[], exit = 0): T => JSON.parse(rollout([...command, '--database', database, '--json'], exit)) as T;

const HEAD = 'day,kind,building,dwelling,window,pane,width,height,person_minutes,defect,note';
const onSite = (rows: readonly string[]): string => {
  const file = join(folder, `site-records-${String(rows.length)}.csv`);
  writeFileSync(file, [HEAD, ...rows].join('\n'));
  return file;
};

jest.setTimeout(180_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a crew’s year', () => {
  it('goes from survey to plan, paper, record, new revision and the best use of an afternoon', () => {
    rollout(['import', 'test/inventories/ok/two-buildings', '--database', database, '--rejects', join(folder, 'rejects')]);
    const plan = asJson<Plan>(['plan', '--draws', '0', '--seconds', '1', '--quiet']);
    expect(plan).toMatchObject({ revision: 1, settled: null });
    const today = plan.madeOn;

    const ics = join(folder, 'work.ics');
    const calendar = asJson<PlanCalendar>(['calendar', '--out', ics]);
    expect(readFileSync(ics, 'utf8').match(/BEGIN:VEVENT/g)).toHaveLength(calendar.days.flatMap((d) => d.visits).length);

    rollout(['papers', '--database', database, '--out', join(folder, 'papers'), '--only', 'crew,cuts']);
    expect(existsSync(join(folder, 'papers', 'crew.pdf'))).toBe(true);

    // A pane broke and nobody wrote how: that row is sent back, nothing is written of it, and the exit code says so.
    const silent = onSite([`${today},broken pane,QB,001,W01,1,,,,,`]);
    rollout(['record', silent, '--database', database, '--rejects', join(folder, 'rejects')], 3);
    const rows = [`${today},done,QA,101,,,,,,,`, `${today},minutes,QA,101,,,,,140,,`, `${today},defect,QA,101,W01,1,,,,CREASE,`, `${today},done,QB,001,,,,,,,`, `${today},broken pane,QB,001,W01,1,,,,,stone hit it; office told`, `${today},field size,QA,201,W01,1,46 1/8,46,,,`];
    rollout(['record', onSite(rows), '--database', database, '--rejects', join(folder, 'rejects')]);

    const relaid = asJson<RelaidPlan>(['relay']);
    expect(relaid.measured).toMatchObject([{ pane: 'QA/201/W01/1', keeps: true }]);

    const next = asJson<Plan>(['plan', '--replan', plan.id, '--draws', '0', '--seconds', '1', '--quiet']);
    expect(next).toMatchObject({ revision: 2, parent: plan.id });
    expect(next.lines.map((l) => l.dwelling)).not.toContain('QA/101');
    expect(next.notRanked.find((n) => n.dwelling === 'QA/101')?.why).toBe(`film is on: done by ${today}`);
    const again = next.workOrders.filter((o) => o.again === true);
    expect(again.map((o) => [o.dwelling, o.panes.map((p) => p.pane), o.day === null])).toEqual([['QA/101', ['QA/101/W01/1'], false], ['QB/001', ['QB/001/W01/1'], true]]);
    // Money is counted once: what is spent, kept and left is the cap that was given.
    const kept = next.settled!.redoMoney![0]!;
    expect(next.settled!.spent[0]!.spent_cents + kept.film_cents + kept.work_cents + next.phases[0]!.phase.cap_cents).toBe(plan.phases[0]!.phase.cap_cents);

    const now = asJson<NowAnswer>(['now', '--hours', '3', '--dwellings', 'QA/101,QA/102,QB/002']);
    expect(now.uses.length).toBeGreaterThan(0);
    expect(now.uses.flatMap((u) => u.options.map((o) => o.dwelling))).not.toContain('QA/101'); // its film is on
    expect(now.uses.flatMap((u) => u.cuts.flatMap((c) => c.bought))).toEqual([]); // from the shelf alone
  });
});
