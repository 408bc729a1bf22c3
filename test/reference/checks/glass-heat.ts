import {
  dewPoint_degC, EN_410_FILMS, glazingOptics, indoorFilm_W_m2K, inwardFractions, roomFace_degC, secondaryHeat, SUMMER_FILMS, uFactorOfPath_W_m2K, type Pane,
} from '#calc';
import { dewPoints, doubleHeatGain, laboratoryPanes, roomFilms, secondaryHeats, singleHeatGains, windySingle, winterFaces } from '../glazing-heat.js';
import { byName, check, type Check } from './check.js';
import { plainPane } from './glass-sheets.js';

const single = (pane: Pane): ReturnType<typeof glazingOptics> => glazingOptics({ key: 'single', panes: [pane], gaps: [] });

export const glassHeat: readonly Check[] = [
  check({
    title: 'Secondary heat by EN 410',
    table: secondaryHeats,
    compare: ({ given, expect: theirs }) => {
      const qi = secondaryHeat({ ...given, glass_m2K_W: given.layerAbsorptance.map(() => 0) }, given.layerAbsorptance);
      return byName(theirs, { qi, g: given.solarTransmittance + qi });
    },
  }),
  check({ title: 'Room-side coefficient by emissivity', table: roomFilms, compare: ({ given, expect: theirs }) => byName(theirs, { hi: indoorFilm_W_m2K(EN_410_FILMS, given.emissivity) }) }),
  check({
    title: 'Heat gain of single panes in summer',
    table: singleHeatGains,
    compare: ({ given, expect: theirs }) => {
      const ours = single({ ...plainPane(given.T, given.R), emissivityBack: given.roomEmissivity });
      return byName(theirs, { N: ours.inwardFractions[0], SHGC: ours.solarHeatGain });
    },
  }),
  check({
    title: 'Double clear by a full balance',
    table: doubleHeatGain,
    compare: ({ given, expect: theirs }) => {
      const inward = inwardFractions({ outdoor_W_m2K: 20.3, indoor_W_m2K: indoorFilm_W_m2K(SUMMER_FILMS, 0.84), glass_m2K_W: [0.003, 0.003], gaps_m2K_W: [0.17] });
      return byName(theirs, { solarHeatGain: given.layerAbsorptance.reduce((sum, a, k) => sum + a * inward[k]!, given.solarTransmittance) });
    },
  }),
  check({
    title: 'Single clear in wind by a full balance',
    table: windySingle,
    compare: ({ given, expect: theirs }) => {
      const path = { outdoor_W_m2K: given.outdoor_W_m2K, indoor_W_m2K: given.indoor_W_m2K, glass_m2K_W: [0.003], gaps_m2K_W: [] };
      return byName(theirs, { solarHeatGain: given.solarTransmittance + secondaryHeat(path, [given.absorptance]) });
    },
  }),
  check({
    title: 'Panes of a laboratory',
    table: laboratoryPanes,
    compare: ({ given, expect: theirs }) => byName(theirs, { SHGC: single({ ...plainPane(given.T, given.R), emissivityBack: given.emissivityRoom }).solarHeatGain }),
  }),
  check({
    title: 'U-factor and room face on a winter night',
    table: winterFaces,
    compare: ({ given, expect: theirs }) => {
      const indoor_W_m2K = indoorFilm_W_m2K({ outdoor_W_m2K: given.ho, indoorConvection_W_m2K: given.hc, indoorRadiation_W_m2K: given.hrPerEmissivity }, given.roomEmissivity);
      const path = { outdoor_W_m2K: given.ho, indoor_W_m2K, glass_m2K_W: [given.glassR], gaps_m2K_W: [] };
      const U = uFactorOfPath_W_m2K(path);
      return byName(theirs, { hi: indoor_W_m2K, U, U_ip: U / 5.678263, innerSurfaceC: roomFace_degC(path, given.Tout, given.Tin) });
    },
  }),
  check({ title: 'Dew point of room air', table: dewPoints, compare: ({ given, expect: theirs }) => byName(theirs, { dewC: dewPoint_degC(given.air_degC, given.relativeHumidity) }) }),
];
