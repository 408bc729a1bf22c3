import type { FilmChoices } from '../options/film-choices.js';
import type { FilmOption } from '../options/option.js';
import { setOfOption, type ValuedOptions } from '../options/valued-options.js';
import type { Progress, Workers } from '../workers.js';
import type { DrawOrder, Founded } from './draw-book.js';
import { type DrawnSavings, drawnSavings } from './drawn-option.js';
import { worthDrawing } from './worth-drawing.js';

/** How far the figures of films and glazings are to be trusted. */
export const founded = (choices: FilmChoices): Founded => ({
  films: choices.films.map(({ film }) => ({ id: film.id, basis: film.basis })),
  glazings: [...choices.glazings].map(([id, glazing]) => ({ id, basis: glazing.unknown ? ('assumed' as const) : ('published' as const) })),
});

/** Savings of all options some draw may choose, and of those that are taken, in order of their ids. */
export async function drawnOptions(
  valued: ValuedOptions,
  of: { readonly choices: FilmChoices; readonly order: DrawOrder; readonly taken: ReadonlySet<string>; readonly valueOf: (option: FilmOption) => number; readonly work: Workers; readonly progress?: Progress | undefined },
): Promise<DrawnSavings[]> {
  const byDwelling = worthDrawing(valued.options, of).filter((options) => options.length > 0);
  const taskOf = new Map(valued.tasks.map((t) => [t.dwelling.id, t]));
  const tasks = byDwelling.map((options) => ({ task: taskOf.get(options[0]!.dwelling)!, sets: options.map((o) => setOfOption(o, of.choices)), order: of.order }));
  const results = await of.work.drawnDwellings(tasks, of.choices.room, of.progress);
  return results.flatMap((result, i) => drawnSavings(byDwelling[i]!, result, of.order.draws));
}
