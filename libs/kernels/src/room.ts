import { type Catalogue, openCatalogue } from '#catalogue';
import { weatherOf } from '#weather';
import type { KernelRoom } from './kernel.js';

/** The room kernels run in: the built-in data, opened at first use, and weather read from the machine. */
export function kernelRoom(): KernelRoom {
  let opened: Catalogue | undefined;
  const catalogue = (): Catalogue => (opened ??= openCatalogue());
  return { catalogue, weather: (of) => weatherOf(of, catalogue()) };
}
