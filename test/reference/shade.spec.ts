import { sunlitShare } from '#calc';
import { sunlitShares } from './shade-sunlit.js';

it.each(sunlitShares.rows.map((row) => [row.place, row] as const))('sunlit share %s', (_place, { given, expect: want }) => {
  const { sunAltitude_deg, sunAzimuth_deg, azimuth_deg, ...lengths } = given;
  const got = sunlitShare({ sunAltitude_deg, sunAzimuth_deg, azimuth_deg, tilt_deg: 90, leaf: 1, geometry: { ...lengths, reveal_m: 0, horizon: [] } });
  expect(Math.abs(got.sunlit - want.sunlit)).toBeLessThanOrEqual(sunlitShares.tolerance.abs ?? 0);
  if (want.profile_deg === null) expect(got.profile_deg).toBeNull();
  else expect(Math.abs((got.profile_deg ?? NaN) - want.profile_deg)).toBeLessThanOrEqual(0.002);
});
