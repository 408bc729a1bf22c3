import { dirname, join } from 'node:path';
import { reportText } from '../findings-text.js';
import { asked, askedAim, askedOutlook, makePlan, takeIn, withStore } from '../line.js';
import { planText, ranksText } from '../plan-text.js';
import { wholeNumber } from '../unusable.js';
import { type AddCommand, collect, print, type Shared } from './command.js';
import { writeWorkbook } from './export.js';
import { papersText, writePapers } from './papers.js';
import { codeOf, writeRejects } from './rejects.js';

interface RunOptions extends Shared {
  readonly cap: string[];
  readonly view?: string;
  readonly out: string;
  readonly seconds: string;
  readonly draws: string;
  readonly seed: string;
  readonly aim: string;
  readonly papers?: string;
}

/** The whole line in one go: take in, rank, plan, cut, write the workbook. The database is in memory unless one is named. */
async function wholeLine(folder: string, options: RunOptions): Promise<number> {
  return withStore(options.database ?? ':memory:', async (store) => {
    const say = (text: string): void => {
      if (options.quiet !== true) console.error(text);
    };
    say(`reading ${folder}`);
    const report = await takeIn(store, folder, false);
    if (report.findings.some((f) => f.severity !== 'note')) console.error(reportText(report, options.all === true));
    writeRejects(report, join(dirname(options.out), 'rejects'));
    say(`planning ${report.created} records`);
    const made = await makePlan(store, { ask: asked(options.cap, options.view), folder, timeLimit_s: wholeNumber(options.seconds, '--seconds', 1), quiet: options.quiet === true, ...askedOutlook(options.draws, options.seed), aim: askedAim(options.aim) });
    await writeWorkbook(made, options.out);
    const printed = options.papers === undefined ? [] : await writePapers(made, { out: options.papers });
    const { expectations } = await import('../expectations.js');
    print(made, () => [planText(made), '', 'Best dwellings:', ranksText(made.rankedDwellings, 12), expectations(folder, made), '', `Workbook: ${options.out}`, ...(printed.length === 0 ? [] : [papersText(printed)])].join('\n'), options.json);
    return codeOf(report);
  }, { mayCreate: true });
}

export const run: AddCommand = (program) => {
  program
    .command('run <folder>')
    .description('the whole line in one go: survey files to ranked portfolio, plan under the caps and workbook')
    .option('--cap <phase=dollars>', 'cap of a phase, repeatable; dollars alone give every owner one year with that cap', collect, [])
    .option('--view <view>', 'whole (all payers) or owner')
    .option('--out <file>', 'the workbook', 'out/rollout.xlsx')
    .option('--papers <folder>', 'print the papers of the plan there as well')
    .option('--database <place>', 'keep everything here; in memory by default')
    .option('--seconds <n>', 'time a round of the selection may take', '3')
    .option('--draws <n>', 'draws of what is not known, 0 for none', '200')
    .option('--seed <n>', 'seed of the draws', '1')
    .option('--aim <aim>', 'middle, or nine-in-ten: the plan of which nine draws in ten reach most', 'middle')
    .option('--quiet', 'no progress')
    .option('--all', 'every finding')
    .option('--json', 'the plan as JSON')
    .action(async (folder: string, options: RunOptions) => {
      process.exitCode = await wholeLine(folder, options);
    });
};
