import {
  bareFilm, CLEAR_3_MM, filmedPane, glazingOptics, meterPair, NOTHING_KNOWN, paneStress, paneTemperatures_degC, shadedGlazingOptics, simpleTransmittance, simpleTransmittanceAt,
  SINGLE_CLEAR_3_MM, suitability, survivingCut, W_m2Of_Btu_h_ft2, type FilmOnClear, type GlazingMakeUp, type Pane,
} from '#calc';
import { openCatalogue } from '#catalogue';
import { curtainRegression, oldBlindFactors } from '../glazing-blinds.js';
import { printedCuts, rebasedFilms } from '../glazing-films.js';
import { labelTransmittances } from '../glazing-labels.js';
import { implausibleReadings, meterExample, meterPairs, meterUncertainties } from '../glazing-meter.js';
import { doublePaneTemperatures, screenedPanes, singlePaneStresses } from '../glazing-stress.js';
import { byName, check, type Check, type Figure } from './check.js';
import { plainPane } from './glass-sheets.js';

const catalogue = openCatalogue();
const bronze6 = plainPane(0.49, 0.05);
const clear6 = plainPane(0.771, 0.07);
const single = (pane: Pane): GlazingMakeUp => ({ key: 'single', panes: [pane], gaps: [] });
const double = (outer: Pane, inner: Pane): GlazingMakeUp => ({ key: 'double', panes: [outer, inner], gaps: [{ resistance_m2K_W: 0.17 }] });
export const glasses = { SingleClear3: single(CLEAR_3_MM), SingleBronze6: single(bronze6), DoubleClear3: double(CLEAR_3_MM, CLEAR_3_MM), DoubleBronze6Clear6: double(bronze6, clear6) };

const named = (prefix: string, figures: readonly Figure[]): Figure[] => figures.map((figure) => ({ ...figure, what: `${prefix} ${figure.what}` }));
const onGlasses = (prefix: string, of: (makeUp: GlazingMakeUp) => number): Record<string, number> => Object.fromEntries(Object.entries(glasses).map(([name, makeUp]) => [`${prefix}${name}`, of(makeUp)]));
const toldFilm = ({ film }: { readonly film: object }): string => Object.values(film).join('/');

const films: readonly Check[] = [
  check({
    title: 'Films taken off 3 mm clear and laid on other glass',
    table: rebasedFilms,
    told: toldFilm,
    compare: ({ given, expect: { film: bare, onBronze6, ...whole } }) => {
      const film: FilmOnClear = { ...given.film, side: 'room' };
      const ours = bareFilm(film);
      const on = filmedPane(film, bronze6);
      const gain = (makeUp: GlazingMakeUp): number => glazingOptics(makeUp, film).solarHeatGain;
      const cut = (makeUp: GlazingMakeUp): number => 1 - gain(makeUp) / glazingOptics(makeUp).solarHeatGain;
      return [
        ...named('bare film', byName(bare, { t: ours.transmittance, rf: ours.intoGlass, rb: ours.freeSide })),
        ...named('on 6 mm bronze', byName(onBronze6, { T: on.solarTransmittance, Rf: on.frontReflectance, Rb: on.backReflectance })),
        ...byName(whole, { ...onGlasses('shgc', gain), ...onGlasses('cut', cut) }),
      ];
    },
  }),
  check({
    title: 'Share of the bare heat gain films take off, as printed',
    table: printedCuts,
    told: toldFilm,
    compare: ({ given, expect: theirs }) => {
      const cuts = onGlasses('', (makeUp) => survivingCut(makeUp, { ...given.film, side: 'room' }).cut);
      return byName(theirs, { singleClear3: cuts.SingleClear3, singleBronze6: cuts.SingleBronze6, doubleClear3: cuts.DoubleClear3, doubleBronze6Clear6: cuts.DoubleBronze6Clear6 });
    },
  }),
  check({
    title: 'Windows known by their label, the published simple form',
    table: labelTransmittances,
    compare: ({ given, expect: theirs }) => {
      const at = (angle_deg: number): number => simpleTransmittanceAt(given.solarHeatGain, given.uFactor_W_m2K, angle_deg);
      return byName(theirs, { Tsol: simpleTransmittance(given.solarHeatGain, given.uFactor_W_m2K), T60: at(60), T80: at(80) });
    },
  }),
];

const readings = ({ bare, filmed }: { readonly bare: number; readonly filmed: number }): { bare_W_m2: number; filmed_W_m2: number } => ({ bare_W_m2: W_m2Of_Btu_h_ft2(bare), filmed_W_m2: W_m2Of_Btu_h_ft2(filmed) });

