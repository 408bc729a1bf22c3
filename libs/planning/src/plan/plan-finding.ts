/** Something to say about the data or the result: what, where, and what to do. */
export interface PlanFinding {
  readonly severity: 'error' | 'warning' | 'note';
  readonly subject: string;
  readonly text: string;
  readonly whatToDo: string;
}

/** Dwelling without an option, with the reason. */
export interface NotRanked {
  readonly dwelling: string;
  readonly why: string;
}
