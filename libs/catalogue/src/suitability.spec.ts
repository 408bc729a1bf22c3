import { CLEAR_3_MM, combinedAbsorptance, NOTHING_KNOWN, paneFacts, suitability, type PaneFacts, type Window } from '#calc';
import { sheetOf } from '#calc';
import { openCatalogue } from './catalogue.js';

const catalogue = openCatalogue();
const rules = catalogue.suitabilityRules;
const judge = (facts: Partial<PaneFacts>): ReturnType<typeof suitability> => suitability({ ...NOTHING_KNOWN, layers: 1, existingFilm: 'none', combinedAbsorptance: 0.38, ...facts }, rules);

describe('the rule table of what must be asked', () => {
  it('finds no listed trigger on thin clear single glass, and still gives the standing advice', () => {
    const found = judge({ strength: 'annealed' });
    expect(found.outcome).toBe('no-listed-trigger');
    expect(found.reasons).toEqual([expect.stringContaining('film-to-glass chart')]);
  });

  it('asks for written consent at half of the sun taken up, on glass of unknown strength too, and not on tempered glass', () => {
    expect(judge({ combinedAbsorptance: 0.52, strength: 'annealed' }).outcome).toBe('written-consent-needed');
    expect(judge({ combinedAbsorptance: 0.5 }).outcome).toBe('written-consent-needed');
    expect(judge({ combinedAbsorptance: 0.499 }).outcome).toBe('no-listed-trigger');
    expect(judge({ combinedAbsorptance: 0.52, strength: 'tempered', temperedMarkSeen: true }).outcome).toBe('no-listed-trigger');
  });

  it.each<[string, Partial<PaneFacts>]>([
    ['wired', { wired: true }],
    ['laminated', { laminated: true }],
    ['patterned', { patterned: true }],
    ['fogged', { layers: 2, sealAge_yr: 3, fogged: true }],
    ['a unit of ten years', { layers: 2, sealAge_yr: 10 }],
    ['a unit of unknown age', { layers: 2 }],
    ['a unit of unknown age though tempered', { layers: 2, strength: 'tempered' }],
    ['in warranty', { warrantyInForce: true }],
    ['triple', { layers: 3, sealAge_yr: 1 }],
    ['a large single pane', { paneArea_m2: 5.6 }],
    ['a large unit', { layers: 2, sealAge_yr: 1, paneArea_m2: 3.8 }],
    ['glass of unknown layers above the size of a unit', { layers: null, paneArea_m2: 3.8 }],
    ['a long edge', { longestEdge_m: 3.1 }],
    ['thick', { thickness_mm: 10 }],
    ['single tinted quarter inch', { tinted: true, thickness_mm: 6 }],
    ['a narrow shadow on tinted glass', { tinted: true, shadow: 'narrow-perimeter' }],
    ['damaged', { damaged: true }],
  ])('asks for written consent: %s', (_, facts) => {
    expect(judge(facts).outcome).toBe('written-consent-needed');
  });

  it.each<[string, Partial<PaneFacts>]>([
    ['low-e, young and sealed', { layers: 2, sealAge_yr: 3, lowE: true }],
    ['behind drapes', { heatTrap: true }],
    ['stress above 10 MPa', { edgeStress_MPa: 17.3 }],
    ['glazing not known', { layers: null }],
    ['a narrow shadow on clear glass', { shadow: 'narrow-perimeter' }],
  ])('says ask first: %s', (_, facts) => {
    expect(judge(facts).outcome).toBe('ask-first');
  });

  it('eases no seal, laminate or warranty for a tempered mark, and keeps the mark visible', () => {
    const found = judge({ layers: 2, sealAge_yr: 12, strength: 'tempered', temperedMarkSeen: true });
    expect(found.outcome).toBe('written-consent-needed');
    expect(found.reasons.join(' ')).toMatch(/tempered mark visible/);
  });

  it('takes a passed dew-point test for an old unit', () => {
    expect(judge({ layers: 2, sealAge_yr: 12, sealTested: true }).outcome).toBe('no-listed-trigger');
  });

  it('never promises that glass will not break: the word is in no reason', () => {
    for (const rule of rules) expect(rule.reason + rule.source).not.toMatch(/\bsafe/i);
  });

  it('names a source for every rule, and orders reasons strictest first', () => {
    for (const rule of rules) expect(rule.source.length).toBeGreaterThan(5);
    expect(judge({ lowE: true, wired: true, existingFilm: 'present' }).rules).toEqual(['wired', 'low-e', 'old-film']);
  });
});

describe('the facts of a surveyed window', () => {
  const window: Window = {
    id: 'B/1/W1',
    dwelling: 'B/1',
    planType: null,
    mark: 'W1',
    room: null,
    azimuth_deg: 270,
    tilt_deg: 90,
    width: { entered: '46', mm: 1168.4 },
    height: { entered: '46', mm: 1168.4 },
    liteRows: 1,
    liteColumns: 1,
    frameShare: null,
    glazing: 'double-clear-3',
    labelSolarHeatGain: null,
    labelUFactor_W_m2K: null,
    shade: null,
    insectScreenShare: null,
    blind: null,
    sillHeight_m: null,
    reach: null,
    flags: ['heavy-curtain'],
    warrantyEnd: '2027-06-30',
    replacementYear: null,
    existingFilm: 'none',
    existingFilmCondition: null,
    dropped: false,
    inventoryRow: { file: 'windows.csv', row: 2 },
  };
  const film = sheetOf(catalogue.films.get('reflective-medium'));
  const factsOf = (change: Partial<Window>, onDate = '2027-07-01', glassYear: number | null = 2020): PaneFacts => {
    const glazing = catalogue.glazing.get('double-clear-3');
    return paneFacts({ window: { ...window, ...change }, makeUp: glazing.makeUp, tinted: glazing.tinted, lowE: glazing.lowE, film, onDate, glassYear, weathers: [] });
  };

  it('ends a warranty the day after its last day', () => {
    expect(factsOf({}, '2027-06-30').warrantyInForce).toBe(true);
    expect(factsOf({}, '2027-07-01').warrantyInForce).toBe(false);
    expect(factsOf({ warrantyEnd: null }).warrantyInForce).toBeNull();
  });

  it('leaves the age of a unit unknown without a year, and takes a seal called old as ten years', () => {
    expect(factsOf({}, '2027-07-01', null).sealAge_yr).toBeNull();
    expect(factsOf({ flags: ['old-seal'] }).sealAge_yr).toBe(10);
    expect(factsOf({}, '2031-01-01').sealAge_yr).toBe(11);
  });

  it('works the combined absorptance on the glass that is there: 0.38 on clear, 0.71 on 6 mm bronze', () => {
    const bronze = { ...CLEAR_3_MM, solarTransmittance: 0.49, frontReflectance: 0.05, backReflectance: 0.05 };
    expect(combinedAbsorptance({ key: 'single', panes: [CLEAR_3_MM], gaps: [] }, film)).toBeCloseTo(0.38, 2);
    expect(combinedAbsorptance({ key: 'single', panes: [bronze], gaps: [] }, film)).toBeCloseTo(0.71, 2);
  });
});
