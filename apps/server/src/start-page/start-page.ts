import type { ImportNote, Job, PlanHeading, StoreContents } from '#store';
import { planAddress } from '../plans/plan-answer.js';
import { jobAddress } from '../jobs/job-answer.js';
import { html, type Html } from './html.js';

export interface StartPage {
  readonly contents: StoreContents;
  readonly plans: readonly PlanHeading[];
  readonly jobs: readonly Job[];
  readonly imports: readonly ImportNote[];
}

const SHOWN = 20;

/** `2026-06-01T08:00:00.000Z` as a person reads it. */
const when = (iso: string): string => `${iso.slice(0, 10)} ${iso.slice(11, 16)} UTC`;

const LISTS: readonly (readonly [keyof StoreContents['counts'], string])[] = [
  ['ownerEntities', 'owner entities'],
  ['phases', 'phases'],
  ['buildings', 'buildings'],
  ['planTypes', 'plan types'],
  ['dwellings', 'dwellings and common areas'],
  ['windows', 'windows'],
  ['meters', 'meters'],
  ['tariffs', 'tariffs'],
  ['films', 'films'],
  ['rolls', 'rolls'],
  ['consents', 'consents'],
  ['moveOuts', 'move-outs'],
  ['readings', 'readings'],
  ['locks', 'locks'],
];

function database({ settings, counts }: StoreContents): Html {
  if (settings === null) return html`<p>The database is empty. Send the survey files to begin.</p>`;
  const rows = LISTS.map(([list, words]) => html`<tr><th scope="row">${words}</th><td class="number">${counts[list]}</td></tr>\n`);
  return html`<p>Portfolio “${settings.name}”, study start ${settings.studyStart}, money in ${settings.currency}.</p>\n<table>${rows}</table>`;
}

const send = html`<form method="post" action="/imports" enctype="multipart/form-data">
<p><label for="files">Survey files (CSV, plan.json, tariffs.json), all together</label><br>
<input id="files" name="files" type="file" multiple required></p>
<p><button name="dryRun" value="true">Check only</button> <button name="dryRun" value="false">Take in</button></p>
</form>`;

const make = html`<form method="post" action="/plans"><p><button>Make a plan under the caps of the portfolio</button></p></form>`;

function plans(kept: readonly PlanHeading[]): Html {
  if (kept.length === 0) return html`<p>No plan has been made yet.</p>`;
  const rows = kept.slice(0, SHOWN).map(({ id, title, revision, made }) => {
    const at = planAddress(id);
    const of = `?plan=${encodeURIComponent(id)}`;
    return html`<tr><td>${title}, revision ${revision}</td><td>${when(made)}</td><td><a href="${at}/workbook">workbook</a></td>
<td><a href="/api/ranks/dwellings${of}">ranked dwellings</a></td><td><a href="/api/ranks/facades${of}">ranked facades</a></td><td><a href="${at}">plan as JSON</a></td></tr>\n`;
  });
  return html`<table><tr><th>plan</th><th>made</th><th colspan="4">read it</th></tr>${rows}</table>`;
}

function jobs(all: readonly Job[]): Html {
  if (all.length === 0) return html``;
  const rows = all
    .slice(0, SHOWN)
    .map((job) => html`<tr><td><a href="${jobAddress(job.id)}">${job.kind}</a></td><td>${job.state}</td><td>${job.why ?? (job.state === 'running' ? (job.stage ?? '') : '')}</td><td>${when(job.made)}</td></tr>\n`);
  return html`<h2>Work under way and done</h2>\n<table><tr><th>work</th><th>state</th><th>at</th><th>asked for</th></tr>${rows}</table>`;
}

function imports(all: readonly ImportNote[]): Html {
  if (all.length === 0) return html``;
  const rows = all
    .slice(0, SHOWN)
    .map((file) => html`<tr><td>${file.file}</td><td class="number">${file.rowsRead}</td><td class="number">${file.rejected}</td><td>${when(file.at)}</td></tr>\n`);
  return html`<h2>Files taken in</h2>\n<table><tr><th>file</th><th>rows</th><th>rejected</th><th>when</th></tr>${rows}</table>`;
}

/** What is in the database, and what can be done next. */
export function startPage({ contents, plans: kept, jobs: work, imports: files }: StartPage): Html {
  return html`<h2>In the database</h2>
${database(contents)}
<h2>Send survey files</h2>
${send}
<h2>Plans</h2>
${plans(kept)}
${contents.settings === null ? html`` : make}
${jobs(work)}
${imports(files)}
<h2>For programs</h2>
<p><a href="/api/openapi.json">Description of the API (OpenAPI)</a>, <a href="/api/portfolio">portfolio</a>, <a href="/api/imports">imports</a>, <a href="/api/plans">plans</a>, <a href="/api/jobs">jobs</a>, <a href="/api/health/ready">health</a></p>`;
}
