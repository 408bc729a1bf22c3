import { dollarsText } from '#calc';
import type { Receipt, ReceiptStep } from '#planning';
import { tableText } from './said.js';

/** A number as people read it: cents as dollars, the rest with its unit. */
function figureText(value: number | string, unit: string): string {
  if (typeof value === 'string') return unit === '' ? value : `${value} ${unit}`;
  if (unit === 'cents') return dollarsText(value);
  return `${String(Number(value.toPrecision(7)))}${unit === '' ? '' : ` ${unit}`}`;
}

/** More steps than fit one page are cut in the middle; all of them stand in the JSON. */
const MOST_STEPS = 26;

function stepRows(steps: readonly ReceiptStep[]): string[] {
  const lines = steps.map((s) => `  ${s.label}: ${s.substituted}`);
  if (lines.length <= MOST_STEPS) return lines;
  const head = MOST_STEPS - 7;
  return [...lines.slice(0, head), `  … ${String(lines.length - MOST_STEPS + 1)} more steps, all in --json …`, ...lines.slice(-6)];
}

const shortened = (text: string, most: number): string => (text.length > most ? `${text.slice(0, most - 1)}…` : text);

/** Rows of one file and the same columns on one line. */
function rowLines(receipt: Receipt): string[] {
  const byPlace = new Map<string, number[]>();
  for (const row of receipt.rows) {
    const key = `${row.file}|${row.columns.join(', ')}`;
    byPlace.set(key, [...(byPlace.get(key) ?? []), row.row]);
  }
  return [...byPlace].map(([key, rows]) => {
    const [file = '', columns = ''] = key.split('|');
    const all = [...new Set(rows)].sort((a, b) => a - b);
    return `  ${file} ${all.length === 1 ? 'row' : 'rows'} ${all.slice(0, 12).join(', ')}${all.length > 12 ? ` and ${String(all.length - 12)} more` : ''}: ${columns}`;
  });
}

function computeLines({ compute, computeWhy, figure }: Receipt): string[] {
  const why = computeWhy === null ? [] : [`  ${computeWhy}.`];
  if (compute === null) return ['By kernel: none.', ...why];
  return [`By kernel: \`rollout receipt ${figure} --compute in.json\`, then \`rollout compute ${compute.kernel} --in in.json\`; read ${compute.words}.`, ...why];
}

/** A receipt as one page of text. */
export function receiptText(receipt: Receipt): string {
  const { worked } = receipt;
  const held = worked.agrees ? 'The steps come to the same.' : `The steps come to ${figureText(worked.value, receipt.unit)}: ${worked.why ?? ''}.`;
  const assumed = receipt.assumptions.slice(0, 12).map((a) => [a.name, shortened(a.value, 14), shortened(a.unit, 36), a.basis, shortened(a.source, 60)]);
  return [
    `${receipt.title}: ${figureText(receipt.value, receipt.unit)}`,
    `(${receipt.figure})`,
    '',
    receipt.formula,
    ...(receipt.steps.length === 0 ? [] : ['', ...stepRows(receipt.steps)]),
    '',
    held,
    ...(receipt.rows.length === 0 ? [] : ['', 'Rows of the survey:', ...rowLines(receipt)]),
    ...(assumed.length === 0 ? [] : ['', tableText(['Not from a row', 'value', 'unit', 'basis', 'source'], assumed)]),
    '',
    ...computeLines(receipt),
    ...(receipt.see.length === 0 ? [] : [`See also: ${receipt.see.slice(0, 4).join(', ')}${receipt.see.length > 4 ? ', …' : ''}`]),
  ].join('\n');
}
