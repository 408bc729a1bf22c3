import { kernel as cut } from './cut.js';
import type { Kernel } from './kernel.js';

/** Every kernel by name, in flow order. */
export const allKernels: readonly Kernel[] = [
  cut,
];
