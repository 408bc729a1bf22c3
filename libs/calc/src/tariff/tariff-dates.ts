import type { TariffText } from '../portfolio/index.js';
import type { TariffFinding } from './tariff.js';

const DAY_MS = 86_400_000;
/** The year 2286: what is beyond is not a date in seconds. */
const LATEST_s = 1e10;

/** ISO date or epoch seconds, as the open form has both, to whole days since 1970; null when blank. */
function dayOf(value: unknown): number | null | 'unread' {
  if (value === undefined || value === null || value === '') return null;
  if (typeof value === 'number') return Math.abs(value) < LATEST_s ? Math.floor((value * 1000) / DAY_MS) : 'unread';
  const iso = typeof value === 'string' ? /^\d{4}-\d{2}-\d{2}/.exec(value) : null;
  const ms = iso === null ? Number.NaN : Date.parse(`${iso[0]}T00:00:00Z`);
  return Number.isFinite(ms) ? ms / DAY_MS : 'unread';
}

const isoOf = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);

interface Span {
  readonly place: string;
  readonly first: number;
  readonly last: number;
}

function spanOf(text: TariffText, index: number, findings: TariffFinding[]): Span | null {
  const place = `/${index}`;
  const first = dayOf(text['startdate']);
  const last = dayOf(text['enddate']);
  const isWrong = first === 'unread' || last === 'unread' || (first !== null && last !== null && last < first);
  if (!isWrong) return { place, first: first ?? -Infinity, last: last ?? Infinity };
  findings.push({ weight: 'error', place: `${place}/startdate`, seen: JSON.stringify([text['startdate'], text['enddate']]), expected: 'startdate and enddate as YYYY-MM-DD, the start first' });
  return null;
}

/**
 * Gaps and overlaps between the versions of one tariff: texts of the same label with their first and last day.
 *
 * @param texts all tariffs as they came in; both days of a version are included
 * @returns one finding for each gap and overlap, with its dates; place = index in `texts`
 * @source definition
 */
export function tariffDateFindings(texts: readonly TariffText[]): TariffFinding[] {
  const findings: TariffFinding[] = [];
  for (const label of new Set(texts.map((text) => text.label))) {
    const spans = texts
      .flatMap((text, index) => (text.label === label ? [spanOf(text, index, findings)] : []))
      .filter((span) => span !== null)
      .sort((a, b) => a.first - b.first || a.last - b.last);
    let reached = spans[0]?.last ?? Infinity;
    for (const span of spans.slice(1)) {
      if (span.first > reached + 1) {
        findings.push({ weight: 'error', place: span.place, seen: `gap: ${label} has no price from ${isoOf(reached + 1)} to ${isoOf(span.first - 1)}`, expected: 'versions that follow each other day by day' });
      } else if (span.first <= reached) {
        const from = span.first === -Infinity ? 'its start' : isoOf(span.first);
        const end = Math.min(reached, span.last);
        const to = end === Infinity ? 'its end' : isoOf(end);
        findings.push({ weight: 'error', place: span.place, seen: `overlap: ${label} has two prices from ${from} to ${to}`, expected: 'one version at a time' });
      }
      reached = Math.max(reached, span.last);
    }
  }
  return findings;
}
