import { chapters } from './all-checks.js';
import { isMiss, type Check, type Compared, type Figure } from './check.js';

/** Longer tables show their worst figures only. */
const FULL = 44;
const WORST = 10;

/** What a check came to: its line in the summary and its section. */
export interface Outcome {
  readonly title: string;
  readonly line: string;
  readonly section: string;
}

const cell = (text: string): string => text.replaceAll('|', '/').replaceAll('\n', ' ');
export const digits = (value: number): string => (Number.isInteger(value) && Math.abs(value) < 1e9 ? String(value) : String(Number(value.toPrecision(6))));
const small = (value: number): string => (value === Infinity ? 'not the same' : value === 0 ? '0' : String(Number(value.toPrecision(2))));

function shown(value: Figure['expected']): string {
  if (value === null) return 'none';
  if (typeof value === 'string') return value;
  return typeof value === 'number' ? digits(value) : `${digits(value[0])} to ${digits(value[1])}`;
}

/** Share of the tolerance used; what must be equal uses none or all of it. */
const shareOf = ({ off, limit }: Compared): number => (off === 0 ? 0 : limit === 0 ? Infinity : off / limit);

function verdict(check: Check, figure: Compared): string {
  if (check.isReport) return 'reported';
  if (!isMiss(figure)) return 'met';
  return `**misses**: ${figure.reason ?? 'not explained'}`;
}

const rowOf = (check: Check, figure: Compared): string =>
  `| ${[figure.place, figure.what, figure.given, shown(figure.expected), shown(figure.ours), small(figure.off), check.isReport ? '–' : small(figure.limit), verdict(check, figure)].map(cell).join(' | ')} |`;

/** All figures of a short table; of a long one every miss and the ten that use most of their tolerance (of a report: that differ most). */
function chosen(check: Check, figures: readonly Compared[]): readonly Compared[] {
  if (check.isWhole || figures.length <= FULL) return figures;
  const weight = check.isReport ? ({ off }: Compared) => off : shareOf;
  const worst = [...figures].sort((a, b) => weight(b) - weight(a)).slice(0, WORST);
  return figures.filter((figure) => worst.includes(figure) || (!check.isReport && isMiss(figure)));
}

/** By row, the largest difference: for reports whose rows are long. */
function byRow(figures: readonly Compared[]): string[] {
  const rows = new Map<string, Compared>();
  for (const figure of figures) {
    const known = rows.get(figure.place);
    if (known === undefined || figure.off > known.off) rows.set(figure.place, figure);
  }
  const body = [...rows.values()].map(({ place, given, what, expected, ours, off }) => `| ${[place, given, small(off), what, shown(expected), shown(ours)].map(cell).join(' | ')} |`);
  return ['', 'Largest difference of each row:', '', '| place | given | difference | at | expected | ours |', '|---|---|---|---|---|---|', ...body];
}

function worstOf(check: Check, figures: readonly Compared[]): Compared | undefined {
  const weight = check.isReport ? ({ off }: Compared) => off : shareOf;
  const numbers = figures.filter(({ off }) => Number.isFinite(off));
  return numbers.reduce<Compared | undefined>((worst, each) => (worst === undefined || weight(each) > weight(worst) ? each : worst), undefined);
}

