import type { Building, Dwelling, InventoryRow } from '#calc';
import type { FindingList } from './finding.js';
import type { Placed } from './gathered.js';

type Fields = Readonly<Record<string, unknown>>;

const isPart = (value: unknown): value is Fields => typeof value === 'object' && value !== null && !Array.isArray(value);

/** Fills what the first rows left blank; names the fields on which two rows disagree. */
function merged(first: Fields, later: Fields, clash: (field: string) => void): Fields {
  const out: Record<string, unknown> = { ...first };
  for (const [field, value] of Object.entries(later)) {
    if (field === 'inventoryRow' || value === null) continue;
    const before = out[field] ?? null;
    if (before === null) out[field] = value;
    else if (isPart(before) && isPart(value)) out[field] = merged(before, value, clash);
    else if (JSON.stringify(before) !== JSON.stringify(value)) clash(field);
  }
  return out;
}

/** Collects the buildings and dwellings a flat inventory repeats on every window's row; the first row that fills a field counts. */
export class RepeatedRecords<R extends Building | Dwelling> {
  private readonly byId = new Map<string, Placed<R>>();

  constructor(private readonly findings: FindingList) {}

  take(record: R, row: InventoryRow): void {
    const first = this.byId.get(record.id);
    if (first === undefined) {
      this.byId.set(record.id, { record, row });
      return;
    }
    const clash = (field: string): void =>
      this.findings.add({ ...row, column: field, value: record.id, severity: 'warning', code: 'flat-conflict', expected: 'the same on every row of a building or dwelling', whatToDo: `line ${first.row.row} says something else and was taken` });
    this.byId.set(record.id, { record: merged(first.record as unknown as Fields, record as unknown as Fields, clash) as unknown as R, row: first.row });
  }

  all(): readonly Placed<R>[] {
    return [...this.byId.values()];
  }
}
