import type { RelaidPlan } from '#planning';
import { keptPlan, withStore } from '../line.js';
import { tableText } from '../said.js';
import { type AddCommand, collect, DATABASE_OPTION, DONE, print, type Shared, WITH_REJECTS } from './command.js';
import { Unusable } from '../unusable.js';

interface RelayOptions extends Shared {
  readonly database: string;
  readonly plan?: string;
  readonly sizes?: string;
  readonly cutTo: string[];
}

/** `ROLL=INCHES` of the command line; the name of a roll may hold "=" itself. @throws Unusable for anything else */
async function cutTo_mm(texts: readonly string[], rolls: ReadonlySet<string>): Promise<Map<string, number>> {
  const { mmOfTicks, TICKS_PER_IN } = await import('#calc');
  return new Map(texts.map((text) => {
    const at = text.lastIndexOf('=');
    const length = Number(text.slice(at + 1));
    if (at < 1 || !(length >= 0)) throw new Unusable(`--cut-to must be ROLL=INCHES, got ${text}`);
    const roll = text.slice(0, at);
    if (!rolls.has(roll)) throw new Unusable(`--cut-to names roll ${roll}; the plan cuts ${[...rolls].join(', ')}`);
    return [roll, mmOfTicks(length * TICKS_PER_IN)];
  }));
}

/** Rolls, pieces and what no longer fits, in the words of the crew's table. */
async function relaidText(result: RelaidPlan): Promise<string> {
  const [{ inEnglish, told }, { inchesText, ticksOf_mm }] = await Promise.all([import('#planning'), import('#calc')]);
  const tape = (mm: number): string => inchesText(ticksOf_mm(mm));
  const panes = (count: number) => told('count.panes', { count });
  const changed = result.measured.filter((m) => !m.keeps);
  const head = [told('relay.col.along'), told('relay.col.across'), told('relay.col.cut'), told('relay.col.pane')].map(inEnglish);
  const check = (r: RelaidPlan['rolls'][number]) => (r.check.ok ? told('relay.checked') : told('relay.faults', { faults: r.check.faults.join('; ') }));
  return [
    inEnglish(result.measured.length === 0 ? told('relay.none') : told('relay.measured', { panes: panes(result.measured.length), kept: result.measured.length - changed.length, changed: changed.length })),
    ...changed.map((m) => `  ${inEnglish(told('relay.changed', { pane: m.pane, planned: m.planned, needed: m.needed }))}`),
    ...result.rolls.flatMap((r) => [
      '', inEnglish(told('relay.roll', { roll: r.roll, film: r.film, line: tape(r.line_mm), pieces: told('count.pieces', { count: r.moved.length }), left: tape(r.left_mm), check: check(r) })),
      tableText([...head, ''], [...r.pieces].sort((p, q) => p.y_mm - q.y_mm || p.x_mm - q.x_mm).map((p) => [tape(p.y_mm), tape(p.x_mm), `${p.cutWidth} × ${p.cutLength}`, p.piece, r.moved.includes(p.piece) ? inEnglish(told('relay.moved')) : ''])),
    ]),
    ...result.unplaced.map((u) => inEnglish(told('relay.unplaced', { pane: u.pane, size: u.size, why: u.why }))),
    ...(result.notInPlan.length === 0 ? [] : [inEnglish(told('relay.notInPlan', { windows: result.notInPlan.join(', ') }))]),
  ].join('\n');
}

export const relay: AddCommand = (program) => {
  program
    .command('relay')
    .description('field sizes against the cut list: pieces within the allowance keep their place, else the rest of the opened roll is laid out again')
    .option(...DATABASE_OPTION)
    .option('--plan <id>', 'another plan than the newest')
    .option('--sizes <file>', 'site records with field sizes; without it those already recorded')
    .option('--cut-to <roll=inches>', 'how far a roll has been run off, repeatable: pieces before that line are cut and keep their place; without it nothing counts as cut and the whole roll may be laid again', collect, [])
    .option('--json', 'the layout as JSON')
    .action(async (options: RelayOptions) => {
      const [{ relayPlan }, { fileAt, readInventory }] = await Promise.all([import('#planning'), import('#intake')]);
      const { plan, sizes } = await withStore(options.database, async (store) => {
        const kept = await store.load();
        const read = options.sizes === undefined ? null : await readInventory([fileAt(options.sizes)], { kept, only: 'siteRecords' });
        for (const f of read?.findings ?? []) if (f.severity === 'error') console.error(`${f.file}, row ${String(f.row)}: ${f.column ?? ''} expected ${f.expected}`);
        if (read?.findings.some((f) => f.severity === 'error') === true) process.exitCode = WITH_REJECTS;
        return { plan: await keptPlan(store, options.plan), sizes: read?.records.siteRecords ?? kept.siteRecords };
      });
      const result = relayPlan({ plan, sizes, cutTo_mm: await cutTo_mm(options.cutTo, new Set(plan.cuts.flatMap((c) => c.rolls.map((r) => r.roll)))) });
      const text = await relaidText(result);
      print(result, () => text, options.json);
      if (result.unplaced.length > 0) process.exitCode = WITH_REJECTS;
      process.exitCode ??= DONE;
    });
};