/** Runs one check and writes it down. */
export function outcomeOf(check: Check, runOn: string): Outcome {
  const { table, title } = check;
  const figures = table.rows.flatMap((_, index) => check.row(index));
  const misses = figures.filter(isMiss);
  const worst = worstOf(check, figures);
  const told = chosen(check, figures);
  const count = `${table.rows.length} rows, ${figures.length} figures`;
  const tolerance = `${check.isReport ? 'none' : small(worst?.limit ?? 0)}`;
  const used = worst === undefined ? 0 : Math.round(100 * shareOf(worst));
  const share = check.isReport ? '–' : used > 1000 ? 'beyond' : `${used} %`;
  const missed = check.isReport ? 'no pass line' : misses.length === 0 ? '0' : `**${misses.length}**`;
  const line = `| ${[title, table.of, String(table.rows.length), String(figures.length), `${small(worst?.off ?? 0)} (${worst?.what ?? ''})`, tolerance, share, missed].map(cell).join(' | ')} |`;
  const given = Object.entries(table.tolerance).map(([name, value]) => (name === 'why' ? String(value) : `${name} ${String(value)}`)).join('; ');
  const shortened = told.length < figures.length ? ` Shown: the ${told.length} that ${check.isReport ? 'differ most' : 'use most of their tolerance'}${check.isReport ? '' : ', and every miss'}.` : '';
  const section = [
    `### ${title}`,
    `\`${table.of}\`. Source: ${table.source}. Seen: ${table.seen}. Tolerance: ${given}. ${count}.${shortened}${runOn}`,
    '',
    '| place | figure | given | expected | ours | difference | tolerance | |',
    '|---|---|---|---|---|---|---|---|',
    ...told.map((figure) => rowOf(check, figure)),
    ...(check.isReport && told.length < figures.length ? byRow(figures) : []),
  ].join('\n');
  return { title, line, section };
}

/** What an older page said of a check that cannot be run here. */
export function keptOutcome(check: Check, page: string): Outcome {
  const { title } = check;
  const line = page.split('\n').find((each) => each.startsWith(`| ${cell(title)} | `));
  const from = page.indexOf(`\n### ${title}\n`);
  const ends = ['\n### ', '\n## '].map((mark) => page.indexOf(mark, from + 1)).filter((at) => at > from);
  if (line !== undefined && from >= 0) return { title, line, section: page.slice(from + 1, ends.length > 0 ? Math.min(...ends) : undefined).trimEnd() };
  const { table } = check;
  return {
    title,
    line: `| ${[title, table.of, String(table.rows.length), '–', 'not run here', '–', '–', 'not run'].map(cell).join(' | ')} |`,
    section: `### ${title}\n\`${table.of}\`. Source: ${table.source}. Not run here: the files it reads are not part of the project. ${table.rows.length} rows.`,
  };
}

const HEAD = `# Validation

Every value from outside the project that the calculation is held to, with what we make of it. Written by \`npm run validation\` from \`test/reference\`,
where each table has one place that works out our figure, used by the specs and by this page alike. Expected values are never our own output. Misses stay here, in words.

- *difference*: absolute, in the figure's own unit; for a range, how far beyond it. *tolerance*: of the figure; its reason stands with the table.
- *seen*: how the value was seen: in the source, quoted elsewhere, from memory, or computed from the stated formula.
- Tables with more than ${FULL} figures show the ten that use most of their tolerance, and every miss; all figures are compared.
- Some checks read hourly weather or meter files that are not part of the project. Where those are not found, the figures of the last run stay, with its date.
`;

/** The whole page. `today` is written beside what was run on files that are not part of the project; `before` is the page as it stands. */
export function validationPage({ today, before, said }: { readonly today: string; readonly before: string; readonly said: (text: string) => void }): string {
  const written = chapters.map(({ title, checks }) => ({
    title,
    outcomes: checks.map((check) => {
      if (!check.isHere()) {
        said(`not run here, last figures kept: ${check.title}; the files it reads are not part of the project`);
        return keptOutcome(check, before);
      }
      return outcomeOf(check, check.readsFiles ? ` Run on ${today} with files that are not part of the project.` : '');
    }),
  }));
  const summary = written.flatMap(({ title, outcomes }) => [`| **${title}** | | | | | | | |`, ...outcomes.map(({ line }) => line)]);
  return [
    HEAD,
    '## Summary',
    '',
    '| table | checks | rows | figures | worst difference | tolerance | used | misses |',
    '|---|---|---|---|---|---|---|---|',
    ...summary,
    '',
    ...written.flatMap(({ title, outcomes }) => [`## ${title}`, '', ...outcomes.flatMap(({ section }) => [section, ''])]),
  ].join('\n');
}
