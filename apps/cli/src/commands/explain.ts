import { dwellingText } from '../explain-text.js';
import { keptPlan, withStore } from '../line.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';
import { Unusable } from '../unusable.js';

interface ExplainOptions extends Shared {
  readonly database: string;
  readonly plan?: string;
}

export const explain: AddCommand = (program) => {
  program
    .command('explain <dwelling>')
    .description('why a dwelling is in the plan or not, and what would have to be true for it to enter')
    .option(...DATABASE_OPTION)
    .option('--plan <id>', 'another plan than the newest')
    .option('--json', 'as JSON')
    .action(async (dwelling: string, options: ExplainOptions) => {
      const kept = await withStore(options.database, (store) => keptPlan(store, options.plan));
      const text = dwellingText(kept, dwelling);
      if (text === null) throw new Unusable(`There is no dwelling ${dwelling} in plan ${kept.id}${kept.explanations === undefined ? ', which was kept before reasons were recorded' : ''}.`);
      const reason = kept.explanations?.dwellings.find((d) => d.dwelling === dwelling) ?? null;
      const reserve = kept.explanations?.reserve.find((r) => r.dwelling === dwelling) ?? null;
      print({ plan: kept.id, dwelling, reason, reserve, prices: kept.explanations?.prices ?? [] }, () => text, options.json);
    });
};
