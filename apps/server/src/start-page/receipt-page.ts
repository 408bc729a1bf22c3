import { dollarsText } from '#calc';
import type { Receipt, ReceiptStep } from '#planning';
import { html, type Html, tableBox } from './html.js';

export interface ReceiptTitle {
  readonly id: string;
  readonly title: string;
}

/** Figures shown at once: a plan has thousands. */
const MOST = 200;

/** A number as people read it: cents as dollars, the rest with its unit. */
function figureText(value: number | string, unit: string): string {
  if (unit === 'cents' && typeof value === 'number') return dollarsText(value);
  return `${typeof value === 'number' ? String(Number(value.toPrecision(7))) : value}${unit === '' ? '' : ` ${unit}`}`;
}

export const receiptAddress = (plan: string, figure: string): string => `/plans/${encodeURIComponent(plan)}/receipts/${encodeURIComponent(figure)}`;

/** The figures of a plan that can be opened; `part` of an id or title narrows them. */
export function receiptsPage(plan: string, all: readonly ReceiptTitle[], part: string): Html {
  const wanted = part.toLowerCase();
  const found = all.filter(({ id, title }) => `${id} ${title}`.toLowerCase().includes(wanted));
  const rows = found.slice(0, MOST).map(({ id, title }) => html`<tr><td><a href="${receiptAddress(plan, id)}">${title}</a></td><td>${id}</td></tr>\n`);
  return html`<p>Each figure opens to its formula, numbers, rows of the survey and sources.</p>
<form method="get"><p><label for="part">Part of a name, for example a dwelling</label><br><input id="part" name="part" type="search" value="${part}"> <button>Show</button></p></form>
<p>${found.length} of ${all.length} figures${found.length > MOST ? `, the first ${MOST} shown` : ''}.</p>
${rows.length === 0 ? html`` : tableBox('Figures', html`<thead><tr><th scope="col">figure</th><th scope="col">id</th></tr></thead>\n<tbody>${rows}</tbody>`)}
<p><a href="/">Back to the start</a></p>`;
}

function steps(all: readonly ReceiptStep[]): Html {
  if (all.length === 0) return html``;
  return html`<h2>Step by step</h2>\n<ol>${all.map(({ label, substituted }) => html`<li>${label}: ${substituted}</li>\n`)}</ol>`;
}

function rowsOf({ rows }: Receipt): Html {
  if (rows.length === 0) return html``;
  const lines = rows.slice(0, MOST).map((r) => html`<tr><td>${r.file}</td><td class="number">${r.row}</td><td>${r.columns.join(', ')}</td><td>${r.of}</td></tr>\n`);
  return html`<h2>Rows of the survey</h2>${rows.length > MOST ? html`<p>The first ${MOST} of ${rows.length}.</p>` : html``}
${tableBox('Rows it stands on', html`<thead><tr><th scope="col">file</th><th scope="col">row</th><th scope="col">columns</th><th scope="col">of</th></tr></thead>\n<tbody>${lines}</tbody>`)}`;
}

function sources({ assumptions }: Receipt): Html {
  if (assumptions.length === 0) return html``;
  const lines = assumptions.map((a) => html`<tr><td>${a.name}</td><td class="number">${a.value}</td><td>${a.unit}</td><td>${a.basis}</td><td>${a.source}</td></tr>\n`);
  return html`<h2>Values from elsewhere</h2>
${tableBox('Not from a row of the survey', html`<thead><tr><th scope="col">what</th><th scope="col">value</th><th scope="col">unit</th><th scope="col">basis</th><th scope="col">source</th></tr></thead>\n<tbody>${lines}</tbody>`)}`;
}

function outside(plan: string, { compute, computeWhy, figure }: Receipt): Html {
  const why = computeWhy === null ? html`` : html`<p>${computeWhy}.</p>`;
  if (compute === null) return html`<h2>From outside</h2>\n<p>No kernel gives this figure.</p>${why}`;
  return html`<h2>From outside</h2>\n<p>Kernel ${compute.kernel} gives the same digits: ${compute.words}. <a href="/api/plans/${encodeURIComponent(plan)}/receipts/${encodeURIComponent(figure)}">This receipt with the input of the kernel (JSON)</a></p>${why}`;
}

/** A figure on one page. */
export function receiptPage(plan: string, receipt: Receipt): Html {
  const { value, unit, formula, worked, figure, see } = receipt;
  const held = worked.agrees ? 'The steps come to the same.' : `The steps come to ${figureText(worked.value, unit)}: ${worked.why ?? ''}.`;
  return html`<p><strong>${figureText(value, unit)}</strong> (${figure})</p>
<p>${formula}</p>
${steps(receipt.steps)}
<p>${held}</p>
${rowsOf(receipt)}
${sources(receipt)}
${outside(plan, receipt)}
${see.length === 0 ? html`` : html`<h2>Figures it is made of</h2>\n<ul>${see.slice(0, MOST).map((id) => html`<li><a href="${receiptAddress(plan, id)}">${id}</a></li>\n`)}</ul>`}
<p><a href="/plans/${encodeURIComponent(plan)}/receipts">All receipts of this plan</a></p>`;
}
