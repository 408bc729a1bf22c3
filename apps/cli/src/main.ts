#!/usr/bin/env node
import { Command } from 'commander';
import { bills } from './commands/bills.js';
import { calendar } from './commands/calendar.js';
import { check } from './commands/check.js';
import { compute } from './commands/compute.js';
import { explain } from './commands/explain.js';
import { exportPlan } from './commands/export.js';
import { importFolder } from './commands/import.js';
import { ledger } from './commands/ledger.js';
import { papers } from './commands/papers.js';
import { plan } from './commands/plan.js';
import { rank } from './commands/rank.js';
import { receipt } from './commands/receipt.js';
import { record } from './commands/record.js';
import { now } from './commands/now.js';
import { relay } from './commands/relay.js';
import { run } from './commands/run.js';
import { serve } from './commands/serve.js';
import { shadow } from './commands/shadow-line.js';
import { sign } from './commands/sign.js';
import { verify } from './commands/verify.js';
import { endOf } from './unusable.js';

// Nothing heavy is loaded here: each command loads what it needs when it is asked for, so that --help and compute start at once.
const program = new Command('rollout')
  .description(
    'Which windows of a cooled housing portfolio to film first, with which film, under a budget cap, and what it is worth.\n' +
      'Survey files in, ranked dwellings, a plan with its bound, a cut list and a workbook out.',
  )
  .exitOverride()
  .showHelpAfterError('(rollout --help lists the commands)')
  .addHelpText(
    'after',
    `
Examples:
  rollout run data/demo --out out/rollout.xlsx        survey folder to workbook in one go, nothing kept
  rollout check survey/                               what is wrong in the files; changes nothing
  rollout import survey/                              take the good rows in; write the bad ones to a reject file
  rollout rank --json                                 dwellings and facades by cooling-cost reduction per dollar
  rollout plan --cap OWNER1/2026-27=14000             the plan under the caps, with its bound
  rollout explain ET/104                              why a dwelling is in the plan or not
  rollout receipt plan/npv                            any figure on one page, with the input that gives the same digits
  rollout verify                                      did it pay: bills after the film against bills before
  rollout compute --list                              every figure can be worked again from outside

Exit codes: 0 done; 1 failed (the message says why); 2 an option, a value or a file cannot be used (said on standard error);
            3 done, but rows were rejected or errors remain in the files, or pieces found no room.`,
  );

// In the order of the work.
for (const add of [check, importFolder, bills, ledger, rank, plan, explain, receipt, exportPlan, calendar, sign, record, relay, now, shadow, papers, verify, run, serve, compute]) add(program);

try {
  await program.parseAsync();
} catch (fault) {
  const { code, says } = endOf(fault);
  if (says !== null) console.error(says);
  process.exitCode = code;
}
