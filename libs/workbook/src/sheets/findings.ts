import type { Plan, PlanFinding } from '#planning';
import type { Book } from '../book.js';
import { oneTableSheet } from '../one-table-sheet.js';
import { SHEET } from '../sheet-names.js';

const ORDER = { error: 0, warning: 1, note: 2 } as const;

/** What the data and the result have to say, dwellings without an option, and the rounds of pricing. */
export function findingsSheet(book: Book, plan: Plan): void {
  const rows: PlanFinding[] = [
    ...[...plan.findings].sort((a, b) => ORDER[a.severity] - ORDER[b.severity]),
    ...plan.rounds.map((r): PlanFinding => ({ severity: 'note', subject: `${r.subject}, round ${String(r.round)}, ${r.kind}`, text: r.text, whatToDo: 'nothing' })),
    ...plan.notRanked.map((n): PlanFinding => ({ severity: 'note', subject: n.dwelling, text: `not ranked: ${n.why}`, whatToDo: 'nothing, unless the survey or a limit is wrong' })),
  ];
  oneTableSheet<PlanFinding>(book, {
    name: SHEET.findings,
    about: `${plan.name}: what the data and the result have to say`,
    columns: [
      { head: 'Kind', unit: '', width: 10, value: (f) => f.severity },
      { head: 'Subject', unit: '', width: 30, value: (f) => f.subject },
      { head: 'Finding', unit: '', width: 80, value: (f) => f.text },
      { head: 'What to do', unit: '', width: 50, value: (f) => f.whatToDo },
    ],
    rows,
    none: 'No findings.',
  });
}
