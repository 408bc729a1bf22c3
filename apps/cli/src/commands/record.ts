import { reportText, writtenText } from '../findings-text.js';
import { withStore } from '../line.js';
import { counted } from '../said.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';
import { codeOf, writeRejects } from './rejects.js';
import { Unusable } from '../unusable.js';

interface RecordOptions extends Shared {
  readonly database: string;
  readonly dryRun?: boolean;
  readonly undo?: string;
  readonly rejects: string;
}

async function undone(id: string, options: RecordOptions): Promise<void> {
  const counts = await withStore(options.database, async (store) => {
    if (!(await store.imports()).some((i) => i.id === id)) throw new Unusable(`There is no import ${id}.`);
    return store.undoImport(id);
  });
  print({ import: id, ...counts }, () => `Import ${id} is undone: ${counted(counts.removed, 'record')} removed, ${String(counts.restored)} put back as before, ${String(counts.keptAsChanged)} left as they are because they were changed since. A plan made with them stays; \`rollout plan\` makes a new one.`, options.json);
}

export const record: AddCommand = (program) => {
  program
    .command('record [files...]')
    .description('take in what the crew found or did (site-records.csv): field sizes, done, no access, defects, broken panes, minutes, film used')
    .option(...DATABASE_OPTION)
    .option('--dry-run', 'say what would change, and change nothing')
    .option('--undo <import>', 'take back what an import of site records did')
    .option('--rejects <folder>', 'where reject files go', 'out/rejects')
    .option('--all', 'every finding')
    .option('--json', 'the report as JSON')
    .action(async (files: readonly string[], options: RecordOptions) => {
      if (options.undo !== undefined) return undone(options.undo, options);
      if (files.length === 0) throw new Unusable('Name one or more files of site records, or --undo an import.');
      const { fileAt, IntakeService } = await import('#intake');
      const { report, imports } = await withStore(options.database, async (store) => {
        const service = new IntakeService(store);
        const sent = files.map(fileAt);
        const at = new Date().toISOString();
        const only = { only: 'siteRecords' as const, today: at.slice(0, 10) };
        const before = new Set((await store.imports()).map((i) => i.id));
        const found = options.dryRun === true ? await service.check(sent, only) : await service.import(sent, at, only);
        return { report: found, imports: (await store.imports()).filter((i) => !before.has(i.id)) };
      });
      print({ ...report, imports: imports.map((i) => i.id) }, () => [
        reportText(report, options.all === true),
        ...imports.map((i) => `import ${i.id}: ${i.file} (rollout record --undo ${i.id} takes it back)`),
        writtenText(report, options.dryRun === true),
      ].join('\n'), options.json);
      writeRejects(report, options.rejects);
      process.exitCode = codeOf(report);
    });
};
