#!/usr/bin/env node
import { Command } from 'commander';

// Nothing but commander is loaded here: each command loads what it needs when it is asked for, so that --help and compute start at once.
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
  rollout compute --list                              every figure can be worked again from outside

Exit codes: 0 done; 1 failed (the message says why); 2 a value or a file cannot be used (findings printed);
            3 done, but rows were rejected or errors remain in the files.`,
  );

const collect = (value: string, before: string[]): string[] => [...before, value];

program
  .command('check <folder>')
  .description('read survey files and say what is wrong in them; changes nothing')
  .option('--database <place>', 'compare with what this database holds')
  .option('--all', 'every finding')
  .option('--json', 'the report as JSON')
  .action(async (folder: string, options: object) => {
    process.exitCode = await (await import('./commands.js')).check(folder, options);
  });

program
  .command('import <folder>')
  .description('take the good rows of survey files in; bad rows go to reject files')
  .option('--database <place>', 'SQLite file or postgres:// address', 'rollout.sqlite')
  .option('--rejects <folder>', 'where reject files go', 'out/rejects')
  .option('--all', 'every finding')
  .option('--json', 'the report as JSON')
  .action(async (folder: string, options: object) => {
    process.exitCode = await (await import('./commands.js')).importFolder(folder, options);
  });

program
  .command('plan')
  .description('rank, choose under the caps, cut and price; the plan is kept in the database')
  .option('--database <place>', 'SQLite file or postgres:// address', 'rollout.sqlite')
  .option('--cap <phase=dollars>', 'cap of a phase, repeatable; dollars alone give every owner one year with that cap', collect, [])
  .option('--view <view>', 'whole (all payers) or owner')
  .option('--seconds <n>', 'time a round of the selection may take', '3')
  .option('--folder <folder>', 'where weather files named in the inventory lie', '.')
  .option('--quiet', 'no progress')
  .option('--json', 'the plan as JSON')
  .action(async (options: { cap: string[]; seconds: string; folder: string }) => {
    process.exitCode = await (await import('./commands.js')).plan(options);
  });

program
  .command('rank')
  .description('dwellings (or facades) by yearly cooling-cost reduction per dollar of film, from the newest plan')
  .option('--database <place>', 'SQLite file or postgres:// address', 'rollout.sqlite')
  .option('--plan <id>', 'another plan than the newest')
  .option('--facades', 'facades of dwellings instead of dwellings')
  .option('--most <n>', 'lines to show', '40')
  .option('--json', 'all lines as JSON')
  .action(async (options: { most: string }) => {
    process.exitCode = await (await import('./commands.js')).rank(options);
  });

program
  .command('export')
  .description('write the rollout workbook of a kept plan')
  .option('--database <place>', 'SQLite file or postgres:// address', 'rollout.sqlite')
  .option('--plan <id>', 'another plan than the newest')
  .option('--out <file>', 'the workbook', 'out/rollout.xlsx')
  .option('--json', 'what was written, as JSON')
  .action(async (options: { out: string }) => {
    process.exitCode = await (await import('./commands.js')).exportPlan(options);
  });

program
  .command('run <folder>')
  .description('the whole line in one go: survey files to ranked portfolio, plan under the caps and workbook')
  .option('--cap <phase=dollars>', 'cap of a phase, repeatable; dollars alone give every owner one year with that cap', collect, [])
  .option('--view <view>', 'whole (all payers) or owner')
  .option('--out <file>', 'the workbook', 'out/rollout.xlsx')
  .option('--database <place>', 'keep everything here; in memory by default')
  .option('--seconds <n>', 'time a round of the selection may take', '3')
  .option('--quiet', 'no progress')
  .option('--all', 'every finding')
  .option('--json', 'the plan as JSON')
  .action(async (folder: string, options: { cap: string[]; out: string; seconds: string }) => {
    process.exitCode = await (await import('./commands.js')).run(folder, options);
  });

program
  .command('serve')
  .description('answer over HTTP on this machine (127.0.0.1)')
  .option('--port <n>', 'port', '3000')
  .option('--database <place>', 'SQLite file or postgres:// address', 'rollout.sqlite')
  .action(async (options: { port: string; database: string }) => {
    process.exitCode = await (await import('./serve.js')).serve(options);
  });

program
  .command('compute [kernel]')
  .description('work one figure again: one JSON value in, one out')
  .option('--list', 'the kernels, one a line')
  .option('--schema', 'the JSON Schema of the kernel')
  .option('--in <file>', 'read the value from a file instead of standard input')
  .option('--out <file>', 'write the result to a file instead of standard output')
  .action(async (kernel: string | undefined, options: { list?: boolean; schema?: boolean; in?: string; out?: string }) => {
    const { compute } = await import('./compute.js');
    process.exitCode = await compute(kernel, options);
  });

try {
  await program.parseAsync();
} catch (fault) {
  const { code, exitCode } = fault as { code?: string; exitCode?: number };
  if (code?.startsWith('commander.') !== true) console.error(fault instanceof Error ? fault.message : String(fault));
  process.exitCode = exitCode ?? 1;
}
