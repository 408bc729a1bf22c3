import type { Problem, ProblemError } from '../problem/problem.js';
import { html, type Html } from './html.js';

const where = ({ file, row, column, pointer }: ProblemError): string =>
  [file, row === undefined ? undefined : `row ${row}`, column, pointer].filter((part) => part !== undefined).join(', ');

/** A problem for a person. */
export function problemPage({ detail, errors = [] }: Problem): Html {
  const rows = errors.map((error) => html`<tr><td>${where(error)}</td><td>${error.detail}</td></tr>\n`);
  return html`<p>${detail}</p>
${rows.length === 0 ? html`` : html`<table><tr><th>where</th><th>what</th></tr>${rows}</table>`}
<p><a href="/">Back to the start</a></p>`;
}
