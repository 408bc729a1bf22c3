import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Plan, Receipt } from '#planning';
import type { PortfolioStore } from '#store';
import { keptPlan, withStore } from '../line.js';
import { receiptText } from '../receipt-text.js';
import { tableText } from '../said.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';
import { Unusable } from '../unusable.js';

interface ReceiptOptions extends Shared {
  readonly database: string;
  readonly plan?: string;
  readonly list?: boolean;
  readonly compute?: string;
  readonly folder: string;
}

async function listed(plan: Plan, json: boolean | undefined): Promise<void> {
  const { receiptFigures, WITHOUT_RECEIPT } = await import('#planning');
  const figures = receiptFigures(plan).map(({ id, title }) => ({ id, title }));
  const without = WITHOUT_RECEIPT.map((w) => `  ${w.what}: ${w.why}.`);
  print({ figures, without: WITHOUT_RECEIPT }, () => [tableText(['figure', 'what it is'], figures.map((f) => [f.id, f.title])), '', 'Not opened by a receipt:', ...without].join('\n'), json);
}

/** Writes what the kernel takes. @throws Unusable where no kernel gives the figure */
function writeCompute(receipt: Receipt, file: string): void {
  if (receipt.compute === null) throw new Unusable(`No kernel gives ${receipt.figure}: ${receipt.computeWhy ?? 'it is worked by hand'}.`);
  writeFileSync(file, JSON.stringify(receipt.compute.input, null, 1) + '\n');
}

/** Opens the figure on all processors: some are worked again from the hours of the survey. */
async function opened(store: PortfolioStore, id: string, options: ReceiptOptions): Promise<Receipt> {
  const [{ PlanningService }, { workerPool }] = await Promise.all([import('#planning'), import('#workers')]);
  const plan = await keptPlan(store, options.plan);
  const pool = workerPool();
  try {
    const receipt = await new PlanningService(pool, store).receipt(plan, id, (file) => resolve(options.folder, file));
    if ('nearest' in receipt) throw new Unusable(`There is no figure ${id} in plan ${plan.id}. Nearest: ${receipt.nearest.join(', ')}. All of them: rollout receipt --list.`);
    return receipt;
  } finally {
    await pool.end();
  }
}

export const receipt: AddCommand = (program) => {
  program
    .command('receipt [figure]')
    .description('open any figure of a kept plan to one page: formula, numbers, rows, sources, and how to work it again')
    .option(...DATABASE_OPTION)
    .option('--plan <id>', 'another plan than the newest')
    .option('--list', 'the figures that can be opened, one a line')
    .option('--compute <file>', 'write the input of its kernel, for `rollout compute`')
    .option('--folder <folder>', 'where weather files named in the inventory lie', '.')
    .option('--json', 'as JSON')
    .action(async (figure: string | undefined, options: ReceiptOptions) => {
      if (options.list === true || figure === undefined) {
        await listed(await withStore(options.database, (store) => keptPlan(store, options.plan)), options.json);
        return;
      }
      const receipt = await withStore(options.database, (store) => opened(store, figure, options));
      if (options.compute !== undefined) writeCompute(receipt, options.compute);
      print(receipt, () => receiptText(receipt), options.json);
    });
};
