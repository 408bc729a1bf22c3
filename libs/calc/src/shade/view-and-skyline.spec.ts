import { sunYear } from '../sun/index.js';
import { shadeOnFacade, skyView, sunlitShare, type HorizonPoint, type ShadeGeometry } from './index.js';

const bare: ShadeGeometry = { width_m: 2, height_m: 2, overhangDepth_m: 0, overhangGap_m: 0, finDepth_m: 0, finGap_m: 0, reveal_m: 0, horizon: [] };
const round = (altitude_deg: number, passes: number, passesBare: number): Partial<ShadeGeometry> => ({ horizon: [{ azimuth_deg: 0, altitude_deg, passes, passesBare }] });
const viewOf = (tilt_deg: number, geometry: Partial<ShadeGeometry>) => skyView({ azimuth_deg: 200, tilt_deg }, { ...bare, ...geometry });
/** Hottel's crossed strings from a strip `length` wide to a plate `depth` deep at right angles, `gap` beside it. */
const toPlate = (length: number, depth: number, gap: number) => (length + gap + Math.hypot(depth, gap) - Math.hypot(depth, length + gap) - gap) / (2 * length);

describe('sky view against view factors worked by hand', () => {
  it.each([20, 45, 70])('a level pane inside a skyline of one height %p° sees cos² of it', (e_deg) => {
    expect(Math.abs(viewOf(0, round(e_deg, 0, 0)) - Math.cos((e_deg * Math.PI) / 180) ** 2)).toBeLessThan(0.003);
  });

  it('trees of one height take their mean of leaf and bare from what lies behind them', () => {
    const e = (33 * Math.PI) / 180;
    const behind = (2 * e + Math.sin(2 * e)) / Math.PI;
    expect(Math.abs(viewOf(90, round(33, 0.2, 0.7)) - (1 - (1 - 0.45) * behind))).toBeLessThan(0.003);
    expect(Math.abs(viewOf(0, round(33, 0.7, 0.1)) - (1 - (1 - 0.4) * Math.sin(e) ** 2))).toBeLessThan(0.003);
  });

  // The fins of a wall take as much of the sky as of the ground.
  it.each([[0.5, 0], [1, 0.3], [2, 0]])('fins %p m deep, %p m beside a pane 2 m wide, on both sides', (depth, gap) => {
    expect(Math.abs(viewOf(90, { finDepth_m: depth, finGap_m: gap }) - (1 - 2 * toPlate(2, depth, gap)))).toBeLessThan(0.003);
  });

  // Above its own normal a pane of 45° or 60° sees nothing but sky; of the open sky (1 + cos tilt)/2.
  it.each([[45, 0.5, 0], [45, 1.5, 0.4], [60, 1, 0]])('a pane sloped %p° under a long plate square to it, %p m deep', (tilt, depth, gap) => {
    const open = (1 + Math.cos((tilt * Math.PI) / 180)) / 2;
    expect(Math.abs(viewOf(tilt, { overhangDepth_m: depth, overhangGap_m: gap }) - (open - toPlate(2, depth, gap)) / open)).toBeLessThan(0.004);
  });

  it('a pane that faces the ground sees no sky to lose', () => {
    expect(viewOf(180, {})).toBe(0);
  });
});

describe('a skyline between its points', () => {
  const shaded = (horizon: readonly HorizonPoint[], sunAzimuth_deg: number, sunAltitude_deg: number) =>
    sunlitShare({ azimuth_deg: sunAzimuth_deg, tilt_deg: 90, leaf: 1, sunAltitude_deg, sunAzimuth_deg, geometry: { ...bare, horizon } }).sunlit === 0;
  const edge = (horizon: readonly HorizonPoint[], azimuth: number, altitude: number) => {
    expect(shaded(horizon, azimuth, altitude - 0.01)).toBe(true);
    expect(shaded(horizon, azimuth, altitude + 0.01)).toBe(false);
  };

  it('several points within one degree', () => {
    const horizon = [[90, 10], [100.2, 10], [100.6, 40], [110, 40]].map(([azimuth_deg, altitude_deg]) => ({ azimuth_deg: azimuth_deg!, altitude_deg: altitude_deg! }));
    edge(horizon, 100.1, 10);
    edge(horizon, 100.4, 25);
    edge(horizon, 100.6, 40);
    edge(horizon, 100.8, 40);
  });

  it('two points on one bearing make an upright edge', () => {
    const horizon = [[90, 10], [100, 10], [100, 40], [110, 40]].map(([azimuth_deg, altitude_deg]) => ({ azimuth_deg: azimuth_deg!, altitude_deg: altitude_deg! }));
    edge(horizon, 99.99, 10);
    edge(horizon, 100.01, 40);
  });

  it('points half a turn apart close the circle, a degree more leaves the rest open', () => {
    edge([{ azimuth_deg: 90, altitude_deg: 20 }, { azimuth_deg: 270, altitude_deg: 20 }], 180, 20);
    edge([{ azimuth_deg: 90, altitude_deg: 20 }, { azimuth_deg: 270, altitude_deg: 20 }], 0, 20);
    expect(shaded([{ azimuth_deg: 89, altitude_deg: 20 }, { azimuth_deg: 270, altitude_deg: 20 }], 180, 1)).toBe(false);
  });

  it('bearings of any turn, and the last bearing of the circle', () => {
    for (const turn of [-720, -360, 360]) edge([{ azimuth_deg: 90 + turn, altitude_deg: 10 }, { azimuth_deg: 110 + turn, altitude_deg: 30 }], 100, 20);
    edge([{ azimuth_deg: 350, altitude_deg: 10 }, { azimuth_deg: 359.5, altitude_deg: 30 }], 359.4, 10 + (20 * 9.4) / 9.5);
    edge([{ azimuth_deg: 355, altitude_deg: 10 }, { azimuth_deg: 5, altitude_deg: 20 }], 359.9, 14.9);
  });
});

it('the year refuses a tilt that is none, and takes the whole turn of one', () => {
  const sun = sunYear({ latitude_deg: 33.45, longitude_deg: -112, timeZone_h: -7 });
  for (const tilt_deg of [-1, 181, Number.NaN]) expect(() => shadeOnFacade(sun, { azimuth_deg: 180, tilt_deg }, bare)).toThrow(RangeError);
  expect(shadeOnFacade(sun, { azimuth_deg: 180, tilt_deg: 180 }, bare)).toMatchObject({ skyView: 0 });
});

it('a share that cannot pass is refused though the tree’s bare share can', () => {
  for (const passes of [-0.1, 1.1]) expect(() => sunlitShare({ azimuth_deg: 180, tilt_deg: 90, leaf: 1, sunAltitude_deg: 45, sunAzimuth_deg: 180, geometry: { ...bare, ...round(10, passes, 0.5) } })).toThrow('passes');
});
