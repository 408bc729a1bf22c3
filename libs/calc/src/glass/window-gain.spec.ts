import { glazingOptics, shadedGlazingOptics } from './glazing-optics.js';
import { CLEAR_3_MM, SINGLE_CLEAR_3_MM, type FilmOnClear } from './pane.js';
import { windowGain_W_m2, type WindowInSun } from './window-gain.js';

const HOURS = 8760;
const film: FilmOnClear = { solarTransmittance: 0.24, frontReflectance: 0.38, backReflectance: 0.38, roomEmissivity: 0.75, side: 'room' };
const lightCurtain = { solarTransmittance: 0.15, frontReflectance: 0.573, backReflectance: 0.573 };

/** A made-up year with every angle, night and cloud in it. */
function year(): WindowInSun['sky'] & { sunlit: Float64Array } {
  const of = (at: (hour: number) => number): Float64Array => Float64Array.from({ length: HOURS }, (_, hour) => at(hour));
  const up = (hour: number): number => Math.max(0, Math.sin(((hour % 24) - 6) * (Math.PI / 12)));
  const cosIncidence = of((hour) => up(hour) * Math.abs(Math.cos(hour / 997)));
  return {
    cosIncidence,
    beam_W_m2: of((hour) => 850 * cosIncidence[hour]! * (hour % 5 === 0 ? 0 : 1)),
    sky_W_m2: of((hour) => 120 * up(hour)),
    ground_W_m2: of((hour) => 60 * up(hour)),
    sunlit: of((hour) => ((hour * 7) % 11) / 10 > 1 ? 1 : ((hour * 7) % 11) / 10),
  };
}

const { sunlit, ...sky } = year();
const shade = { sunlit, skyView: 0.8 };
const sum = (series: Float64Array): number => series.reduce((total, each) => total + each, 0);
const incidence = (cosine: number): number => (Math.acos(cosine) * 180) / Math.PI;

describe('heat of the sun through a window', () => {
  it('agrees in every hour with its plain twin that works the angle itself', () => {
    const optics = glazingOptics(SINGLE_CLEAR_3_MM, film);
    const drawn = shadedGlazingOptics(SINGLE_CLEAR_3_MM, film, lightCurtain);
    const window: WindowInSun = { optics, sky, shade, screenShare: 0.5, cleanliness: 0.95, blind: { drawn, covered: 0.4, closesAt_W_m2: 200 } };
    const fast = windowGain_W_m2(window);
    for (let hour = 0; hour < HOURS; hour += 13) {
      const arrives = 0.95 * (1 - 0.5 * (1 - 0.65));
      const beam = sky.beam_W_m2[hour]! * sunlit[hour]!;
      const diffuse = 0.8 * sky.sky_W_m2[hour]! + sky.ground_W_m2[hour]!;
      const through = (glass: typeof optics): number => {
        const byAngle = beam > 0 ? glass.solarHeatGainAt(incidence(sky.cosIncidence[hour]!)) * beam : 0;
        return byAngle + glass.hemisphericalSolarHeatGain * diffuse;
      };
      const covered = arrives * (beam + diffuse) >= 200 ? 0.4 : 0;
      const plain = arrives * ((1 - covered) * through(optics) + covered * through(drawn));
      expect(Math.abs(fast[hour]! - plain)).toBeLessThan(0.1);
    }
  });

  it('writes into the array it is given and nothing else', () => {
    const optics = glazingOptics(SINGLE_CLEAR_3_MM);
    const out = new Float64Array(HOURS).fill(-1);
    expect(windowGain_W_m2({ optics, sky, shade }, out)).toBe(out);
    expect(out.every((gain) => gain >= 0)).toBe(true);
    expect(() => windowGain_W_m2({ optics, sky, shade }, new Float64Array(10))).toThrow(/8760/);
  });

  it('takes only the beam away where the window is shaded', () => {
    const optics = glazingOptics(SINGLE_CLEAR_3_MM);
    const dark = windowGain_W_m2({ optics, sky, shade: { sunlit: new Float64Array(HOURS), skyView: 1 } });
    const hour = 12;
    expect(dark[hour]).toBeCloseTo(optics.hemisphericalSolarHeatGain * (sky.sky_W_m2[hour]! + sky.ground_W_m2[hour]!), 9);
  });

  it('lets a film save less behind a light curtain than behind bare glass', () => {
    const saved = (blind: (of: FilmOnClear | null) => WindowInSun['blind']): number => {
      const gain = (of: FilmOnClear | null): number => sum(windowGain_W_m2({ optics: glazingOptics(SINGLE_CLEAR_3_MM, of), sky, shade, blind: blind(of) }));
      return gain(null) - gain(film);
    };
    const open = saved(() => undefined);
    const behindCurtain = saved((of) => ({ drawn: shadedGlazingOptics(SINGLE_CLEAR_3_MM, of, lightCurtain), covered: 1, closesAt_W_m2: 0 }));
    expect(behindCurtain).toBeGreaterThan(0);
    expect(behindCurtain).toBeLessThan(0.5 * open);
  });

  it('closes a blind by the sun outside the glass, so bare and filmed close in the same hours', () => {
    const never = { drawn: glazingOptics(SINGLE_CLEAR_3_MM), covered: 1, closesAt_W_m2: 1e9 };
    const optics = glazingOptics(SINGLE_CLEAR_3_MM, film);
    const open = windowGain_W_m2({ optics, sky, shade });
    windowGain_W_m2({ optics, sky, shade, blind: never }).forEach((gain, hour) => expect(gain).toBeCloseTo(open[hour]!, 9));
  });

  it('refuses shares that are none', () => {
    const optics = glazingOptics({ key: 'x', panes: [CLEAR_3_MM], gaps: [] });
    expect(() => windowGain_W_m2({ optics, sky, shade, screenShare: 1.2 })).toThrow(/screenShare/);
    expect(() => windowGain_W_m2({ optics, sky, shade: { sunlit, skyView: -0.1 } })).toThrow(/skyView/);
    expect(() => shadedGlazingOptics(SINGLE_CLEAR_3_MM, null, { solarTransmittance: 0.7, frontReflectance: 0.5, backReflectance: 0.5 })).toThrow(RangeError);
  });
});
