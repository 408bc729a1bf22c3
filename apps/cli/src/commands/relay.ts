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

function relaidText(result: RelaidPlan, tape: (mm: number) => string): string {
  const changed = result.measured.filter((m) => !m.keeps);
  return [
    `${String(result.measured.length)} panes measured: ${String(result.measured.length - changed.length)} keep their place, ${String(changed.length)} change their piece`,
    ...changed.map((m) => `  ${m.pane}: planned ${m.planned}, needs ${m.needed}`),
    ...result.rolls.flatMap((r) => [
      '', `Roll ${r.roll}, film ${r.film}: nothing before ${tape(r.line_mm)} in moved; ${String(r.moved.length)} pieces lie elsewhere; ${tape(r.left_mm)} in left; check ${r.check.ok ? 'passed' : r.check.faults.join('; ')}`,
      tableText(['along', 'across', 'cut', 'pane', ''], [...r.pieces].sort((a, b) => a.y_mm - b.y_mm || a.x_mm - b.x_mm).map((p) => [tape(p.y_mm), tape(p.x_mm), `${p.cutWidth} × ${p.cutLength}`, p.piece, r.moved.includes(p.piece) ? 'moved' : ''])),
    ]),
    ...result.unplaced.map((u) => `No room: ${u.pane} ${u.size}: ${u.why}`),
    ...(result.notInPlan.length === 0 ? [] : [`Not cut by this plan: ${result.notInPlan.join(', ')}`]),
  ].join('\n');
}

export const relay: AddCommand = (program) => {
  program
    .command('relay')
    .description('field sizes against the cut list: pieces within the allowance keep their place, else the rest of the opened roll is laid out again')
    .option(...DATABASE_OPTION)
    .option('--plan <id>', 'another plan than the newest')
    .option('--sizes <file>', 'site records with field sizes; without it those already recorded')
    .option('--cut-to <roll=inches>', 'how far a roll has been run off, repeatable', collect, [])
    .option('--json', 'the layout as JSON')
    .action(async (options: RelayOptions) => {
      const [{ relayPlan }, { fileAt, readInventory }, { inchesText, ticksOf_mm }] = await Promise.all([import('#planning'), import('#intake'), import('#calc')]);
      const { plan, sizes } = await withStore(options.database, async (store) => {
        const kept = await store.load();
        const read = options.sizes === undefined ? null : await readInventory([fileAt(options.sizes)], { kept, only: 'siteRecords' });
        for (const f of read?.findings ?? []) if (f.severity === 'error') console.error(`${f.file}, row ${String(f.row)}: ${f.column ?? ''} expected ${f.expected}`);
        if (read?.findings.some((f) => f.severity === 'error') === true) process.exitCode = WITH_REJECTS;
        return { plan: await keptPlan(store, options.plan), sizes: read?.records.siteRecords ?? kept.siteRecords };
      });
      const result = relayPlan({ plan, sizes, cutTo_mm: await cutTo_mm(options.cutTo, new Set(plan.cuts.flatMap((c) => c.rolls.map((r) => r.roll)))) });
      print(result, () => relaidText(result, (mm) => inchesText(ticksOf_mm(mm))), options.json);
      if (result.unplaced.length > 0) process.exitCode = WITH_REJECTS;
      process.exitCode ??= DONE;
    });
};
