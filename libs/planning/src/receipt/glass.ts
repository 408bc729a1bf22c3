import { type FilmOnClear, type GlazingMakeUp, glazingOptics, survivingCut } from '#calc';
import type { OptionGlass } from '../energy/energy-types.js';
import { filmOnSide } from '../dwelling/dwelling-task.js';
import { setOfOption } from '../options/valued-options.js';
import type { Plan } from '../plan/plan.js';
import type { Figure, ReceiptAt } from './figure.js';
import { part, worded } from './figure.js';
import { digits } from './receipt-numbers.js';
import { type Receipt, workedOut } from './receipt.js';
import type { SurveyAgain } from './survey-again.js';
import { filmRow, windowRows } from './survey-rows.js';

interface GlassFigure extends Pick<Figure, 'id' | 'title'> {
  readonly glass: OptionGlass;
  readonly field: 'shgc' | 'cut';
}

/** A make-up as the kernel takes it. */
const kernelGlass = ({ panes, gaps }: GlazingMakeUp): object => ({ panes, gaps });

/** The sheet as the kernel takes it, and nothing else of the film. */
const kernelFilm = ({ solarTransmittance, frontReflectance, backReflectance, roomEmissivity, side }: FilmOnClear): FilmOnClear => ({ solarTransmittance, frontReflectance, backReflectance, roomEmissivity, side });

/** The glass and the film of an option as they are used: from the catalogue, a label, or readings on site. */
async function onGlass(glass: OptionGlass, plan: Plan, survey: SurveyAgain): Promise<{ readonly makeUp: GlazingMakeUp; readonly sheet: FilmOnClear } | null> {
  const line = plan.lines.find((l) => l.option.id === glass.option);
  const known = survey.known.dwellings.find((d) => d.id === line?.dwelling);
  if (line === undefined || known === undefined) return null;
  const task = (await survey.tasksOn(known.meter.id, 'as found')).find((t) => t.dwelling.id === known.id)!;
  const set = setOfOption(line.option, survey.choices);
  for (const panel of task.panels) {
    const film = filmOnSide(set, panel.azimuth_deg);
    const seen = panel.measuredAt === null ? undefined : survey.choices.measured.glass.get(panel.measuredAt);
    if (film === undefined || survey.choices.films[film]?.film.id !== glass.film || (seen !== undefined) !== glass.isMeasured) continue;
    const booked = survey.choices.glazings.get(panel.glazing);
    if (booked?.name !== glass.glazing) continue;
    return { makeUp: seen?.makeUp ?? booked.makeUp, sheet: seen?.films.get(film)?.sheet ?? survey.choices.room.films[film]!.sheet };
  }
  return null;
}

async function glassReceipt(of: GlassFigure, at: ReceiptAt): Promise<Receipt> {
  const { glass } = of;
  const { plan } = at;
  const found = await onGlass(glass, plan, await at.survey());
  const bare = found === null ? null : glazingOptics(found.makeUp, null).solarHeatGainAt(0);
  const filmed = found === null ? null : glazingOptics(found.makeUp, found.sheet).solarHeatGainAt(0);
  const cut = found === null ? null : survivingCut(found.makeUp, found.sheet).cut;
  const line = plan.lines.find((l) => l.option.id === glass.option);
  const isCut = of.field === 'cut';
  const worked = isCut ? cut : filmed;
  const steps = bare === null || filmed === null || cut === null ? [] : [
    { label: 'bare', substituted: `SHGC at normal incidence = ${digits(bare, 6)}`, value: bare, unit: 'share' },
    { label: 'with the film', substituted: `SHGC at normal incidence = ${digits(filmed, 6)}`, value: filmed, unit: 'share' },
    { label: 'cut', substituted: `1 − ${digits(filmed, 6)} ÷ ${digits(bare, 6)} = ${digits(cut, 6)}`, value: cut, unit: 'share' },
  ];
  return {
    figure: of.id,
    title: of.title,
    value: isCut ? glass.cut : (filmed ?? 'not worked'),
    unit: 'share',
    formula: isCut ? 'cut = 1 − SHGC with film ÷ SHGC bare, both at normal incidence on this glass' : 'SHGC = transmitted + inward part of what each layer takes up; panes stacked by the layer recursion, the film taken off its 3 mm sheet glass and put on this one',
    steps,
    rows: [...windowRows(line?.windows.filter((w) => w.film === glass.film) ?? [], ['glazing', 'label_shgc', 'label_u']), ...filmRow(plan, glass.film, ['solar_transmittance', 'solar_reflectance_outside', 'solar_reflectance_inside', 'room_emissivity', 'side'])],
    assumptions: glass.assumed === null ? [] : [{ name: 'make-up of the glass', value: glass.assumed, unit: '', source: 'made to fit the label', basis: 'assumed' }],
    compute: found === null ? null : { kernel: 'glazing', input: { ...kernelGlass(found.makeUp), film: kernelFilm(found.sheet), incidence_deg: [0] }, result: [{ pointer: isCut ? '/filmBenefit/cut' : '/solarHeatGain/0', times: 1 }], words: isCut ? 'filmBenefit.cut' : 'solarHeatGain of 0°' },
    computeWhy: found === null ? 'the survey kept now has no such glass in this dwelling any more' : glass.isMeasured ? 'glass and film as readings on site have moved them' : null,
    worked: workedOut(isCut ? glass.cut : (filmed ?? 'not worked'), worked ?? 'not worked', 'the survey or the film was changed since the plan was made'),
    see: [],
  };
}

/** SHGC and cut of each film on each glass of the plan's lines, once. */
export function glassFigures(plan: Plan): Figure[] {
  const lineOf = new Map(plan.lines.map((l) => [l.option.id, l]));
  const seen = new Map<string, OptionGlass>();
  return plan.energy.glass.filter((g) => lineOf.has(g.option)).flatMap((glass): Figure[] => {
    const place = `glass/${worded(glass.glazing)}/${part(glass.film)}`;
    const first = seen.get(place);
    if (first?.cut === glass.cut) return [];
    // A label or a reading may give glass of one name other figures in another dwelling.
    const base = first === undefined ? place : `${place}/${lineOf.get(glass.option)!.dwelling}`;
    if (first === undefined) seen.set(place, glass);
    const figure = (field: GlassFigure['field'], title: string): Figure => {
      const about = { id: `${base}/${field}`, title: `${title} of film ${glass.film} on ${glass.glazing}` };
      return { ...about, receipt: (at) => glassReceipt({ ...about, glass, field }, at) };
    };
    return [figure('shgc', 'SHGC'), figure('cut', 'Cut of the heat gain')];
  });
}
