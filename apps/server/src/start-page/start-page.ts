import type { ImportNote, Job, PlanHeading, StoreContents } from '#store';
import { planAddress } from '../plans/plan-answer.js';
import type { Headline } from './headline.js';
import { headlinePage } from './headline-page.js';
import { html, type Html, tableBox } from './html.js';
import { fileList, when, workList } from './work-list.js';

export interface StartPage {
  readonly contents: StoreContents;
  readonly plans: readonly PlanHeading[];
  /** The newest plan in a few figures. */
  readonly newest: Headline | null;
  readonly jobs: readonly Job[];
  readonly imports: readonly ImportNote[];
  /** A fresh word a page, so that a form sent twice is one order. */
  readonly key: string;
}

const SHOWN = 20;

const LISTS: readonly (readonly [keyof StoreContents['counts'], string])[] = [
  ['ownerEntities', 'owner entities'],
  ['phases', 'fiscal years'],
  ['buildings', 'buildings'],
  ['planTypes', 'plan types'],
  ['dwellings', 'dwellings and common areas'],
  ['windows', 'windows'],
  ['meters', 'meters'],
  ['tariffs', 'tariffs'],
  ['bills', 'bills'],
  ['films', 'films'],
  ['rolls', 'rolls'],
  ['consents', 'consents'],
  ['moveOuts', 'move-outs'],
  ['readings', 'readings'],
  ['locks', 'locks'],
  ['ledger', 'ledger lines'],
  ['rebates', 'rebates'],
  ['siteRecords', 'records of site work'],
];

function database({ settings, counts }: StoreContents): Html {
  if (settings === null) return html`<p>The database is empty. Send the survey files to begin: buildings, dwellings and windows are enough.</p>`;
  const rows = LISTS.filter(([list]) => counts[list] > 0).map(([list, words]) => html`<tr><th scope="row">${words}</th><td class="number">${counts[list]}</td></tr>\n`);
  return html`<p>Portfolio “${settings.name}”, study start ${settings.studyStart}, money in ${settings.currency}.</p>\n${tableBox('How many of each', html`<tbody>${rows}</tbody>`)}`;
}

const send = html`<form method="post" action="/imports" enctype="multipart/form-data">
<p><label for="files">Survey files, bills, site records (CSV, XML, plan.json, tariffs.json). Send all files of a survey together: they name each other.</label></p>
<p><input id="files" name="files" type="file" multiple required></p>
<p><button name="dryRun" value="true">Check only</button> <button name="dryRun" value="false">Take in</button></p>
</form>`;

const make = (key: string): Html => html`<form method="post" action="/plans"><input type="hidden" name="key" value="${key}"><p><button>Make a plan under the caps of the portfolio</button></p></form>`;

const again = (key: string, { heading }: Headline): Html => html`<form method="post" action="/plans"><input type="hidden" name="key" value="${key}-again"><input type="hidden" name="replan" value="${heading.id}">
<p><button>Plan again from the newest plan</button> Done work stands; the rest is planned around what was recorded.</p></form>`;

function plans(kept: readonly PlanHeading[]): Html {
  if (kept.length === 0) return html`<p>No plan has been made yet.</p>`;
  const rows = kept.slice(0, SHOWN).map(({ id, title, revision, made, signed }) => {
    const name = `${title}, revision ${revision}, ${when(made)}`;
    return html`<tr><td>${when(made)}</td><td>${title}</td><td class="number">${revision}</td><td>${signed ? 'signed' : 'not signed'}</td><td><a href="${planAddress(id)}/workbook" aria-label="Workbook of ${name}">workbook</a></td>
<td><a href="${planAddress(id)}/papers/memo.pdf" aria-label="Decision memo of ${name}">memo</a></td><td><a href="/plans/${encodeURIComponent(id)}/receipts" aria-label="Receipts of ${name}">receipts</a></td></tr>\n`;
  });
  return tableBox('Kept plans, newest first', html`<thead><tr><th scope="col">made</th><th scope="col">plan</th><th scope="col">revision</th><th scope="col">signed</th><th scope="col" colspan="3">read it</th></tr></thead>\n<tbody>${rows}</tbody>`);
}

/** The newest plan, what is in the database, and what can be done next. */
export function startPage(of: StartPage): Html {
  return html`${of.newest === null ? html`` : html`<h2>Newest plan</h2>\n${headlinePage(of.newest, when(of.newest.heading.made))}`}
<h2>In the database</h2>
${database(of.contents)}
<h2>Send files</h2>
${send}
<h2>Plans</h2>
${plans(of.plans)}
${of.contents.settings === null ? html`` : make(of.key)}
${of.newest === null ? html`` : again(of.key, of.newest)}
${workList(of.jobs)}
${fileList(of.imports)}
<h2>For programs</h2>
<ul><li><a href="/api/openapi.json">Description of the API (OpenAPI)</a></li><li><a href="/api/portfolio">Portfolio</a></li><li><a href="/api/imports">Imports</a></li><li><a href="/api/plans">Plans</a></li><li><a href="/api/jobs">Jobs</a></li><li><a href="/api/verification">Did it pay: bills before and after</a></li><li><a href="/api/health/ready">Health</a></li></ul>`;
}
