import { CLEAR_3_MM, paneHeat, paneStress, SUMMER_AFTERNOON } from '#calc';
import { openCatalogue } from '#catalogue';
import { facingWall_W_m2, paneWeathers, siteExtremes } from './site-extremes.js';

const catalogue = openCatalogue();
const { climates } = catalogue;

describe('the weather panes are looked at in', () => {
  it('of a built-in climate has the cold morning of the whole file, not of its typical days', () => {
    const [, , morning] = paneWeathers(climates.year('denver-co'), catalogue);
    const { coldClearMorning } = climates.byKey('denver-co').extremes;
    expect(morning).toMatchObject({ outdoor_degC: coldClearMorning.outdoor_degC, edge_degC: coldClearMorning.outdoor_degC });
    // By hand, 28 January, 8 h: 497 × cos 12.5° + 40/2 + 0.2 × 147/2 = 485.2 + 20 + 14.7.
    expect(morning!.solar_W_m2).toBeCloseTo(519.9, 0);
  });

  it('of a user\'s own year is found in it by the same rule', () => {
    const own = { ...climates.year('denver-co') };
    expect(siteExtremes(own, catalogue)).not.toBe(climates.byKey('denver-co').extremes);
    expect(siteExtremes(own, catalogue).exceeded_0_4.outdoor_degC).toBeGreaterThan(25);
  });

  it('has a summer hour of the place beside that of the ratings', () => {
    const [rating, summer] = paneWeathers(climates.year('phoenix-az'), catalogue);
    expect(rating).toBe(SUMMER_AFTERNOON);
    expect(summer!.outdoor_degC).toBeGreaterThan(38);
    expect(summer!.edge_degC).toBe((summer!.outdoor_degC + summer!.indoor_degC) / 2);
  });

  it('stresses a bare pane most on the cold morning, as the worked cases do', () => {
    const bare = paneHeat({ key: 'x', panes: [CLEAR_3_MM], gaps: [] }, null);
    const [, summer, morning] = paneWeathers(climates.year('chicago-il'), catalogue).map((weather) => paneStress(bare, weather).stress_MPa);
    expect(morning!).toBeGreaterThan(summer!);
  });

  it('gives no sun to a wall at night', () => {
    expect(facingWall_W_m2({ directNormal_W_m2: 10, diffuseHorizontal_W_m2: 10, globalHorizontal_W_m2: 10, sunAltitude_deg: -1 })).toBe(0);
  });
});
