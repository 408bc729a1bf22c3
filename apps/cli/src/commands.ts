import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { IntakeReport } from '#intake';
import type { Plan } from '#planning';
import { reportText } from './findings-text.js';
import { asked, DATABASE, keptPlan, makePlan, takeIn, withStore } from './line.js';
import { planText, ranksText } from './plan-text.js';

/** Options all commands share. */
export interface Shared {
  readonly json?: boolean;
  readonly database?: string;
  readonly quiet?: boolean;
  readonly all?: boolean;
}

const DONE = 0;
const WITH_REJECTS = 3;

const print = (value: unknown, text: () => string, json: boolean | undefined): void => {
  process.stdout.write((json === true ? JSON.stringify(value, null, 2) : text()) + '\n');
};

const codeOf = (report: IntakeReport): number => (report.rejected > 0 || report.findings.some((f) => f.severity === 'error') ? WITH_REJECTS : DONE);

function writeRejects(report: IntakeReport, folder: string): void {
  for (const reject of report.rejects) {
    mkdirSync(folder, { recursive: true });
    const path = join(folder, reject.name);
    writeFileSync(path, reject.text);
    console.error(`rejected rows, with the reason beside: ${path}`);
  }
}

export async function check(folder: string, options: Shared): Promise<number> {
  const report = await withStore(options.database ?? ':memory:', (store) => takeIn(store, folder, true));
  print(report, () => reportText(report, options.all === true), options.json);
  return codeOf(report);
}

export async function importFolder(folder: string, options: Shared & { readonly rejects?: string }): Promise<number> {
  const report = await withStore(options.database ?? DATABASE, (store) => takeIn(store, folder, false));
  print(report, () => reportText(report, options.all === true), options.json);
  writeRejects(report, options.rejects ?? 'out/rejects');
  return codeOf(report);
}

export async function plan(options: Shared & { readonly cap: string[]; readonly view?: string; readonly seconds: string; readonly folder: string }): Promise<number> {
  const made = await withStore(options.database ?? DATABASE, (store) => makePlan(store, { ask: asked(options.cap, options.view), folder: options.folder, timeLimit_s: Number(options.seconds), quiet: options.quiet === true, report: null }));
  print(made, () => planText(made), options.json);
  return DONE;
}

export async function rank(options: Shared & { readonly plan?: string; readonly facades?: boolean; readonly most: string }): Promise<number> {
  const kept = await withStore(options.database ?? DATABASE, (store) => keptPlan(store, options.plan));
  const rows = options.facades === true ? kept.rankedFacades : kept.rankedDwellings;
  print(rows, () => ranksText(rows, Number(options.most)), options.json);
  return DONE;
}

async function writeWorkbook(made: Plan, out: string): Promise<void> {
  const { writeRolloutWorkbook } = await import('#workbook');
  mkdirSync(dirname(out), { recursive: true });
  await writeRolloutWorkbook(made, out);
}

export async function exportPlan(options: Shared & { readonly plan?: string; readonly out: string }): Promise<number> {
  const kept = await withStore(options.database ?? DATABASE, (store) => keptPlan(store, options.plan));
  await writeWorkbook(kept, options.out);
  print({ plan: kept.id, workbook: options.out }, () => `plan ${kept.id} → ${options.out}`, options.json);
  return DONE;
}

/** The whole line in one go: take in, rank, plan, cut, write the workbook. The database is in memory unless one is named. */
export async function run(folder: string, options: Shared & { readonly cap: string[]; readonly view?: string; readonly out: string; readonly seconds: string }): Promise<number> {
  return withStore(options.database ?? ':memory:', async (store) => {
    const say = (text: string): void => {
      if (options.quiet !== true) console.error(text);
    };
    say(`reading ${folder}`);
    const report = await takeIn(store, folder, false);
    if (report.findings.some((f) => f.severity !== 'note')) console.error(reportText(report, options.all === true));
    writeRejects(report, join(dirname(options.out), 'rejects'));
    say(`planning ${report.created} records`);
    const made = await makePlan(store, { ask: asked(options.cap, options.view), folder, timeLimit_s: Number(options.seconds), quiet: options.quiet === true, report });
    await writeWorkbook(made, options.out);
    const expectations = await expectationsText(folder, made);
    print(made, () => [planText(made), '', 'Best dwellings:', ranksText(made.rankedDwellings, 12), expectations, '', `Workbook: ${options.out}`].join('\n'), options.json);
    return codeOf(report);
  });
}

async function expectationsText(folder: string, made: Plan): Promise<string> {
  const { expectations } = await import('./expectations.js');
  return expectations(folder, made);
}
