import { workerData } from 'node:worker_threads';
import { drawnDwelling, type DrawnDwelling, type DrawnTask, dwellingEnergy, type DwellingEnergy, dwellingOptions, type DwellingResult, type DwellingTask, type EnergyBench, energyBench, type EnergyTask, type MeterLoadTask, meterLoad_kWh, optionBench, optionUse, type OptionUseTask, type SpanUse, type OptionBench, type OptionRoom } from '#planning';

/** What the pool asks of a thread. */
export type Ask = { readonly kind: 'options'; readonly tasks: readonly DwellingTask[] } | { readonly kind: 'loads'; readonly tasks: readonly MeterLoadTask[] } | { readonly kind: 'energies'; readonly tasks: readonly EnergyTask[] } | { readonly kind: 'uses'; readonly tasks: readonly OptionUseTask[] } | { readonly kind: 'draws'; readonly tasks: readonly DrawnTask[] };
export type Answer = readonly DwellingResult[] | readonly Float64Array[] | readonly DrawnDwelling[] | readonly (readonly SpanUse[])[] | readonly DwellingEnergy[];

let bench: OptionBench | undefined;
let close: EnergyBench | undefined;

/** Works a batch in this thread; the room came with the thread, and the gains it works out stay for the next batch. */
export default function work(ask: Ask): Answer {
  bench ??= optionBench(workerData as OptionRoom);
  const at = bench;
  if (ask.kind === 'energies') {
    const benches = (close ??= energyBench(at));
    return ask.tasks.map((task) => dwellingEnergy(task, benches));
  }
  if (ask.kind === 'uses') return ask.tasks.map((task) => optionUse(task, at));
  if (ask.kind === 'draws') return ask.tasks.map((task) => drawnDwelling(task, at));
  return ask.kind === 'options' ? ask.tasks.map((task) => dwellingOptions(task, at)) : ask.tasks.map(({ task, set }) => meterLoad_kWh(task, at, set));
}
