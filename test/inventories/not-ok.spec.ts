import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readInventory, type Finding, type InventoryRecords } from '#intake';

type Place = Pick<Finding, 'file' | 'row' | 'column' | 'severity' | 'code'>;
interface Expected {
  readonly about: string;
  /** Records that must come out, by list. */
  readonly kept: Readonly<Partial<Record<keyof InventoryRecords, number>>>;
  readonly findings: readonly Place[];
}

const folder = 'test/inventories/not-ok';
const placeOf = ({ file, row, column, severity, code }: Place): Place => ({ file, row, column, severity, code });
const text = (place: Place): string => JSON.stringify(placeOf(place));
// Files left out are said on every one of these small inventories.
const counts = ({ code }: Place): boolean => code !== 'file-absent';

describe('inventories with trouble in them', () => {
  for (const name of readdirSync(folder)) {
    const { about, kept, findings } = JSON.parse(readFileSync(join(folder, name, 'expected-findings.json'), 'utf8')) as Expected;

    it(`${name}: ${about}`, async () => {
      const intake = await readInventory(join(folder, name));
      expect(intake.findings.filter(counts).map(text).sort()).toEqual(findings.map(text).sort());
      for (const [list, count] of Object.entries(kept)) expect([list, intake.records[list as 'windows'].length]).toEqual([list, count]);
      for (const { expected, whatToDo } of intake.findings) expect([expected, whatToDo].every((said) => said.length > 3)).toBe(true);
    });
  }
});
