import type { Building, Phase, PlanSettings } from '#calc';
import { openCatalogue } from '#catalogue';
import { type CrewTimeRequest, withCrewTime } from './crew-time.js';
import { defaultsOf } from './plan-job.js';

const phase = (ownerEntity: string, cap_cents: number, change: Partial<Phase> = {}): Phase => ({ id: `${ownerEntity}/1`, ownerEntity, name: '1', firstDay: '2026-07-01', lastDay: '2026-07-31', cap_cents, crewMinutes: null, ...change });
const building = (ownerEntity: string, change: Partial<Building> = {}): Building => ({ id: `B${ownerEntity}`, ownerEntity, crew: null, ...change }) as Building;
const asked = (change: Partial<CrewTimeRequest> & { readonly settings?: PlanSettings } = {}, buildings: readonly Building[] = [building('A'), building('B')]): CrewTimeRequest => ({
  settings: { crews: 1, crewSize: 2, crewDays_wk: 3, crewHours_day: 8, noWork: [] } as unknown as PlanSettings,
  buildings: new Map(buildings.map((b) => [b.id, b])), films: [{ side: 'room' }], madeOn: '2026-01-01', kept_min: new Map(), visit: () => ({ minutes: 60 }), notice_h: () => 24, defaultOf: defaultsOf(openCatalogue()), ...change,
});
const given = asked().settings;
const minutesOf = (phases: readonly Phase[], of: CrewTimeRequest) => withCrewTime(phases, of).phases.map((p) => p.crewMinutes);

// July 2026 begins on a Wednesday: Mondays, Wednesdays and Fridays of it are 4 + 5 + 5 = 14. A day gives 2 × 8 h − 1 h = 900 minutes, one visit in ten comes on top: 14 × 900 / 1.1 = 11,454.5.
describe('minutes the crew can give a year', () => {
  it('follow from days a week, hours a day, loading, keys and doors that stay shut', () => {
    expect(minutesOf([phase('A', 100)], asked())).toEqual([11_454]);
    expect(withCrewTime([phase('A', 100)], asked()).assumed[0]).toMatchObject({ subject: 'A/1', unit: 'person-minutes', basis: 'assumed', value: '11454' });
    expect(withCrewTime([phase('A', 100)], asked()).assumed[0]!.source).toContain('14 working days to come × (2 persons × 8 h − 60 min');
  });

  it('leave out days that are over or blocked; a block of outdoor work holds where all film goes outside', () => {
    expect(minutesOf([phase('A', 100)], asked({ madeOn: '2026-07-14' }))).toEqual([Math.floor((8 * 900) / 1.1)]); // from the 15th
    const noWork = [{ firstDay: '2026-07-01', lastDay: '2026-07-12', reason: 'no exterior access' }]; // five of the days
    expect(minutesOf([phase('A', 100)], asked({ settings: { ...given, noWork } }))).toEqual([11_454]);
    expect(minutesOf([phase('A', 100)], asked({ settings: { ...given, noWork }, films: [{ side: 'outdoor' }] }))).toEqual([Math.floor((9 * 900) / 1.1)]);
  });

  it('are shared by owners whose years run together, by their caps', () => {
    expect(minutesOf([phase('A', 300), phase('B', 100)], asked())).toEqual([Math.floor(11_454.545 * 0.75), Math.floor(11_454.545 * 0.25)]);
    // A contractor's buildings take nothing of the own crew.
    expect(minutesOf([phase('A', 300), phase('B', 100)], asked({}, [building('A'), building('B', { crew: 'contractor' })]))).toEqual([11_454, null]);
  });

  it('stay as stated, and open where the plan file does not give days and hours', () => {
    expect(minutesOf([phase('A', 100, { crewMinutes: 5 })], asked())).toEqual([5]);
    expect(minutesOf([phase('A', 100)], asked({ settings: { ...given, crewHours_day: null } }))).toEqual([null]);
    expect(minutesOf([phase('A', 100)], asked({ settings: { ...given, crewDays_wk: null } }))).toEqual([null]);
  });

  it('are less what panes to be done again take', () => {
    expect(minutesOf([phase('A', 100)], asked({ kept_min: new Map([['A/1', 454]]) }))).toEqual([11_000]);
  });
});