const meter: readonly Check[] = [
  check({
    title: 'Pairs of meter readings',
    table: meterPairs,
    compare: ({ given, expect: theirs }) => {
      const reflectance = given.reflectanceFilmed;
      const filmReflectance = { low: reflectance, best: reflectance, high: reflectance };
      const ours = meterPair({ ...readings(given), bareTransmittance: given.tauBare, bareSolarHeatGain: given.shgcBare, inwardFraction: given.N, filmReflectance });
      return byName(theirs, {
        ratio: ours.transmittanceRatio, tauFilmed: ours.filmedTransmittance, absorptance: ours.absorptance, SHGC: ours.solarHeatGain.best, cutReading: ours.cutInReading, cutSHGC: ours.cutInHeatGain.best,
      });
    },
  }),
  check({
    title: 'A reading no window plane gives',
    table: implausibleReadings,
    compare: ({ given, expect: theirs }) => {
      const ours = meterPair({ bare_W_m2: W_m2Of_Btu_h_ft2(given.bare), filmed_W_m2: 300, bareTransmittance: given.tauBare, bareSolarHeatGain: 0.86 });
      return byName(theirs, { impliedOutdoor_W_m2: ours.impliedOutdoors_W_m2, impliedOutdoor_Btu_h_ft2: ours.impliedOutdoors_W_m2 / 3.15459 });
    },
  }),
  check({
    title: 'Uncertainty of the ratio of two readings',
    table: meterUncertainties,
    compare: ({ given, expect: theirs }) => {
      const ours = meterPair({ ...readings(given), bareTransmittance: 0.834, bareSolarHeatGain: 0.86 });
      return byName(theirs, { ratio: ours.transmittanceRatio, uncertainty: ours.transmittanceRatioUncertainty });
    },
  }),
  check({
    title: 'Worked example of a meter pair',
    table: meterExample,
    compare: ({ given, expect: theirs }) => {
      const ours = meterPair({ ...readings(given), bareTransmittance: given.tauBare, bareSolarHeatGain: given.shgcBare }).solarHeatGain;
      return byName(theirs, { ...ours, solarHeatGain: ours.best });
    },
  }),
];

const stress: readonly Check[] = [
  check({
    title: 'Single panes in the sun, for screening',
    table: singlePaneStresses,
    compare: ({ given: { absorptance, ...weather }, expect: { stressPsi, ...theirs } }) => {
      const ours = paneStress({ layerAbsorptance: [absorptance], gaps_m2K_W: [] }, { name: 'case', ...weather });
      return [
        ...byName(theirs, { paneC: ours.pane_degC[0], dT: ours.difference_K, stressMPa: ours.stress_MPa }),
        { what: 'stressPsi', expected: stressPsi, ours: ours.stress_MPa * 145.0377, limit: 1 },
      ];
    },
  }),
  check({
    title: 'Both panes of a double unit in summer',
    table: doublePaneTemperatures,
    compare: ({ given: { layerAbsorptance, gap_m2K_W, ...weather }, expect: theirs }) => {
      const [outerC, innerC] = paneTemperatures_degC({ layerAbsorptance, gaps_m2K_W: [gap_m2K_W] }, { name: 'case', edge_degC: 28, ...weather });
      return byName(theirs, { outerC, innerC });
    },
  }),
  check({
    title: 'Listed rules on panes',
    table: screenedPanes,
    told: ({ facts }) => Object.entries(facts).map(([name, value]) => `${name} ${String(value)}`).join(', '),
    compare: ({ given, expect: theirs }) => byName(theirs, suitability({ ...NOTHING_KNOWN, ...given.facts }, catalogue.suitabilityRules)),
  }),
];

type BlindKind = Parameters<typeof catalogue.glazing.blind>[0];
const bareTypes = ['single-clear-6', 'single-bronze-6', 'single-grey-6', 'double-clear-3', 'double-bronze-clear-6', 'double-low-e-5', 'triple-clear-3'];

/** Gain behind glass and blind over that behind the glass alone. */
export function blindFactor(makeUp: GlazingMakeUp, kind: BlindKind): number {
  const blind = catalogue.glazing.blind(kind);
  if (blind === null) throw new Error(`no blind ${kind}`);
  return shadedGlazingOptics(makeUp, null, blind).solarHeatGain / glazingOptics(makeUp).solarHeatGain;
}

const alike: Readonly<Record<string, string>> = { ordinary: 'single-clear-3', 'regular plate 1/4 in': 'single-clear-6', 'heat absorbing 48-56 %': 'single-bronze-6', 'double ordinary': 'double-clear-3', 'triple ordinary': 'triple-clear-3' };

const blinds: readonly Check[] = [
  check({
    title: 'Curtains and blinds against a published regression',
    table: curtainRegression,
    compare: ({ given, expect: line }) => {
      const kind = given.kind as BlindKind;
      const on = (makeUp: GlazingMakeUp, what: string, limit?: number): Figure => ({
        what, expected: line.c1 - line.c2 * glazingOptics(makeUp).solarHeatGain, ours: blindFactor(makeUp, kind), ...(limit === undefined ? {} : { limit }),
      });
      // On 3 mm clear the layers were set to it, so it is met more closely there.
      return [on(SINGLE_CLEAR_3_MM, 'single-clear-3, where it was set', 0.002), ...bareTypes.map((key) => on(catalogue.glazing.get(key).makeUp, key))];
    },
  }),
  check({
    title: 'Blinds of an old design manual',
    table: oldBlindFactors,
    isReport: true,
    compare: ({ given, expect: { noShade, ...blind } }) => {
      const key = alike[given.glass];
      const kinds = { lightBlind: 'light', mediumBlind: 'medium', darkBlind: 'dark' } as const;
      return (Object.keys(blind) as (keyof typeof kinds)[]).map((what) => ({
        what: `${what} over bare`,
        expected: (blind[what] ?? NaN) / noShade,
        ours: key === undefined ? 'no glass of ours is like it' : blindFactor(catalogue.glazing.get(key).makeUp, kinds[what]),
      }));
    },
  }),
];

export const glassFilms: readonly Check[] = [...films, ...meter, ...stress, ...blinds];
