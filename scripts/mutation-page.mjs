// Writes docs/mutation.md from the runs kept in reports/mutation. What was not run here keeps what the page says of it.
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './install.mjs';
import { EXACT_PARTS, SAMPLED } from './mutation-specs.mjs';

export const MUTATION_FOLDERS = ['units', 'money', 'sun', 'weather', 'sky', 'shade', 'glass', 'dwelling', 'cooling', 'tariff', 'lifecycle', 'labour', 'verification', 'uncertainty', 'selection', 'cutting'];
const PAGE = join(root, 'docs', 'mutation.md');
const REASONS = JSON.parse(readFileSync(join(root, 'scripts', 'mutation-reasons.json'), 'utf8'));
const COUNTED = ['Killed', 'Timeout', 'Survived', 'NoCoverage'];

const cell = (text) => `\`${text.replace(/\s+/g, ' ').replaceAll('|', '∣').replaceAll('`', '´').slice(0, 90)}\``;

/** What stood in the source where the mutant is. */
function before(source, { start, end }) {
  const lines = source.split('\n');
  const first = lines[start.line - 1] ?? '';
  return start.line === end.line ? first.slice(start.column - 1, end.column - 1) : `${first.slice(start.column - 1)} …`;
}

const reasonOf = (file, was, mutant) =>
  REASONS.find((each) => file.endsWith(each.file) && was.includes(each.was) && (each.now === undefined || (mutant.replacement ?? '').includes(each.now)))?.why ?? '';

/** What of a folder is mutated. */
const rangeOf = (name) => (name in EXACT_PARTS ? `its exact parts: ${EXACT_PARTS[name].join(', ')}` : name in SAMPLED ? `a sample: ${Math.round(100 * SAMPLED[name])} % of the lines` : 'all');

/** A folder's run: counts and the lines of its survivors. */
function runOf(name) {
  const path = join(root, 'reports', 'mutation', `${name}.json`);
  if (!existsSync(path)) return null;
  const counts = Object.fromEntries(COUNTED.map((status) => [status, 0]));
  const left = [];
  for (const [file, { mutants, source }] of Object.entries(JSON.parse(readFileSync(path, 'utf8')).files)) {
    for (const mutant of mutants) {
      if (!(mutant.status in counts)) continue;
      counts[mutant.status] += 1;
      if (mutant.status !== 'Survived' && mutant.status !== 'NoCoverage') continue;
      const was = before(source, mutant.location);
      const short = file.split('/').at(-1);
      left.push(`| ${short}:${mutant.location.start.line} | ${cell(was)} | ${cell(mutant.replacement ?? '')} | ${mutant.status === 'NoCoverage' ? 'no test goes there. ' : ''}${reasonOf(`${name}/${short}`, was, mutant)} |`);
    }
  }
  return { counts, left, date: statSync(path).mtime.toISOString().slice(0, 10) };
}

function written(name, page) {
  const run = runOf(name);
  if (run === null) {
    const line = page.split('\n').find((each) => each.startsWith(`| ${name} | `));
    const section = page.split('\n## ').find((each) => each.startsWith(`${name}\n`));
    return line === undefined ? { line: `| ${name} | not run to its end yet | | | | | | | |`, section: null } : { line, section: section === undefined ? null : `## ${section.trimEnd()}\n` };
  }
  const { Killed, Timeout, Survived, NoCoverage } = run.counts;
  const all = Killed + Timeout + Survived + NoCoverage;
  const line = `| ${name} | ${all} | ${Killed} | ${Timeout} | ${Survived} | ${NoCoverage} | ${((100 * (Killed + Timeout)) / all).toFixed(1)} % | ${rangeOf(name)} | ${run.date} |`;
  const section = run.left.length === 0 ? null : `## ${name}\n\n| where | was | mutant | why it is left |\n|---|---|---|---|\n${run.left.join('\n')}\n`;
  return { line, section };
}

/** The figures of the whole, over the folders in the table. */
function totalOf(lines) {
  const sums = [0, 0, 0, 0, 0];
  for (const line of lines) line.split('|').slice(2, 7).forEach((text, i) => (sums[i] += Number(text) || 0));
  const [all, killed, timeout] = sums;
  return `| **all** | ${sums.join(' | ')} | ${all === 0 ? '–' : `**${((100 * (killed + timeout)) / all).toFixed(1)} %**`} | | |`;
}

const HEAD = `# Mutation tests of calc

Small faults are put into \`libs/calc\` one at a time; a test must fail for each. On demand: \`npm run mutation -- libs/calc/src/glass\` (one folder or several; none:
all). Runs are kept in \`reports/mutation\`, out of version control, and taken up where they were left; \`npm run mutation -- --write\` only writes this page again.

- Tests: the folder's own specs and the published tables that speak of it, but for those that read weather files, search for long or need hundreds of draws. Properties
  are tried on 12 cases, 60 and more under \`npm test\`. Score: killed and timed out, of all.
- They run in one process, calc and the specs loaded anew for each mutant (\`scripts/mutation-runner.mjs\`); on \`sun\` each mutant ends as it does under jest.
- The words of an error, of a reason and of what a finding saw and expected are not mutated; that they are thrown or given, and where, is.
- Figures worked out on loading are mutated, but not in verification and cutting, whose specs work out much on loading. A run that is taken up does not try such a mutant on new specs;
  delete its file in \`reports/mutation\` for that.
- A mutant that keeps the specs from loading at all counts neither way.
- Large folders are sampled: every line whose file and number, hashed, fall under a share. Which lines is the same each time; faults that span several lines are not in a sample. \`FILM_ROLLOUT_MUTATE_ALL=1\` mutates the whole folder.
- selection and cutting search. A search that finds the same answer another way is no fault, so only their exact parts are mutated. The searches are held by bounds, by
  the checkers and by proved optima instead.
- A timeout counts as killed only because the run was given 20 s and more; on a busy machine one may be false.
`;

/** Writes the page. */
export function writeMutationPage() {
  const page = existsSync(PAGE) ? readFileSync(PAGE, 'utf8') : '';
  const parts = MUTATION_FOLDERS.map((name) => written(name, page));
  const table = ['| folder | mutants | killed | timed out | survived | no coverage | score | mutated | run on |', '|---|---|---|---|---|---|---|---|---|', ...parts.map(({ line }) => line), totalOf(parts.map(({ line }) => line))];
  writeFileSync(PAGE, [HEAD, ...table, '', ...parts.flatMap(({ section }) => (section === null ? [] : [section]))].join('\n'));
}
