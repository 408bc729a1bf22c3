import type { ImportNote, Job } from '#store';
import { jobAddress } from '../jobs/job-answer.js';
import { html, type Html, tableBox } from './html.js';

/** Newest lines of a list that are shown. */
const SHOWN = 20;

/** `2026-06-01T08:00:00.000Z` as a person reads it. */
export const when = (iso: string): string => `${iso.slice(0, 10)} ${iso.slice(11, 16)} UTC`;

const isOpen = ({ state }: Job): boolean => state === 'waiting' || state === 'running';

function stopForm({ id, made }: Job): Html {
  return html`<form method="post" action="/jobs/${encodeURIComponent(id)}/stop"><button aria-label="Stop the work asked for ${when(made)}">Stop</button></form>`;
}

/** Work that waits or is under way first in the eye, then what has ended. */
export function workList(jobs: readonly Job[]): Html {
  if (jobs.length === 0) return html``;
  const open = jobs.filter(isOpen);
  const rows = jobs.slice(0, SHOWN).map((job) => html`<tr><td>${when(job.made)}</td><td><a href="${jobAddress(job.id)}">${job.kind}<span class="at"> of ${when(job.made)}</span></a></td><td>${job.state}</td><td>${job.why ?? (job.state === 'running' ? (job.stage ?? 'begun') : '')}</td><td>${isOpen(job) ? stopForm(job) : ''}</td></tr>\n`);
  const again = open.length === 0 ? html`` : html`<p>${open.length} under way or waiting. <a href="/#work">Look again</a></p>`;
  return html`<h2 id="work">Work asked for</h2>\n${again}
${tableBox('Work, newest first', html`<thead><tr><th scope="col">asked for</th><th scope="col">work</th><th scope="col">state</th><th scope="col">where it is, or why it ended</th><th scope="col">stop</th></tr></thead>\n<tbody>${rows}</tbody>`)}`;
}

/** The files taken in. */
export function fileList(all: readonly ImportNote[]): Html {
  if (all.length === 0) return html``;
  const rows = all.slice(0, SHOWN).map((file) => html`<tr><td>${when(file.at)}</td><td>${file.file}</td><td class="number">${file.rowsRead}</td><td class="number">${file.rejected}</td></tr>\n`);
  return html`<h2>Files taken in</h2>
${tableBox('Files, newest first', html`<thead><tr><th scope="col">when</th><th scope="col">file</th><th scope="col">rows</th><th scope="col">rejected</th></tr></thead>\n<tbody>${rows}</tbody>`)}`;
}
