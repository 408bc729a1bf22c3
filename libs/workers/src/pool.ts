import { availableParallelism } from 'node:os';
import { Piscina } from 'piscina';
import type { DrawnDwelling, DrawnTask, DwellingEnergy, DwellingResult, DwellingTask, MeterLoadTask, OptionRoom, OptionUseTask, SpanUse, Workers } from '#planning';
import { chooser } from './chooser.js';
import type { Answer, Ask } from './options.worker.js';
import { sharedRoom } from './shared-room.js';
import { threadFile } from './thread-file.js';

/** Workers on threads; ended when the plan is made. */
export interface WorkerPool extends Workers {
  readonly end: () => Promise<void>;
}

/** Tasks handed over at once: enough to be worth the trip, few enough to show progress and to share the work evenly. */
const BATCH = 8;

function batches<T>(tasks: readonly T[]): T[][] {
  return Array.from({ length: Math.ceil(tasks.length / BATCH) }, (_, i) => tasks.slice(i * BATCH, (i + 1) * BATCH));
}

/**
 * A pool of threads for the heavy work. Answers come back in the order of the tasks, so the result is that of one thread.
 *
 * @param threads as many as there are processors by default
 */
export function workerPool(threads = availableParallelism()): WorkerPool {
  let options: { readonly room: OptionRoom; readonly pool: Piscina } | undefined;
  const choosing = chooser();
  const optionPool = async (room: OptionRoom): Promise<Piscina> => {
    if (options?.room !== room) {
      await options?.pool.destroy();
      options = { room, pool: new Piscina({ ...threadFile('options'), minThreads: threads, maxThreads: threads, workerData: sharedRoom(room) }) };
    }
    return options.pool;
  };
  const run = async (pool: Piscina, ask: Ask): Promise<Answer> => (await pool.run(ask)) as Answer;
  return {
    dwellingOptions: async (tasks: readonly DwellingTask[], room, progress) => {
      const pool = await optionPool(room);
      let done = 0;
      const answers = await Promise.all(
        batches(tasks).map(async (batch) => {
          const answer = (await run(pool, { kind: 'options', tasks: batch })) as readonly DwellingResult[];
          done += batch.length;
          progress?.('dwellings', done, tasks.length);
          return answer;
        }),
      );
      return answers.flat();
    },
    meterLoads: async (tasks: readonly MeterLoadTask[], room) => {
      const pool = await optionPool(room);
      const answers = await Promise.all(batches(tasks).map(async (batch) => (await run(pool, { kind: 'loads', tasks: batch })) as readonly Float64Array[]));
      return answers.flat();
    },
    drawnDwellings: async (tasks: readonly DrawnTask[], room, progress) => {
      const pool = await optionPool(room);
      let done = 0;
      return Promise.all(
        tasks.map(async (task) => {
          const [drawn] = (await run(pool, { kind: 'draws', tasks: [task] })) as readonly DrawnDwelling[];
          progress?.('draws of dwellings', ++done, tasks.length);
          return drawn!;
        }),
      );
    },
    dwellingEnergies: async (tasks, room) => {
      const pool = await optionPool(room);
      const answers = await Promise.all(batches(tasks).map(async (batch) => (await run(pool, { kind: 'energies', tasks: batch })) as readonly DwellingEnergy[]));
      return answers.flat();
    },
    optionUses: async (tasks: readonly OptionUseTask[], room) => {
      const pool = await optionPool(room);
      const answers = await Promise.all(batches(tasks).map(async (batch) => (await run(pool, { kind: 'uses', tasks: batch })) as readonly (readonly SpanUse[])[]));
      return answers.flat();
    },
    choose: choosing.choose,
    end: async () => {
      await Promise.all([options?.pool.destroy(), choosing.end()]);
    },
  };
}
