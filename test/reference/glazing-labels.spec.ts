import { simpleInwardFraction, simpleSolarHeatGainAt } from '#calc';
import { glassHandbook, opticsOfLabel } from './checks/glass-handbook.js';
import { hold } from './checks/hold.js';
import { handbookAngles_deg, handbookGains, usualU_W_m2K } from './glazing-handbook.js';

glassHandbook.filter(({ table }) => table.of === 'calc/glass/labelled-glazing').forEach(hold);

describe('windows known by their label alone', () => {
  // Labels carry no optics, so rows with SHGC alone have no pass line; both routes are measured over all 56 rows.
  it('builds make-ups that follow the handbook rows closer at their worst than the published simple form does', () => {
    const worst = { simple: 0, makeUp: 0 };
    for (const { given, expect: theirs } of handbookGains.rows) {
      const label = { solarHeatGain: theirs.solarHeatGain[0], uFactor_W_m2K: usualU_W_m2K(given.family) };
      const made = opticsOfLabel(given, label.solarHeatGain);
      expect(made.solarHeatGain).toBeCloseTo(label.solarHeatGain, 3);
      handbookAngles_deg.forEach((angle, i) => {
        const table = theirs.solarHeatGain[i]!;
        worst.simple = Math.max(worst.simple, Math.abs(simpleSolarHeatGainAt(label.solarHeatGain, label.uFactor_W_m2K, angle) - table));
        worst.makeUp = Math.max(worst.makeUp, Math.abs(made.solarHeatGainAt(angle) - table));
      });
    }
    expect(worst.makeUp).toBeLessThan(worst.simple);
  });

  it('finds the inward share of single clear near that of its surface films', () => {
    expect(Math.abs(simpleInwardFraction(0.86, 5.9) - 0.29)).toBeLessThan(0.02);
  });
});
