import { facadeSky, filmedMakeUp, glazingOptics, opaqueGain_W, PLAIN_EMISSIVITY, shadeOnFacade, skyYear, sunYear, windowGain_W_m2, yearUFactor_W_m2K } from '#calc';
import type { BodyWindow, FacadeSky, FilmOnClear, GlazingMakeUp, GlazingOptics, HourlyYear, OutsideSurface } from '#calc';
import { z } from 'zod';
import { filmInput, gapInput, neededGlazing, paneInput, readFilm } from './glass-input.js';
import type { KernelRoom } from './kernel.js';

const share = z.number().min(0).max(1);
const length = z.number().min(0);
const facing = { azimuth_deg: z.number(), tilt_deg: z.number().min(0).max(180) };
const shade = z.strictObject({
  width_m: z.number().gt(0).optional(),
  height_m: z.number().gt(0).optional(),
  overhangDepth_m: length.default(0),
  overhangGap_m: length.default(0),
  finDepth_m: length.default(0),
  finGap_m: length.default(0),
  reveal_m: length.default(0),
  horizon: z.array(z.strictObject({ azimuth_deg: z.number(), altitude_deg: z.number().min(0).max(90), passes: share.optional(), passesBare: share.optional() })).default([]),
});

/** A window as the kernel takes it. */
export const windowInput = z.strictObject({
  ...facing,
  area_m2: z.number().gt(0).describe('opening, frame in it'),
  frameShare: share.default(0),
  glazing: z.union([z.string(), z.strictObject({ panes: z.array(paneInput).min(1), gaps: z.array(gapInput).optional() })]).describe('KEY or panes, outdoors first'),
  film: filmInput.optional().describe('KEY or figures on 3 mm clear'),
  shade: shade.optional().describe('width and height of the glass; a square of the glass area when absent'),
  albedo: share.optional(),
});

/** An opaque wall or roof to outdoors as the kernel takes it. */
export const opaqueInput = z.strictObject({ ...facing, area_m2: z.number().min(0), u_W_m2K: z.number().min(0), absorptance: share });

export type WindowInput = z.infer<typeof windowInput>;
export type OpaqueInput = z.infer<typeof opaqueInput>;

/** Share of the sun the ground throws back. Source: common practice, no source. */
const plainGround = 0.2;

/** What the sun and the sky do to a dwelling, and its windows as paths for heat. */
export interface DwellingSun {
  readonly solar_W: Float64Array;
  readonly opaqueSolar_W: Float64Array;
  readonly windows: readonly BodyWindow[];
}

/** A window's glazing as the other kernels read theirs: a KEY, or panes with gaps. */
const makeUpOf = (given: WindowInput['glazing'], room: KernelRoom): GlazingMakeUp => neededGlazing(typeof given === 'string' ? { glazing: given } : given, room).makeUp;

function roomEmissivityOf(makeUp: GlazingMakeUp, on: FilmOnClear | null): number {
  const panes = filmedMakeUp(makeUp, on).panes;
  return panes[panes.length - 1]?.emissivityBack ?? PLAIN_EMISSIVITY;
}

/** Light on a facade, worked out once for each way a facade looks. */
function skyBook(weather: HourlyYear): (at: { azimuth_deg: number; tilt_deg: number; albedo: number }) => FacadeSky {
  const sun = sunYear(weather.site);
  const sky = skyYear(sun, weather);
  const book = new Map<string, FacadeSky>();
  return ({ azimuth_deg, tilt_deg, albedo }) => {
    const key = `${String(azimuth_deg)}/${String(tilt_deg)}/${String(albedo)}`;
    const known = book.get(key) ?? facadeSky({ sun, weather, azimuth_deg, tilt_deg, albedo, sky });
    book.set(key, known);
    return known;
  };
}

/** Sun through the windows and on opaque parts of a dwelling, by the same functions the plan uses. */
export function dwellingSun(weather: HourlyYear, given: { windows: readonly WindowInput[]; opaque: readonly OpaqueInput[]; albedo?: number | undefined }, room: KernelRoom): DwellingSun {
  const sun = sunYear(weather.site);
  const skyOf = skyBook(weather);
  const albedo = given.albedo ?? plainGround;
  const solar_W = new Float64Array(8760);
  const gain = new Float64Array(8760);
  const outside: OutsideSurface[] = given.opaque.map((part) => ({ ...part, sky: skyOf({ ...part, albedo }) }));
  const windows = given.windows.map((window) => {
    const makeUp = makeUpOf(window.glazing, room);
    const on = readFilm(window.film, room);
    const optics: GlazingOptics = glazingOptics(makeUp, on);
    const glass_m2 = window.area_m2 * (1 - window.frameShare);
    const side = Math.sqrt(glass_m2);
    const open = shade.parse({});
    const { width_m = side, height_m = side, ...rest } = window.shade ?? open;
    const sky = skyOf({ ...window, albedo: window.albedo ?? albedo });
    const shaded = shadeOnFacade(sun, window, { ...rest, width_m, height_m, horizon: rest.horizon.map(({ passes = 0, passesBare = passes, ...point }) => ({ ...point, passes, passesBare })) });
    windowGain_W_m2({ optics, sky, shade: shaded }, gain);
    for (let h = 0; h < 8760; h++) solar_W[h] = solar_W[h]! + glass_m2 * gain[h]!;
    const path = { area_m2: window.area_m2, uFactor_W_m2K: optics.uFactor_W_m2K, roomEmissivity: roomEmissivityOf(makeUp, on) };
    outside.push({ area_m2: glass_m2, u_W_m2K: yearUFactor_W_m2K(path), absorptance: 0, tilt_deg: window.tilt_deg, emittance: PLAIN_EMISSIVITY });
    return path;
  });
  return { solar_W, opaqueSolar_W: opaqueGain_W(outside), windows };
}
