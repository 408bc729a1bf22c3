import { availableParallelism } from 'node:os';
import { Piscina } from 'piscina';
import type { DrawnDwelling, DrawnTask, DwellingEnergy, DwellingResult, DwellingTask, EnergyTask, MeterLoadTask, OptionRoom, OptionUseTask, SpanUse, Workers } from '#planning';
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

function batches<T>(tasks: readonly T[], size: number): T[][] {
  return Array.from({ length: Math.ceil(tasks.length / size) }, (_, i) => tasks.slice(i * size, (i + 1) * size));
}

/**
 * A pool of threads for the heavy work. Answers come back in the order of the tasks, so the result is that of one thread.
 *
 * @param threads as many as there are processors by default
 */
export function workerPool(threads = availableParallelism()): WorkerPool {
  let options: { readonly room: OptionRoom; readonly pool: Piscina } | undefined;
  let ended = false;
  const choosing = chooser();
  const optionPool = async (room: OptionRoom): Promise<Piscina> => {
    if (ended) throw new Error('the threads of this plan were ended');
    if (options?.room !== room) {
      await options?.pool.destroy();
      options = { room, pool: new Piscina({ ...threadFile('options'), minThreads: threads, maxThreads: threads, workerData: sharedRoom(room) }) };
    }
    return options.pool;
  };
  const run = async (pool: Piscina, ask: Ask): Promise<Answer> => (await pool.run(ask)) as Answer;
  /** Batches of tasks over the threads, answers in the order of the tasks. */
  const inBatches = async <T, R>(tasks: readonly T[], of: { readonly room: OptionRoom; readonly size: number; readonly ask: (batch: readonly T[]) => Ask; readonly said?: (done: number) => void }): Promise<R[]> => {
    const pool = await optionPool(of.room);
    let done = 0;
    const answers = await Promise.all(
      batches(tasks, of.size).map(async (batch) => {
        const answer = (await run(pool, of.ask(batch))) as unknown as readonly R[];
        of.said?.((done += batch.length));
        return answer;
      }),
    );
    return answers.flat();
  };
  return {
    dwellingOptions: (tasks, room, progress) => inBatches<DwellingTask, DwellingResult>(tasks, { room, size: BATCH, ask: (batch) => ({ kind: 'options', tasks: batch }), said: (done) => progress?.('dwellings', done, tasks.length) }),
    meterLoads: (tasks, room) => inBatches<MeterLoadTask, Float64Array>(tasks, { room, size: BATCH, ask: (batch) => ({ kind: 'loads', tasks: batch }) }),
    drawnDwellings: (tasks, room, progress) => inBatches<DrawnTask, DrawnDwelling>(tasks, { room, size: 1, ask: (batch) => ({ kind: 'draws', tasks: batch }), said: (done) => progress?.('draws of dwellings', done, tasks.length) }),
    dwellingEnergies: (tasks, room) => inBatches<EnergyTask, DwellingEnergy>(tasks, { room, size: BATCH, ask: (batch) => ({ kind: 'energies', tasks: batch }) }),
    optionUses: (tasks, room) => inBatches<OptionUseTask, readonly SpanUse[]>(tasks, { room, size: BATCH, ask: (batch) => ({ kind: 'uses', tasks: batch }) }),
    choose: choosing.choose,
    end: async () => {
      ended = true;
      await Promise.all([options?.pool.destroy(), choosing.end()]);
    },
  };
}
