import { Piscina } from 'piscina';
import type { SelectionResult } from '#calc';
import type { Workers } from '#planning';
import { proveChoice } from './prove.js';
import type { SelectAsk } from './select.worker.js';
import { threadFile } from './thread-file.js';

/** Makes choices in a thread of its own; a proof shares its seconds out over the rounds of one plan. */
export function chooser(): { readonly choose: Workers['choose']; readonly end: () => Promise<void> } {
  let thread: Piscina | undefined;
  let proveEnds: number | undefined;
  const ended = new AbortController();
  const now_s = (): number => performance.now() / 1000;
  return {
    choose: async (problem, how) => {
      if (ended.signal.aborted) throw new Error('the threads of this plan were ended');
      if (how?.prove !== undefined) {
        proveEnds ??= now_s() + how.prove.seconds;
        // Rounds still to come keep a share of the time; what a proof leaves goes to them.
        const seconds = Math.max(1, (proveEnds - now_s()) / how.prove.roundsLeft);
        return proveChoice(problem, { seconds, signal: ended.signal, ...(how.better === undefined ? {} : { better: how.better }) });
      }
      thread ??= new Piscina({ ...threadFile('select'), minThreads: 1, maxThreads: 1 });
      const ask: SelectAsk = { problem, ...(how?.work_s === undefined ? {} : { work_s: how.work_s }) };
      return (await thread.run(ask)) as SelectionResult;
    },
    end: async () => {
      ended.abort();
      await thread?.destroy();
    },
  };
}
