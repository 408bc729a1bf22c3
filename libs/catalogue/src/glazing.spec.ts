import { CLEAR_3_MM, gapResistance_m2K_W, glazingOptics, labelledGlazing } from '#calc';
import { openCatalogue } from './catalogue.js';
import { readData } from './data-folder.js';

const catalogue = openCatalogue();

describe('built-in glazing', () => {
  it('holds every type from single clear to triple low-e, each once and with a source', () => {
    const keys = catalogue.glazing.list().map((row) => row.key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).toEqual(expect.arrayContaining(['single-clear-3', 'single-bronze-5', 'double-clear-3', 'double-low-e-5', 'triple-low-e-5']));
    for (const row of catalogue.glazing.list()) expect(row.source.length).toBeGreaterThan(10);
  });

  it('gives no survey word to two types', () => {
    const words = catalogue.glazing.list().flatMap((row) => row.synonyms);
    expect(words.filter((word, i) => words.indexOf(word) !== i)).toEqual([]);
    expect(words.filter((word) => word !== word.toLowerCase())).toEqual([]);
  });

  it('refuses a type it does not hold by naming those it does', () => {
    expect(() => catalogue.glazing.get('quadruple')).toThrow(/single-clear-3.*got quadruple/);
    expect(catalogue.glazing.find('quadruple')).toBeNull();
  });

  it('lets a sheet of the film reference be the 3 mm clear of the table', () => {
    expect(catalogue.glazing.get('single-clear-3').makeUp.panes[0]).toEqual({ ...CLEAR_3_MM, coated: false });
  });

  it('states low-e gaps as EN 673 works them out', () => {
    const { gaps } = readData(catalogue.folder, 'glazing/gaps.json') as {
      gaps: { key: string; resistance_m2K_W: number; width_mm: number; gas: 'air' | 'argon'; emissivities: [number, number] }[];
    };
    for (const gap of gaps) expect(Math.abs(gapResistance_m2K_W(gap) - gap.resistance_m2K_W)).toBeLessThan(gap.key === 'air' ? 0.01 : 0.0006);
  });

  it('builds a label of low-e kind on the same coated sheet the table has', () => {
    const own = catalogue.glazing.get('double-low-e-5').makeUp;
    const guessed = labelledGlazing({ solarHeatGain: glazingOptics(own).solarHeatGain, uFactor_W_m2K: 1.6 });
    expect(guessed.panes[0]?.solarTransmittance).toBeCloseTo(own.panes[0]?.solarTransmittance ?? 0, 2);
  });
});

describe('built-in films', () => {
  it('keeps each illustrative figure inside the range of its class', () => {
    for (const film of catalogue.films.list()) {
      const within = (value: number, field: string): void => {
        const [least, most] = film.classRanges[field] ?? [NaN, NaN];
        expect({ film: film.id, field, value, inside: value >= least && value <= most }).toEqual({ film: film.id, field, value, inside: true });
      };
      within(film.solarTransmittance, 'solarTransmittance');
      within(film.side === 'room' ? film.frontReflectance : film.backReflectance, 'frontReflectance');
      within(film.visibleTransmittance ?? 0, 'visibleTransmittance');
      within(film.roomEmissivity ?? 0, 'roomEmissivity');
      expect(film.life_yr).toBeGreaterThanOrEqual(film.lifeRange_yr[0]);
      expect(film.life_yr).toBeLessThanOrEqual(film.lifeRange_yr[1]);
    }
  });

  it('gives no survey word to two films', () => {
    const words = catalogue.films.list().flatMap((film) => film.synonyms);
    expect(words.filter((word, i) => words.indexOf(word) !== i)).toEqual([]);
  });
});
