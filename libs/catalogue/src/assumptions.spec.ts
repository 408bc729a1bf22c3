import { mkdtempSync, cpSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openCatalogue } from './catalogue.js';
import { ownDataFolder } from './data-folder.js';
import { openAssumptions, splitEfficiencyKey } from './assumptions.js';

/** A copy of the data folder with one text of one file replaced. */
function folderWith(path: string, from: string, to: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'rollout-data-'));
  cpSync(join(ownDataFolder(), 'assumptions'), join(folder, 'assumptions'), { recursive: true });
  const text = readFileSync(join(folder, path), 'utf8');
  expect(text).toContain(from);
  writeFileSync(join(folder, path), text.replace(from, to));
  return folder;
}

describe('the built-in defaults', () => {
  const { assumptions, films } = openCatalogue();

  it('each says its unit, its source and how far it is to be trusted', () => {
    const list = assumptions.list();
    expect(list.length).toBeGreaterThan(70);
    for (const each of list) {
      expect(each.unit).not.toBe('');
      expect(each.source).not.toBe('');
      expect(['measured', 'published', 'assumed']).toContain(each.basis);
    }
  });

  it('a number stands inside its own range', () => {
    for (const { key, value, range } of assumptions.list()) {
      if (range === undefined || typeof value !== 'number') continue;
      expect({ key, low: value >= range[0], high: value <= range[1] }).toEqual({ key, low: true, high: true });
    }
  });

  it('the real discount rate is the floor of the federal rule', () => {
    expect(assumptions.value('realDiscountRate')).toMatchObject({ value: 0.03, basis: 'published' });
  });

  it('the old film is a class the film catalogue holds', () => {
    expect(films.find(assumptions.value('oldFilm').value)).not.toBeNull();
  });

  it('an unknown key is not there, a floor area least of all', () => {
    expect(assumptions.find('floorArea_m2')).toBeNull();
    expect(assumptions.find('toString')).toBeNull();
    expect(assumptions.find('wallU.before-1980')).toMatchObject({ value: 1.3 });
  });

  it('a split unit takes the class of its year', () => {
    expect([1985, 1992, 2006, 2020].map((year) => splitEfficiencyKey(year))).toEqual(['splitEfficiency.before-1992', 'splitEfficiency.1992-2005', 'splitEfficiency.2006-2014', 'splitEfficiency.2015-on']);
    expect(splitEfficiencyKey(null)).toBeNull();
  });

  it('a file with a share above one, a missing source or a day that does not sum to one is refused on opening', () => {
    expect(() => openAssumptions(folderWith('assumptions/dwelling.json', '"frameShare": {"value": 0.2', '"frameShare": {"value": 1.2'))).toThrow('frameShare');
    expect(() => openAssumptions(folderWith('assumptions/use.json', '"value": [0.025,', '"value": [0.125,'))).toThrow('sum to 1');
    expect(() => openAssumptions(folderWith('assumptions/money.json', '"realDiscountRate"', '"discountRate"'))).toThrow('realDiscountRate');
  });
});
