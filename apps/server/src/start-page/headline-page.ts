import { wholeDollarsText } from '#calc';
import type { PaperName } from '#papers';
import { planAddress } from '../plans/plan-answer.js';
import type { Headline, PlanFigures } from './headline.js';
import { html, type Html, tableBox } from './html.js';

const dollars = wholeDollarsText;

/** What a paper is for, by the reader it is for. A paper that is new has to be put somewhere. */
const PAPERS: Readonly<Record<PaperName, readonly ['manager' | 'crew', string]>> = {
  memo: ['manager', 'Decision memo: one page to sign'],
  pictures: ['manager', 'Pictures: ranking, value against cap, cash'],
  crew: ['crew', 'Crew sheets: one dwelling a page'],
  cuts: ['crew', 'Cut list by roll, drawn to scale'],
  labels: ['crew', 'Labels of the pieces'],
  kit: ['crew', 'Kit of each visit'],
  notices: ['crew', 'Notices of entry'],
  'leave-behind': ['crew', 'Sheet on drying and cleaning, to leave behind'],
  'day-30': ['crew', 'Look after 30 days'],
  survey: ['crew', 'Survey sheet, to measure on'],
};

const papersFor = (reader: 'manager' | 'crew', at: string): Html[] =>
  Object.entries(PAPERS).flatMap(([name, [whose, words]]) => (whose === reader ? [html`<li><a href="${at}/papers/${name}.pdf">${words} (PDF)</a></li>\n`] : []));

/** Where each reader goes on from here. */
function ways(id: string): Html {
  const at = planAddress(id);
  const of = `?plan=${encodeURIComponent(id)}`;
  return html`<div class="readers">
<section aria-labelledby="for-manager"><h3 id="for-manager">For the property manager</h3><ul>
${papersFor('manager', at)}<li><a href="${at}/workbook">Workbook of the plan (Excel)</a></li>
<li><a href="/api/ranks/dwellings${of}">Ranked dwellings (JSON)</a></li>
<li><a href="/api/ranks/facades${of}">Ranked facades (JSON)</a></li></ul></section>
<section aria-labelledby="for-crew"><h3 id="for-crew">For the crew</h3><ul>
${papersFor('crew', at)}<li><a href="${at}/calendar.ics">Calendar of the work days (iCalendar)</a></li></ul></section>
<section aria-labelledby="for-accountant"><h3 id="for-accountant">For the accountant</h3><ul>
<li><a href="${at}/workbook">Workbook of the plan (Excel)</a></li>
<li><a href="/plans/${encodeURIComponent(id)}/receipts">Receipts: any figure opened to one page</a></li>
<li><a href="/api/ledger">Money spoken for by year (JSON)</a></li>
<li><a href="${at}/proof">Check of the proof (JSON)</a></li>
<li><a href="${at}">The whole plan (JSON)</a></li></ul></section>
</div>`;
}

/** Fiscal years shown; the workbook has all. */
const MOST_PHASES = 12;

function phases({ phases: all }: PlanFigures): Html {
  const rows = all.slice(0, MOST_PHASES).map((p) => html`<tr><th scope="row">${p.phase}</th><td class="number">${dollars(p.paid_cents)}</td><td class="number">${dollars(p.cap_cents)}</td><td class="number">${dollars(p.left_cents)}</td><td class="number">${p.dwellings}</td><td class="number">${p.panes}</td></tr>\n`);
  const more = all.length > MOST_PHASES ? html`<p>${all.length - MOST_PHASES} more years stand in the workbook.</p>` : html``;
  return html`${tableBox('To be paid of each cap', html`<thead><tr><th scope="col">owner and year</th><th scope="col">to pay</th><th scope="col">of cap</th><th scope="col">left</th><th scope="col">dwellings</th><th scope="col">panes</th></tr></thead>\n<tbody>${rows}</tbody>`)}${more}`;
}

function worth(f: PlanFigures): Html {
  const basis = f.countsAsFound ? 'savings as found in bills' : 'savings as modelled';
  const expected = f.expected === null ? html`` : html`<dt>Net present value, as expected in bills</dt><dd><strong>${dollars(f.expected.middle_cents)}</strong> for all payers; eight in ten between ${dollars(f.expected.low_cents)} and ${dollars(f.expected.high_cents)}</dd>\n`;
  const proof = f.status === 'optimal' ? 'proved: no choice of these options is worth more' : f.status === 'bounded' ? `no choice can be worth more by over ${(f.gap * 100).toFixed(3)} %` : 'no plan fits the rules';
  return html`<dl>
<dt>Net present value, ${basis}</dt><dd><strong>${dollars(f.npv_cents)}</strong> for all payers, ${dollars(f.npvOwner_cents)} for the owner alone</dd>
${expected}<dt>Cooling bills cut in the first year, ${basis}</dt><dd>${dollars(f.firstYearCooling_cents)}</dd>
<dt>Simple payback, ${basis}</dt><dd>${f.simplePayback_yr === null ? 'none within the life of the film' : `${f.simplePayback_yr.toFixed(1)} years`}</dd>
<dt>The choice under the caps</dt><dd>${proof}</dd>
<dt>Buildings with work</dt><dd>${f.buildings.length === 0 ? 'none' : f.buildings.join(', ')}</dd>
<dt>Findings of the plan</dt><dd>${counted(f.errors, 'error')}, ${counted(f.warnings, 'warning')}: sheet Findings of the workbook</dd>
</dl>`;
}

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** The newest plan: what it pays of each cap, what it is worth, and where each reader goes on. */
export function headlinePage({ heading, figures }: Headline, made: string): Html {
  const about = html`<p><strong>${heading.title}</strong>, revision ${heading.revision}, made ${made}, ${heading.signed ? 'signed: the plan of record' : 'not signed yet'}.</p>`;
  if (figures === null) return html`${about}\n<p>It was kept by an earlier version and lacks the figures of this page; make it again. <a href="${planAddress(heading.id)}/workbook">Workbook of the plan (Excel)</a></p>`;
  return html`${about}\n${phases(figures)}\n${worth(figures)}\n${ways(heading.id)}\n<h3>In words</h3>\n${figures.words.map((words) => html`<p>${words}</p>\n`)}`;
}
