import { writeFileSync } from 'node:fs';
import type { Plan, Receipt } from '#planning';
import { keptPlan, withStore } from '../line.js';
import { receiptText } from '../receipt-text.js';
import { tableText } from '../said.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';

interface ReceiptOptions extends Shared {
  readonly database: string;
  readonly plan?: string;
  readonly list?: boolean;
  readonly compute?: string;
}

async function listed(plan: Plan, json: boolean | undefined): Promise<void> {
  const { receiptFigures } = await import('#planning');
  const figures = receiptFigures(plan).map(({ id, title }) => ({ id, title }));
  print(figures, () => tableText(['figure', 'what it is'], figures.map((f) => [f.id, f.title])), json);
}

/** Writes what the kernel takes. @throws Error where no kernel gives the figure */
function writeCompute(receipt: Receipt, file: string): void {
  if (receipt.compute === null) throw new Error(`No kernel gives ${receipt.figure}: ${receipt.computeWhy ?? 'it is worked by hand'}.`);
  writeFileSync(file, JSON.stringify(receipt.compute.input, null, 1) + '\n');
}

async function opened(plan: Plan, id: string, options: ReceiptOptions): Promise<void> {
  const [{ receiptOf }, { openCatalogue }] = await Promise.all([import('#planning'), import('#catalogue')]);
  const receipt = receiptOf(id, { plan, catalogue: openCatalogue() });
  if ('nearest' in receipt) throw new Error(`There is no figure ${id} in plan ${plan.id}. Nearest: ${receipt.nearest.join(', ')}. All of them: rollout receipt --list.`);
  if (options.compute !== undefined) writeCompute(receipt, options.compute);
  print(receipt, () => receiptText(receipt), options.json);
}

export const receipt: AddCommand = (program) => {
  program
    .command('receipt [figure]')
    .description('open any figure of a kept plan to one page: formula, numbers, rows, sources, and how to work it again')
    .option(...DATABASE_OPTION)
    .option('--plan <id>', 'another plan than the newest')
    .option('--list', 'the figures that can be opened, one a line')
    .option('--compute <file>', 'write the input of its kernel, for `rollout compute`')
    .option('--json', 'as JSON')
    .action(async (figure: string | undefined, options: ReceiptOptions) => {
      const plan = await withStore(options.database, (store) => keptPlan(store, options.plan));
      if (options.list === true || figure === undefined) await listed(plan, options.json);
      else await opened(plan, figure, options);
    });
};
