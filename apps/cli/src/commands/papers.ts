import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PaperName } from '#papers';
import type { Plan } from '#planning';
import { keptPlan, withStore } from '../line.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';
import { counted } from '../said.js';
import { Unusable } from '../unusable.js';

/** A paper as it was written to the folder. */
export interface WrittenPaper {
  readonly file: string;
  readonly pages: number;
}

export interface PaperAsk {
  readonly out: string;
  readonly only?: string | undefined;
  readonly format?: string | undefined;
}

/**
 * Writes the papers of a plan into a folder, each under its name.
 *
 * @throws Unusable for a name or a format that is not known
 */
export async function writePapers(made: Plan, ask: PaperAsk): Promise<WrittenPaper[]> {
  const { english, isPaperFormat, isPaperName, paper, PAPER_NAMES } = await import('#papers');
  const names = ask.only === undefined ? PAPER_NAMES : ask.only.split(',').map((name) => name.trim());
  const unknown = names.filter((name) => !isPaperName(name));
  if (unknown.length > 0) throw new Unusable(`--only must name papers out of ${PAPER_NAMES.join(', ')}, got ${unknown.join(', ')}`);
  const { format = null } = ask;
  if (format !== null && !isPaperFormat(format)) throw new Unusable(`--format must be letter or a4, got ${format}`);
  mkdirSync(ask.out, { recursive: true });
  const terms = { printed: new Date(), format, texts: english };
  const written: WrittenPaper[] = [];
  for (const name of names as readonly PaperName[]) {
    const { bytes, pages } = await paper(name, made, terms);
    const file = join(ask.out, `${name}.pdf`);
    writeFileSync(file, bytes);
    written.push({ file, pages });
  }
  return written;
}

export const papersText = (written: readonly WrittenPaper[]): string => written.map(({ file, pages }) => `${file}: ${counted(pages, 'page')}`).join('\n');

export const papers: AddCommand = (program) => {
  program
    .command('papers')
    .description('print a kept plan: crew sheets, cut list, labels, kit, sheets for residents, survey sheet and decision memo as PDF')
    .requiredOption('--out <folder>', 'where the papers go')
    .option(...DATABASE_OPTION)
    .option('--plan <id>', 'another plan than the newest')
    .option('--only <names>', 'some of the papers, apart by commas')
    .option('--format <format>', 'letter or a4; by default letter for a survey in inches, A4 otherwise')
    .option('--json', 'what was written, as JSON')
    .action(async (options: Shared & PaperAsk & { readonly database: string; readonly plan?: string }) => {
      const kept = await withStore(options.database, (store) => keptPlan(store, options.plan));
      const written = await writePapers(kept, options);
      print({ plan: kept.id, papers: written }, () => papersText(written), options.json);
    });
};
