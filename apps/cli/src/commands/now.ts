import { resolve } from 'node:path';
import type { NowAnswer, Plan, StockRoll } from '#planning';
import { wholeDollarsText } from '#calc';
import type { PortfolioStore } from '#store';
import { withStore } from '../line.js';
import { tableText } from '../said.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';
import { Unusable } from '../unusable.js';

interface NowOptions extends Shared {
  readonly database: string;
  readonly hours: string;
  readonly dwellings: string;
  readonly stock?: string;
  readonly folder: string;
}

/** Film on the shelf: the file named, else what is kept. */
async function shelf(store: PortfolioStore, file: string | undefined): Promise<readonly StockRoll[]> {
  const [{ fileAt, readInventory }, { filmOnShelf }] = await Promise.all([import('#intake'), import('#planning')]);
  const kept = await store.load();
  const read = file === undefined ? null : await readInventory([fileAt(file)], { kept, only: 'rolls' });
  const errors = (read?.findings ?? []).filter((f) => f.severity === 'error');
  if (errors.length > 0) throw new Unusable(errors.map((f) => `${f.file}, row ${String(f.row)}: ${f.column ?? ''} expected ${f.expected}`).join('\n'));
  const [newest] = await store.plans();
  const plan = newest === undefined ? null : ((await store.loadPlan(newest.id))?.body as Plan);
  return filmOnShelf(kept, read?.records.rolls ?? null, plan);
}

/** What to do, best first, with what to cut for the first. */
function nowText(answer: NowAnswer): string {
  const minutes = `${answer.personMinutes.toFixed(0)} person-minutes at the glass, once loading, parking and keys are taken off`;
  if (answer.why !== null) return `${minutes}: ${answer.why}.`;
  const rows = answer.uses.map((u, i) => [String(i + 1), u.options.map((o) => `${o.dwelling}: ${o.words}`).join('; '), String(u.options.reduce((sum, o) => sum + o.panes, 0)), String(u.minutes), wholeDollarsText(u.value_cents)]);
  const cuts = answer.uses[0]?.cuts.flatMap((c) => c.pieces.map((p) => [c.film, p.roll, `${p.cutWidth} × ${p.cutLength}`, p.piece])) ?? [];
  return [`${minutes}. Best first; the film on the shelf counts as paid:`, tableText(['place', 'what', 'panes', 'person-minutes', 'worth'], rows), '', 'Measure each pane first. To cut for place 1:', tableText(['film', 'roll', 'cut size, in', 'pane'], cuts)].join('\n');
}

export const now: AddCommand = (program) => {
  program
    .command('now')
    .description('some hours, some empty dwellings, film on the shelf: the best use of them')
    .option(...DATABASE_OPTION)
    .requiredOption('--hours <n>', 'hours of the crew')
    .requiredOption('--dwellings <ids>', 'dwellings that are open, with commas')
    .option('--stock <file>', 'rolls on the shelf (columns of rolls.csv); else what the newest plan left, else the inventory')
    .option('--folder <folder>', 'where weather files named in the inventory lie', '.')
    .option('--json', 'the answer as JSON')
    .action(async (options: NowOptions) => {
      const hours = Number(options.hours);
      if (!(hours > 0)) throw new Unusable(`--hours must be above 0, got ${options.hours}`);
      const [{ PlanningService }, { workerPool }] = await Promise.all([import('#planning'), import('#workers')]);
      const answer = await withStore(options.database, async (store) => {
        const stock = await shelf(store, options.stock);
        const pool = workerPool();
        try {
          const order = { id: 'now', made: new Date().toISOString(), resolve: (file: string) => resolve(options.folder, file) };
          return await new PlanningService(pool, store).bestUse(order, { hours, dwellings: options.dwellings.split(',').map((d) => d.trim()), stock });
        } finally {
          await pool.end();
        }
      });
      print(answer, () => nowText(answer), options.json);
    });
};
