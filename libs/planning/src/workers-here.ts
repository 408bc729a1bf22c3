import { select } from '#calc';
import { dwellingOptions, meterLoad_kWh } from './dwelling/dwelling-options.js';
import { optionBench } from './dwelling/dwelling-run.js';
import { dwellingEnergy, energyBench } from './energy/dwelling-energy.js';
import { optionUse } from './dwelling/option-use.js';
import { drawnDwelling } from './uncertainty/drawn-dwelling.js';
import type { Workers } from './workers.js';

/** All work in this thread: for tests and for machines where threads are not wanted. */
export const workersHere: Workers = {
  dwellingOptions: (tasks, room, progress) => {
    const bench = optionBench(room);
    return Promise.resolve(
      tasks.map((task, i) => {
        const result = dwellingOptions(task, bench);
        progress?.('dwellings', i + 1, tasks.length);
        return result;
      }),
    );
  },
  meterLoads: (tasks, room) => {
    const bench = optionBench(room);
    return Promise.resolve(tasks.map(({ task, set }) => meterLoad_kWh(task, bench, set)));
  },
  drawnDwellings: (tasks, room) => {
    const bench = optionBench(room);
    return Promise.resolve(tasks.map((task) => drawnDwelling(task, bench)));
  },
  dwellingEnergies: (tasks, room) => {
    const bench = energyBench(optionBench(room));
    return Promise.resolve(tasks.map((task) => dwellingEnergy(task, bench)));
  },
  optionUses: (tasks, room) => {
    const bench = optionBench(room);
    return Promise.resolve(tasks.map((task) => optionUse(task, bench)));
  },
  choose: (problem, how) => Promise.resolve(select(problem, how?.work_s === undefined ? {} : { work_s: how.work_s })),
};
