import type { Finding, IntakeReport } from '#intake';
import { html, type Html } from './html.js';

function findingRow({ severity, file, row, column, value, expected, whatToDo, times }: Finding): Html {
  const place = [file, row === null ? null : `row ${row}`, column].filter((part) => part !== null).join(', ');
  const more = times > 1 ? ` (${times} rows)` : '';
  return html`<tr><td>${severity}</td><td>${place}${more}</td><td>${value ?? ''}</td><td>${expected}</td><td>${whatToDo}</td></tr>\n`;
}

/** What became of files that were sent. */
export function importPage({ created, updated, unchanged, findings, rejects }: IntakeReport, dryRun: boolean): Html {
  const rejected = rejects.map(({ of, rows, text }) => html`<details><summary>${rows} rows of ${of} were not taken</summary><pre>${text}</pre></details>\n`);
  return html`<p>${dryRun ? 'Checked only, nothing was changed. Taking in would give' : 'Taken in'}: ${created} new, ${updated} changed, ${unchanged} as before.</p>
${rejected}
${findings.length === 0 ? html`<p>Nothing to say about the files.</p>` : html`<table><tr><th>kind</th><th>where</th><th>stands there</th><th>expected</th><th>what to do</th></tr>${findings.map(findingRow)}</table>`}
<p><a href="/">Back to the start</a></p>`;
}
