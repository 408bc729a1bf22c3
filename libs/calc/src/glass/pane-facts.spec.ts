import type { Window } from '../portfolio/index.js';
import { CLEAR_3_MM, COLD_CALM_MORNING, combinedAbsorptance, NOTHING_KNOWN, paneFacts, paneHeat, paneStress, stacked, suitability, filmedMakeUp, paneByAngle, type FilmedWindow, type FilmOnClear, type GlazingMakeUp, type SuitabilityRule } from './index.js';

const window: Window = {
  id: 'B/1/W1', dwelling: 'B/1', planType: null, mark: 'W1', room: null, azimuth_deg: 270, tilt_deg: 90, width: { entered: '900', mm: 900 }, height: { entered: '1500', mm: 1500 }, liteRows: 1, liteColumns: 1, frameShare: null,
  glazing: 'double', labelSolarHeatGain: null, labelUFactor_W_m2K: null, shade: null, insectScreenShare: null, blind: null, sillHeight_m: null, reach: null, flags: [], warrantyEnd: null, replacementYear: null, existingFilm: 'none',
  existingFilmCondition: null, dropped: false, inventoryRow: { file: 'windows.csv', row: 2 },
};
const film: FilmOnClear = { solarTransmittance: 0.3, frontReflectance: 0.3, backReflectance: 0.35, roomEmissivity: 0.7, side: 'room' };
const makeUp: GlazingMakeUp = { key: 'double', panes: [{ ...CLEAR_3_MM, thickness_mm: 6 }, CLEAR_3_MM], gaps: [{ resistance_m2K_W: 0.17 }] };
const factsOf = (flags: Window['flags'], more: Partial<FilmedWindow> = {}) => paneFacts({ window: { ...window, flags }, makeUp, tinted: false, lowE: null, film, onDate: '2027-07-01', glassYear: 2020, weathers: [], ...more });

describe('what a survey says of a pane', () => {
  it('is its size, its layers, its thickest pane, its age and what is known of the glass', () => {
    expect(factsOf([])).toMatchObject({
      layers: 2, thickness_mm: 6, paneArea_m2: 1.35, longestEdge_m: 1.5, sealAge_yr: 7, tinted: false, lowE: null, strength: null, temperedMarkSeen: false, existingFilm: 'none', edgeStress_MPa: null, warrantyInForce: null,
      fogged: false, damaged: false, wired: false, laminated: null, patterned: false, skylight: false, fireRated: null, escape: false, heatTrap: false,
    });
  });

  it.each([
    ['tempered-mark-seen', { temperedMarkSeen: true, strength: 'tempered' }], ['fogged', { fogged: true }], ['cracked', { damaged: true }], ['wired', { wired: true }], ['laminated', { laminated: true }], ['patterned', { patterned: true }],
    ['skylight', { skylight: true }], ['fire-rated', { fireRated: true }], ['escape', { escape: true }], ['heavy-curtain', { heatTrap: true }], ['old-seal', { sealAge_yr: 10 }],
  ] as const)('flag %s and nothing else moves its fact', (flag, moved) => {
    expect(factsOf([flag])).toEqual({ ...factsOf([]), ...moved });
  });

  it('glass that is not known leaves its facts unknown', () => {
    expect(factsOf([], { makeUp: null, glassYear: null, weathers: [COLD_CALM_MORNING] })).toMatchObject({ layers: null, thickness_mm: null, combinedAbsorptance: null, edgeStress_MPa: null, sealAge_yr: null });
    expect(factsOf(['old-seal'], { glassYear: 2000 }).sealAge_yr).toBe(27);
  });

  it('its stress is that of the hardest weather', () => {
    const mild = { ...COLD_CALM_MORNING, outdoor_degC: 15, edge_degC: 15, solar_W_m2: 200 };
    const of = (weather: typeof COLD_CALM_MORNING) => paneStress(paneHeat(makeUp, film), weather).stress_MPa;
    expect(of(mild)).toBeLessThan(of(COLD_CALM_MORNING));
    for (const weathers of [[mild, COLD_CALM_MORNING], [COLD_CALM_MORNING, mild]]) expect(factsOf([], { weathers }).edgeStress_MPa).toBe(of(COLD_CALM_MORNING));
  });

  it('its absorptance is the filmed pane’s by itself, inside or out, or more in the unit', () => {
    for (const side of ['room', 'outdoor'] as const) {
      const filmed = filmedMakeUp(makeUp, { ...film, side }).panes[side === 'room' ? 1 : 0]!;
      const alone = stacked([paneByAngle(filmed)(0)]).layerAbsorptance[0]!;
      expect(combinedAbsorptance(makeUp, { ...film, side })).toBeGreaterThanOrEqual(alone - 1e-12);
      expect(combinedAbsorptance({ key: 'one', panes: [CLEAR_3_MM], gaps: [] }, { ...film, side })).toBeCloseTo(1 - 0.3 - (side === 'room' ? 0.3 : 0.35), 2);
    }
  });
});

describe('a rule table', () => {
  const rule = (id: string, outcome: SuitabilityRule['outcome'], all: SuitabilityRule['all']): SuitabilityRule => ({ id, outcome, all, reason: `because of ${id}`, source: 'made up' });
  const rules = [
    rule('mild', 'ask-first', [{ fact: 'layers', is: 2 }]), rule('strict', 'written-consent-needed', [{ fact: 'wired', is: true }]), rule('thick', 'ask-first', [{ fact: 'thickness_mm', above: 6 }]), rule('large', 'ask-first', [{ fact: 'paneArea_m2', atLeast: 2 }]),
    rule('unsure', 'ask-first', [{ fact: 'sealTested', unknown: true }]), rule('perhaps', 'ask-first', [{ fact: 'laminated', is: true, orUnknown: true }]), rule('other', 'ask-first', [{ fact: 'strength', isNot: 'tempered' }]),
  ];
  const idsOf = (facts: Partial<typeof NOTHING_KNOWN>) => suitability({ ...NOTHING_KNOWN, sealTested: true, laminated: false, ...facts }, rules).rules;

  it('gives the strictest outcome first, whatever the order of its lines', () => {
    const found = suitability({ ...NOTHING_KNOWN, layers: 2, wired: true, sealTested: true, laminated: false }, rules);
    expect(found).toMatchObject({ outcome: 'written-consent-needed', rules: ['strict', 'mild'] });
    expect(found.reasons.slice(0, 2)).toEqual(['because of strict', 'because of mild']);
    expect(found.reasons).toHaveLength(3);
  });

  it('holds a line only where all its tests do', () => {
    expect(idsOf({})).toEqual([]);
    expect(idsOf({ thickness_mm: 6 })).toEqual([]);
    expect(idsOf({ thickness_mm: 6.1 })).toEqual(['thick']);
    expect(idsOf({ paneArea_m2: 2 })).toEqual(['large']);
    expect(idsOf({ paneArea_m2: 1.99 })).toEqual([]);
    expect(idsOf({ sealTested: null })).toEqual(['unsure']);
    expect(idsOf({ laminated: null })).toEqual(['perhaps']);
    expect(idsOf({ strength: 'annealed' })).toEqual(['other']);
    expect(idsOf({ strength: 'tempered' })).toEqual([]);
  });
});
