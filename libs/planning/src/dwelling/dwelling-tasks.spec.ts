import type { WindowPanel } from './dwelling-task.js';
import { asFound, dressedWith } from './dwelling-run.js';
import { setsOf } from './dwelling-tasks.js';

type State = WindowPanel['filmable'][number];
const panel = (azimuth_deg: number, filmable: readonly State[]): WindowPanel => ({ azimuth_deg, filmable }) as WindowPanel;
const words = (panels: readonly WindowPanel[], mixed: boolean, films = 2): string[] =>
  setsOf(panels, { films, mixed }).map((s) => s.facades.map((side, i) => `${String(side)}:${'AB'[s.films[i]!]!}`).join(' ') + (s.readyOnly ? ' ready' : ''));

describe('the sets of a dwelling', () => {
  const free = [panel(90, ['ready', 'ready']), panel(270, ['ready', 'ready'])];

  it('have one film each unless films may be mixed', () => {
    expect(words(free, false)).toEqual(['90:A', '270:A', '90:A 270:A', '90:B', '270:B', '90:B 270:B']);
  });

  it('have every other pair of films too where they may', () => {
    expect(words(free, true).filter((w) => !words(free, false).includes(w))).toEqual(['90:A 270:B', '90:B 270:A']);
  });

  it('are mixed up to three sides: two films on three sides in six ways beside the two of one film', () => {
    const three = [90, 180, 270].map((side) => panel(side, ['ready', 'ready']));
    expect(words(three, true).filter((w) => w.split(' ').length === 3)).toHaveLength(8);
    expect(words([...three, panel(0, ['ready', 'ready'])], true)).toHaveLength(30);
  });

  // The film on a side that is done is the dwelling as found: no set names the side, and none takes the film away.
  it('leave out a side that is done, which keeps its film', () => {
    const done = { ...panel(90, ['no', 'no']), oldFilm: true, filmDone: 1, replacementYear: null };
    expect(words([done, panel(270, ['ready', 'no'])], false)).toEqual(['270:A']);
    expect(asFound(done)).toBe(1);
    expect(dressedWith({ facades: [270], films: [0], readyOnly: false }, 2026)(done)).toBe(1);
    expect(asFound({ ...done, filmDone: undefined })).toBe('old film');
  });

  it('put no film on a side that refuses it', () => {
    expect(words([panel(90, ['ready', 'no']), panel(270, ['no', 'ready'])], true)).toEqual(['90:A', '270:B', '90:A 270:B']);
  });

  it('come again without panes that wait, where every side has some that do not', () => {
    const waiting = [panel(90, ['ready']), panel(90, ['waiting']), panel(270, ['waiting'])];
    expect(words(waiting, false, 1)).toEqual(['90:A', '90:A ready', '270:A', '90:A 270:A']);
  });
});
