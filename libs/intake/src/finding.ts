/** error: the row (or file) is not taken; warning: taken, a person should look; note: taken, said for the record. */
export type Severity = 'error' | 'warning' | 'note';

/** One thing a person should know about a file they sent. Nothing in it is thrown; all come at once. */
export interface Finding {
  readonly file: string;
  /** Line of the file, counted from 1; null for the file as a whole. */
  readonly row: number | null;
  /** Header as it stands in the file. */
  readonly column: string | null;
  readonly value: string | null;
  readonly severity: Severity;
  /** Short stable word for the kind of trouble, for example `not-a-length`. */
  readonly code: string;
  readonly expected: string;
  readonly whatToDo: string;
  /** How many rows say the same; only the first is named. */
  readonly times: number;
}

/** Gathers findings; notes and warnings that repeat down a column become one with a count, so a long file stays readable. */
export class FindingList {
  private readonly kept: Finding[] = [];
  private readonly repeated = new Map<string, number>();

  add(finding: Omit<Finding, 'times'>): void {
    if (finding.severity !== 'error') {
      const same = [finding.file, finding.column, finding.code, finding.severity === 'warning' ? finding.value : ''].join('\u0000');
      const at = this.repeated.get(same);
      const first = at === undefined ? undefined : this.kept[at];
      if (at !== undefined && first !== undefined) {
        this.kept[at] = { ...first, times: first.times + 1 };
        return;
      }
      this.repeated.set(same, this.kept.length);
    }
    this.kept.push({ ...finding, times: 1 });
  }

  addAll(findings: readonly Omit<Finding, 'times'>[]): void {
    for (const finding of findings) this.add(finding);
  }

  /** Errors first, then warnings, then notes; inside each by file and row. */
  all(): readonly Finding[] {
    const rank: Record<Severity, number> = { error: 0, warning: 1, note: 2 };
    return [...this.kept].sort(
      (a, b) => rank[a.severity] - rank[b.severity] || a.file.localeCompare(b.file, 'en') || (a.row ?? 0) - (b.row ?? 0),
    );
  }
}
