import type { CutRule, LotRule } from '#planning';
import { asked, askedAim, askedOutlook, keptPlan, makePlan, withStore } from '../line.js';
import { planText } from '../plan-text.js';
import { type AddCommand, collect, DATABASE_OPTION, print, type Shared } from './command.js';
import { Unusable, wholeNumber } from '../unusable.js';

interface PlanOptions extends Shared {
  readonly database: string;
  readonly cap: string[];
  readonly view?: string;
  readonly seconds: string;
  readonly draws: string;
  readonly seed: string;
  readonly aim: string;
  readonly folder: string;
  readonly check?: string;
  readonly replan?: string;
  readonly cutTogether?: boolean;
  readonly crewOrder?: boolean;
  readonly mixLots?: boolean;
  readonly prove?: string | true;
}

/** @throws Unusable for anything but minutes above 0 */
function proveSeconds({ prove }: PlanOptions): { prove_s?: number } {
  if (prove === undefined) return {};
  const minutes = prove === true ? 10 : Number(prove);
  if (!(minutes > 0)) throw new Unusable(`--prove must be minutes above 0, got ${String(prove)}`);
  return { prove_s: minutes * 60 };
}

/** How pieces share the rolls; nothing said is the least film with one lot a side of a building. */
const cutRuleOf = ({ cutTogether, crewOrder, mixLots }: PlanOptions): { cutRule?: CutRule; lotRule?: LotRule } => ({
  ...(crewOrder === true ? { cutRule: 'crew order' as const } : cutTogether === true ? { cutRule: 'dwelling together' as const } : {}),
  ...(mixLots === true ? { lotRule: 'any lot' as const } : {}),
});

/** Checks the proof kept with a plan; a proof that does not hold is exit code 1. */
async function checkKept(options: PlanOptions, id: string): Promise<void> {
  const kept = await withStore(options.database, (store) => keptPlan(store, id));
  const { checkProof } = await import('#planning');
  const check = checkProof(kept);
  print({ plan: kept.id, ...check }, () => `plan ${kept.id}: ${check.text}`, options.json);
  if (!check.valid) process.exitCode = 1;
}

export const plan: AddCommand = (program) => {
  program
    .command('plan')
    .description('rank, choose under the caps, cut and price; the plan is kept in the database')
    .option(...DATABASE_OPTION)
    .option('--cap <phase=dollars>', 'cap of a phase, repeatable; dollars alone give every owner one year with that cap', collect, [])
    .option('--view <view>', 'whole (all payers) or owner')
    .option('--seconds <n>', 'work a round of the selection may take, counted in steps so that every machine makes the same plan', '3')
    .option('--prove [minutes]', 'go on until the choice is proved, for up to 10 minutes, the mixed-integer solver beside; each better plan is told')
    .option('--folder <folder>', 'where weather files named in the inventory lie', '.')
    .option('--cut-together', 'each dwelling on one stretch of one roll; its price in film is printed with every plan')
    .option('--crew-order', 'each dwelling on one stretch, rolls filled in the order of dwellings')
    .option('--mix-lots', 'a side of a building may be cut from film of several lots; without it, one lot a side, its price in film printed with every plan')
    .option('--replan <id>', 'a new revision of a kept plan: done work stands and is paid, the rest is planned again around what was recorded')
    .option('--check <id>', 'makes nothing: checks the proof kept with a plan again, without the search')
    .option('--draws <n>', 'draws of what is not known, 0 for none', '200')
    .option('--seed <n>', 'seed of the draws', '1')
    .option('--aim <aim>', 'middle, or nine-in-ten: the plan of which nine draws in ten reach most', 'middle')
    .option('--quiet', 'no progress')
    .option('--json', 'the plan as JSON')
    .action(async (options: PlanOptions) => {
      if (options.check !== undefined) return checkKept(options, options.check);
      const order = { ask: asked(options.cap, options.view), folder: options.folder, timeLimit_s: wholeNumber(options.seconds, '--seconds', 1), quiet: options.quiet === true, ...askedOutlook(options.draws, options.seed), aim: askedAim(options.aim), ...proveSeconds(options), ...cutRuleOf(options), ...(options.replan === undefined ? {} : { replan: options.replan }) };
      const made = await withStore(options.database, (store) => makePlan(store, order));
      print(made, () => planText(made), options.json);
    });
};
