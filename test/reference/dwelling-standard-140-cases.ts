import {
  COSINE_STEPS, dwellingYear, facadeSky, fittedSurfaceConductance_W_m2K, gapResistance_m2K_W, glazingOptics, opaqueGain_W, shadeOnFacade, skyYear, sunYear,
  windowGain_W_m2, yearUFactor_W_m2K, type DwellingBody, type DwellingYear, type FacadeSky, type GlazingMakeUp, type HourlyYear, type HourlyValue, type ShadeGeometry,
} from '#calc';

/** How the window and the room air are modelled: as the program does, or as a plain reading of the method does. */
export interface Variant {
  /** U of the windows: at year-round films, or the figures of the published 5R1C model. */
  readonly windowU: 'year films' | 'published 5R1C';
  readonly surfaceConductance_W_m2K: number;
}

export const asInTheProgram: Variant = { windowU: 'year films', surfaceConductance_W_m2K: fittedSurfaceConductance_W_m2K };
export const plainMethod: Variant = { windowU: 'published 5R1C', surfaceConductance_W_m2K: 3.45 };

type Glass = 'double' | 'single' | 'low-e';
const pane = { solarTransmittance: 0.834, frontReflectance: 0.075, backReflectance: 0.075, emissivityFront: 0.84, emissivityBack: 0.84, thickness_mm: 3.048 };
const lowE = { ...pane, solarTransmittance: 0.452, frontReflectance: 0.359, backReflectance: 0.397, emissivityBack: 0.047, thickness_mm: 3.18, coated: true };
const gap = (gas: 'air' | 'argon', inside: number) => ({ resistance_m2K_W: gapResistance_m2K_W({ width_mm: 12, gas, emissivities: [inside, 0.84] }) });
const glasses: Readonly<Record<Glass, GlazingMakeUp>> = {
  double: { key: 'case 600', panes: [pane, pane], gaps: [gap('air', 0.84)] },
  single: { key: 'case 670', panes: [pane], gaps: [] },
  'low-e': { key: 'case 660', panes: [lowE, pane], gaps: [gap('argon', 0.047)] },
};
const published5R1C_U: Readonly<Record<Glass, number>> = { double: 3.1, single: 7.8, 'low-e': 1.45 };

/** U of the opaque parts from the case's layers, with the suite's combined surface coefficients of 8.29 indoors and 29.3 outdoors. */
const layers = (resistance_m2K_W: number) => 1 / (1 / 8.29 + resistance_m2K_W + 1 / 29.3);
const wallU = (insulation_m: number) => layers(0.009 / 0.14 + insulation_m / 0.04 + 0.012 / 0.16);
const roofU = (insulation_m: number) => layers(0.019 / 0.14 + insulation_m / 0.04 + 0.01 / 0.16);
const floorU = 0.039;

interface Case {
  readonly glass: Glass;
  readonly windows: readonly { readonly azimuth_deg: number; readonly area_m2: number }[];
  readonly overhang: boolean;
  readonly heavy: boolean;
  readonly insulated: boolean;
  readonly heating: HourlyValue;
  readonly cooling: HourlyValue;
  readonly nightFan: boolean;
  readonly plant: boolean;
}

const hours = Array.from({ length: 24 }, (_, h) => h);
const setback = hours.map((h) => (h < 7 || h === 23 ? 10 : h === 7 ? 15 : 20));
const dayCooling = hours.map((h) => (h >= 7 && h < 18 ? 27 : 999));

function caseOf(id: string): Case {
  const number = Number(id.slice(0, 3));
  const of = number % 100;
  const nightFan = of === 50;
  const base: Omit<Case, 'heating' | 'cooling'> = {
    glass: number === 660 ? 'low-e' : number === 670 ? 'single' : 'double',
    windows: of === 20 ? [{ azimuth_deg: 90, area_m2: 6 }, { azimuth_deg: 270, area_m2: 6 }] : [{ azimuth_deg: 180, area_m2: 12 }],
    overhang: of === 10,
    heavy: number >= 900,
    insulated: of === 80,
    nightFan,
    plant: !id.endsWith('FF'),
  };
  return { ...base, heating: nightFan ? -999 : of === 40 ? setback : 20, cooling: nightFan ? dayCooling : of === 85 ? 20 : 27 };
}

const windowOf = ({ overhang }: Case): ShadeGeometry => ({ width_m: 3, height_m: 2, overhangDepth_m: overhang ? 1 : 0, overhangGap_m: 0.5, finDepth_m: 0, finGap_m: 0, reveal_m: 0, horizon: [] });

/** The building of the suite under a year of weather. */
export class Standard140 {
  readonly #sun;
  readonly #sky;
  readonly #skies = new Map<string, FacadeSky>();

  constructor(readonly weather: HourlyYear) {
    this.#sun = sunYear(weather.site);
    this.#sky = skyYear(this.#sun, weather);
  }

