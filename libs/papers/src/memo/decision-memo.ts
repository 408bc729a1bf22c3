import { wholeDollarsText } from '#calc';
import type { PhaseResult, Plan } from '#planning';
import { type CellPart, text } from '../page/cell.js';
import type { PaperFile } from '../page/paper-bytes.js';
import type { Paper } from '../page/paper.js';
import { choices, dashed, heading, listed, signOff } from '../page/parts.js';
import { writeTable } from '../page/table.js';
import { type PaperTerms, planPaper } from '../paper-terms.js';
import type { Say } from '../texts/texts.js';
import { assumedWords, buysWords, shortWords, sureWords, waitsWords, whoWords, wrongWords } from './memo-words.js';

/** The memo is one page: the largest of these sizes at which it is. */
const SIZES = [11, 10.5, 10, 9.5, 9.25, 9, 8.5, 8, 7.5, 7] as const;

interface CapRow {
  readonly name: string;
  readonly phases: readonly PhaseResult[];
}

const MOST_ROWS = 8;

/** A row a phase; where there are many, one an owner. */
function capRows(plan: Plan, say: Say): CapRow[] {
  const byName = new Map<string, PhaseResult[]>();
  const name = (p: PhaseResult): string => (plan.phases.length > MOST_ROWS ? p.phase.ownerEntity : p.phase.id);
  for (const phase of plan.phases) byName.set(name(phase), [...(byName.get(name(phase)) ?? []), phase]);
  return [...[...byName].map(([key, phases]) => ({ name: key, phases })), { name: say('memo.total'), phases: plan.phases }];
}

function writeCaps(paper: Paper, plan: Plan, of: { readonly say: Say; readonly size: number }): void {
  const { say, size } = of;
  const sum = (row: CapRow, part: (p: PhaseResult) => number): number => row.phases.reduce((total, p) => total + part(p), 0);
  const right = (row: CapRow, words: string): CellPart[] => [{ kind: 'text', text: words, style: { size, align: 'right', bold: row.phases === plan.phases } }];
  const dollars = (part: (p: PhaseResult) => number) => (row: CapRow): CellPart[] => right(row, wholeDollarsText(sum(row, part)));
  writeTable(paper, {
    columns: [
      { head: say('memo.col.phase'), share: 130, cell: (r) => [text(r.name, size, r.phases === plan.phases)] },
      { head: say('memo.col.cap'), share: 70, headAlign: 'right', cell: dollars((p) => p.phase.cap_cents) },
      { head: say('memo.col.spend'), share: 75, headAlign: 'right', cell: dollars((p) => p.spending.total_cents) },
      { head: say('memo.col.left'), share: 70, headAlign: 'right', cell: dollars((p) => p.left_cents) },
      { head: say('memo.col.dwellings'), share: 60, headAlign: 'right', cell: (r) => right(r, String(sum(r, (p) => p.lines))) },
      { head: say('memo.col.panes'), share: 50, headAlign: 'right', cell: (r) => right(r, String(sum(r, (p) => p.panes))) },
      { head: say('memo.col.hours'), share: 75, headAlign: 'right', cell: (r) => right(r, (sum(r, (p) => p.minutes.best) / 60).toFixed(0)) },
    ],
    rows: capRows(plan, say),
    headSize: size,
    pad: 1.5,
  });
}

function writeMemo(paper: Paper, plan: Plan, of: { readonly say: Say; readonly size: number }): void {
  const { say, size } = of;
  paper.section();
  paper.write(say('memo.head', { name: plan.name }), { size: size * 1.5, bold: true });
  const paragraphs = (title: string, words: readonly string[]): void => {
    if (words.length === 0) return;
    heading(paper, title, size * 1.1);
    for (const one of words) paper.write(one, { size });
  };
  const list = (title: string, words: readonly string[]): void => {
    heading(paper, title, size * 1.1);
    listed(paper, words, { size, mark: dashed });
  };
  heading(paper, say('memo.short'), size * 1.1);
  const { facts, verdict } = shortWords(plan, say);
  paper.write(facts.join(' '), { size });
  if (verdict !== null) paper.write(verdict, { size, bold: true });
  heading(paper, say('memo.cap'), size * 1.1);
  writeCaps(paper, plan, of);
  paragraphs(say('memo.buys'), buysWords(plan, say));
  paragraphs(say('memo.sure'), sureWords(plan, say));
  paragraphs(say('memo.who'), whoWords(plan, say));
  list(say('memo.waits'), waitsWords(plan, say));
  list(say('memo.wrong'), wrongWords(plan, say));
  paragraphs(say('memo.assumed'), assumedWords(plan, say));
  heading(paper, say('memo.decision'), size * 1.1);
  choices(paper, [say('memo.decide.yes'), say('memo.decide.no'), say('memo.decide.changed')], size);
  signOff(paper, [[say('memo.sign'), 0.36], [say('memo.sign.name'), 0.26], [say('memo.sign.role'), 0.2], [say('memo.sign.date'), 0.18]], size);
}

/** One page to decide on: the cap, what it buys, how sure it is, who gains, what waits, what could go wrong, what is assumed, and a line to sign. */
export async function decisionMemo(plan: Plan, terms: PaperTerms): Promise<PaperFile> {
  const at = (size: number): Promise<PaperFile> => planPaper(plan, terms, { title: terms.texts.sentences['memo.title'], draw: (paper, say) => writeMemo(paper, plan, { say, size }) });
  let memo = await at(SIZES[0]);
  for (const size of SIZES.slice(1)) {
    if (memo.pages === 1) break;
    memo = await at(size);
  }
  return memo;
}
