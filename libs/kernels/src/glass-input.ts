import { gapResistance_m2K_W, PLAIN_EMISSIVITY, PLAIN_GAP, sheetOf, type FilmOnClear, type Gap, type GlazingMakeUp } from '#calc';
import { z } from 'zod';
import { InputFault, type KernelRoom } from './kernel.js';

const share = z.number().min(0).max(1);

/** A pane as kernels take it; what is not given is that of plain 3 mm glass. */
export const paneInput = z.strictObject({
  solarTransmittance: share,
  frontReflectance: share,
  backReflectance: share,
  emissivityFront: share.default(PLAIN_EMISSIVITY),
  emissivityBack: share.default(PLAIN_EMISSIVITY),
  thickness_mm: z.number().positive().default(3),
  coated: z.boolean().optional().describe('angles follow the fitted curves of coated glass; told by the figures when absent'),
});

/** A gap as kernels take it: its resistance, or width and gas. */
export const gapInput = z.union([
  z.strictObject({ resistance_m2K_W: z.number().positive() }),
  z.strictObject({ width_mm: z.number().positive(), gas: z.enum(['air', 'argon']).default('air') }),
]);

/** A glazing as kernels take it: a KEY, or panes with gaps. */
export const glazingFields = {
  panes: z.array(paneInput).min(1).optional().describe('outdoors first'),
  glazing: z.string().optional().describe('KEY of the built-in table, instead of panes'),
  gaps: z.array(gapInput).optional().describe('one fewer than panes; 0.17 m²K/W each when absent'),
};

/** A film as kernels take it: a KEY, or its sheet on 3 mm clear. */
export const filmInput = z.union([
  z.string(),
  z.strictObject({
    solarTransmittance: share,
    frontReflectance: share.describe('seen through the glass'),
    backReflectance: share.describe('seen from the film side'),
    roomEmissivity: share.default(PLAIN_EMISSIVITY),
    side: z.enum(['room', 'outdoor']).default('room'),
  }),
]);

interface GivenGlazing {
  readonly panes?: readonly z.infer<typeof paneInput>[] | undefined;
  readonly glazing?: string | undefined;
  readonly gaps?: readonly z.infer<typeof gapInput>[] | undefined;
}

/** A make-up with what the rule table asks of it. */
export interface ReadGlazing {
  readonly makeUp: GlazingMakeUp;
  readonly tinted: boolean;
  readonly lowE: boolean;
}

/** Plain glass passes less than this only when it is tinted, and emits less than this only when it is coated. */
const TINTED_BELOW = 0.72;
const COATED_BELOW = 0.75;

/** Reads panes and gaps, or the KEY of the built-in table; null when neither is there. */
export function readGlazing(given: GivenGlazing, room: KernelRoom): ReadGlazing | null {
  if (given.glazing !== undefined && given.panes !== undefined) throw new InputFault('/glazing', 'glazing and panes exclude each other');
  if (given.glazing !== undefined) {
    const { glazing } = room.catalogue();
    const found = glazing.find(given.glazing);
    if (found === null) throw new InputFault('/glazing', `glazing must be one of ${glazing.list().map((row) => row.key).join(', ')}, got ${given.glazing}`);
    return found;
  }
  if (given.panes === undefined) return null;
  const { panes } = given;
  const gapAt = (k: number): Gap => {
    const gap = given.gaps?.[k];
    if (gap === undefined) return PLAIN_GAP;
    if ('resistance_m2K_W' in gap) return gap;
    const emissivities = [panes[k]?.emissivityBack ?? PLAIN_EMISSIVITY, panes[k + 1]?.emissivityFront ?? PLAIN_EMISSIVITY] as const;
    return { resistance_m2K_W: gapResistance_m2K_W({ ...gap, emissivities }) };
  };
  if (given.gaps !== undefined && given.gaps.length !== panes.length - 1) throw new InputFault('/gaps', `gaps must be one fewer than panes (${String(panes.length)}), got ${String(given.gaps.length)}`);
  const lowE = panes.some((pane) => Math.min(pane.emissivityFront, pane.emissivityBack) < COATED_BELOW);
  return {
    makeUp: { key: 'as given', panes: panes.map(({ coated, ...pane }) => (coated === undefined ? pane : { ...pane, coated })), gaps: panes.slice(1).map((_, k) => gapAt(k)) },
    tinted: !lowE && panes.some((pane) => pane.solarTransmittance < TINTED_BELOW),
    lowE,
  };
}

/** As `readGlazing`, for kernels that cannot work without one. */
export function neededGlazing(given: GivenGlazing, room: KernelRoom): ReadGlazing {
  const found = readGlazing(given, room);
  if (found === null) throw new InputFault('/panes', 'panes or glazing is needed');
  return found;
}

/** Reads a film's sheet, or the KEY of the built-in classes. */
export function readFilm(given: z.infer<typeof filmInput> | undefined, room: KernelRoom): FilmOnClear | null {
  if (given === undefined) return null;
  if (typeof given !== 'string') return given;
  const { films } = room.catalogue();
  const found = films.find(given);
  if (found === null) throw new InputFault('/film', `film must be one of ${films.list().map((film) => film.id).join(', ')}, got ${given}`);
  return sheetOf(found);
}
