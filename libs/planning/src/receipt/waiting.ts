import type { FilmOption } from '../options/option.js';
import { grouped, sortedBy } from '../grouped.js';
import { valueSoon } from '../plan/plan-of.js';
import type { Plan, WaitingItem } from '../plan/plan.js';
import { waitingItems } from '../review/waiting.js';
import { termsUsed } from './assumptions-of.js';
import { type Figure, type ReceiptAt, worded } from './figure.js';
import { dollars } from './receipt-numbers.js';
import { type Receipt, type ReceiptStep, workedOut } from './receipt.js';
import type { SurveyAgain } from './survey-again.js';
import { buildingRow } from './survey-rows.js';

type Asked = 'value' | 'cost' | 'cooling-cut';

const ASKED: Readonly<Record<Asked, { readonly of: keyof WaitingItem; readonly title: string; readonly formula: string }>> = {
  value: { of: 'value_cents', title: 'Value', formula: 'value behind a letter = Σ dwellings of max(0, best option that waits for it − best option that need not wait), net present in the plan’s view in the earliest phase, rounded; an option that waits for two letters stands behind both, so letters are not to be added up' },
  cost: { of: 'cost_cents', title: 'Installed cost', formula: 'cost behind a letter = Σ installed cost of the best waiting option of each dwelling, rounded' },
  'cooling-cut': { of: 'yearlyCooling_cents', title: 'Yearly cooling cost cut', formula: 'cooling cut behind a letter = Σ mean yearly cooling cut of the best waiting option of each dwelling, rounded' },
};

interface Behind {
  readonly steps: ReceiptStep[];
  readonly stated: number | null;
}

const best = (options: readonly FilmOption[], survey: SurveyAgain): { readonly option: FilmOption; readonly value: number } | undefined =>
  sortedBy(options.map((option) => ({ option, value: valueSoon(option, survey) })), (o) => o.option.id).sort((a, b) => b.value - a.value)[0];

/** Dwellings behind the letter by their best waiting option. */
function behind(item: WaitingItem, of: { readonly options: readonly FilmOption[]; readonly survey: SurveyAgain; readonly asked: Asked }): Behind {
  const { survey, asked } = of;
  const found = waitingItems(of.options, (o) => valueSoon(o, survey)).find((i) => i.subject === item.subject);
  const steps = [...grouped(of.options, (o) => o.dwelling)].flatMap(([dwelling, own]): ReceiptStep[] => {
    const waits = best(own.filter((o) => o.waitsFor.length > 0), survey);
    if (waits?.option.waitsFor.includes(item.subject) !== true) return [];
    const ready = best(own.filter((o) => o.waitsFor.length === 0), survey);
    const than = Math.max(0, ready?.value ?? 0);
    if (asked === 'value') return [{ label: `${dwelling}, ${waits.option.id}`, substituted: `${dollars(waits.value)} − ${dollars(than)}${than > 0 ? ` of ${ready!.option.id}` : ''} = ${dollars(Math.max(0, waits.value - than))}`, value: Math.max(0, waits.value - than), unit: 'cents' }];
    const value = asked === 'cost' ? waits.option.cost.total_cents : waits.option.yearlyCooling_cents;
    return [{ label: `${dwelling}, ${waits.option.id}`, substituted: dollars(value), value, unit: 'cents' }];
  });
  return { steps, stated: found === undefined ? null : Number(found[ASKED[asked].of]) };
}

async function waitingReceipt(item: WaitingItem, at: ReceiptAt, of: Pick<Figure, 'id' | 'title'> & { readonly asked: Asked }): Promise<Receipt> {
  const { plan } = at;
  const survey = await at.survey();
  const dwellings = new Set(survey.known.dwellings.filter((d) => d.building === item.building).map((d) => d.id));
  const stated = Number(item[ASKED[of.asked].of]);
  let last: Behind = { steps: [], stated: null };
  // A meter valued again after the choice counts its neighbours as planned; one that was not counts them as found.
  for (const neighbours of ['as found', 'as planned'] as const) {
    last = behind(item, { options: await survey.optionsOf(dwellings, neighbours), survey, asked: of.asked });
    if (last.stated === stated) break;
  }
  const sum = Math.round(last.steps.reduce((total, s) => total + s.value, 0));
  return {
    figure: of.id, title: of.title, value: stated, unit: 'cents', formula: ASKED[of.asked].formula,
    steps: [...last.steps, { label: 'sum', substituted: `${String(last.steps.length)} dwellings, rounded to the cent = ${dollars(sum)}`, value: sum, unit: 'cents' }],
    rows: buildingRow(plan, item.building, ['film_limits', 'approvals', 'owner_entity']), assumptions: termsUsed(plan.terms, ['realDiscountRate', 'realEscalation', 'filmDegradation_1_yr', 'endRemoval_cents_m2']),
    compute: null, computeWhy: 'a sum over options the plan does not keep: they are worked again from the survey; `life-cycle` gives the value of one from its flows',
    worked: workedOut(stated, sum, 'the survey or its consents were changed since the plan was made'), see: (Object.keys(ASKED) as Asked[]).filter((a) => a !== of.asked).map((a) => `waiting/${worded(item.subject)}/${a}`),
  };
}

/** What waits behind each letter. */
export const waitingFigures = (plan: Plan): Figure[] =>
  plan.waiting.flatMap((item) =>
    (Object.keys(ASKED) as Asked[]).map((asked): Figure => {
      const about = { id: `waiting/${worded(item.subject)}/${asked}`, title: `${ASKED[asked].title} behind: ${item.subject}` };
      return { ...about, receipt: (at) => waitingReceipt(item, at, { ...about, asked }) };
    }),
  );