  sky(azimuth_deg: number, tilt_deg = 90): FacadeSky {
    const key = `${String(azimuth_deg)}/${String(tilt_deg)}`;
    const known = this.#skies.get(key) ?? facadeSky({ sun: this.#sun, weather: this.weather, azimuth_deg, tilt_deg, albedo: 0.2, sky: this.#sky });
    this.#skies.set(key, known);
    return known;
  }

  run(id: string, variant: Variant): DwellingYear {
    const of = caseOf(id);
    const uFactor_W_m2K = glazingOptics(glasses[of.glass]).uFactor_W_m2K;
    const windowU = variant.windowU === 'year films' ? yearUFactor_W_m2K({ uFactor_W_m2K }) : published5R1C_U[of.glass];
    const [wall, roof] = [wallU(of.insulated ? 0.25 : 0.066), roofU(of.insulated ? 0.4 : 0.1118)];
    const ventilation_W_K = (1200 * 129.6 * 0.414) / 3600;
    const fan_W_K = (1200 * 1409) / 3600;
    const body: DwellingBody = {
      floor_m2: 48,
      // Effective mass of the layers, ISO 13786 simplified; the published 5R1C model has the same.
      capacity_J_K: 48 * (of.heavy ? 307_750 : 42_167),
      massArea_m2: 48 * (of.heavy ? 2.43 : 2.95),
      facingArea_m2: 171.6,
      opaque_W_K: 63.6 * wall + 48 * roof + 48 * floorU,
      window_W_K: 12 * windowU,
      ventilation_W_K,
      surfaceConductance_W_m2K: variant.surfaceConductance_W_m2K,
    };
    return dwellingYear(body, {
      outdoor_degC: this.weather.outdoor_degC,
      solar_W: this.#windowSun(of),
      opaqueSolar_W: this.#opaqueSun(of, { wall, roof, window: windowU }),
      internal_W: 200,
      internalConvectiveShare: 0.4,
      heatingSetPoint_degC: of.heating,
      coolingSetPoint_degC: of.cooling,
      ventilation_W_K: of.nightFan ? hours.map((h) => ventilation_W_K + (h < 7 || h >= 18 ? fan_W_K : 0)) : ventilation_W_K,
      ...(of.plant ? {} : { heatingLimit_W: 0, coolingLimit_W: 0 }),
    });
  }

  /** Sun let through a window of a case, kWh a year per square metre of glass: the hour loop of the heat gain, reading transmittances. */
  transmitted_kWh_m2(id: string, azimuth_deg: number): number {
    const of = caseOf(id);
    const optics = glazingOptics(glasses[of.glass]);
    const gainByCosine = Float64Array.from({ length: COSINE_STEPS + 2 }, (_, i) => optics.at((Math.acos(Math.min(1, i / COSINE_STEPS)) * 180) / Math.PI).solarTransmittance);
    const through = { ...optics, gainByCosine, hemisphericalSolarHeatGain: optics.hemispherical.solarTransmittance };
    const shade = shadeOnFacade(this.#sun, { azimuth_deg, tilt_deg: 90 }, windowOf(of));
    return windowGain_W_m2({ optics: through, sky: this.sky(azimuth_deg), shade }).reduce((sum, W_m2) => sum + W_m2, 0) / 1000;
  }

  #windowSun(of: Case): Float64Array {
    const optics = glazingOptics(glasses[of.glass]);
    const solar_W = new Float64Array(8760);
    for (const { azimuth_deg, area_m2 } of of.windows) {
      const gain = windowGain_W_m2({ optics, sky: this.sky(azimuth_deg), shade: shadeOnFacade(this.#sun, { azimuth_deg, tilt_deg: 90 }, windowOf(of)) });
      gain.forEach((W_m2, h) => (solar_W[h] = (solar_W[h] ?? 0) + area_m2 * W_m2));
    }
    return solar_W;
  }

  #opaqueSun(of: Case, u: { readonly wall: number; readonly roof: number; readonly window: number }): Float64Array {
    const glassOn = (azimuth_deg: number) => of.windows.filter((window) => window.azimuth_deg === azimuth_deg).reduce((sum, { area_m2 }) => sum + area_m2, 0);
    const walls = ([[0, 21.6], [180, 21.6], [90, 16.2], [270, 16.2]] as const).map(([azimuth_deg, gross_m2]) => ({
      area_m2: gross_m2 - glassOn(azimuth_deg), u_W_m2K: u.wall, absorptance: 0.6, tilt_deg: 90, sky: this.sky(azimuth_deg),
    }));
    const roof = { area_m2: 48, u_W_m2K: u.roof, absorptance: 0.6, tilt_deg: 0, sky: this.sky(0, 0) };
    const windows = { area_m2: 12, u_W_m2K: u.window, absorptance: 0, tilt_deg: 90, emittance: 0.84 };
    return opaqueGain_W([...walls, roof, windows]);
  }
}
