import { kernel as cut } from './cut.js';
import { kernel as coolingPlant } from './cooling-plant.js';
import { kernel as dwellingYear } from './dwelling-year.js';
import type { Kernel } from './kernel.js';

/** Every kernel by name, in flow order. */
export const allKernels: readonly Kernel[] = [
  dwellingYear,
  coolingPlant,
  cut,
];
