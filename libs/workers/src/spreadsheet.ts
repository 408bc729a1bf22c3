import { choiceFindings, type ChosenOption, type SelectionGroup, type SelectionProblem } from '#calc';

export type SheetRule = 'largest option, by payback' | 'best option per dollar';

/**
 * What a person does with a spreadsheet: one option a dwelling by a rule, dwellings sorted by payback, down the list into the first year that
 * still holds it; the first dwelling of a building in a year pays the visit.
 *
 * @returns value of that plan, by the same check as every other
 * @throws RangeError where rules a list cannot keep (one film, pairs, musts) are broken
 */
export function spreadsheetValue(problem: SelectionProblem, rule: SheetRule): number {
  const pick = ({ options }: SelectionGroup) => [...options].sort((a, b) => (rule === 'best option per dollar' ? b.value / b.cost_cents - a.value / a.cost_cents : b.value - a.value))[0]!;
  const rows = problem.groups.map((group) => ({ group, option: pick(group) })).sort((a, b) => a.option.cost_cents / a.option.value - b.option.cost_cents / b.option.value);
  const left = problem.phases.map((p) => ({ cents: p.cap_cents, minutes: p.crewMinutes ?? Infinity }));
  const visits = new Map((problem.buildings ?? []).map((b) => [b.id, b]));
  const visited = new Set<string>();
  const chosen: ChosenOption[] = [];
  for (const { group, option } of rows) {
    if (option.value <= 0) continue;
    const mayBe = (phase: number): boolean => group.phases?.includes(phase) !== false && option.phases?.includes(phase) !== false;
    for (const [phase, room] of left.entries()) {
      const building = visits.get(group.building ?? '');
      const isNew = building !== undefined && !visited.has(`${building.id} ${String(phase)}`);
      const cents = option.cost_cents + (isNew ? building.visit_cents : 0);
      const minutes = (option.crewMinutes ?? 0) + (isNew ? building.visitMinutes : 0);
      if (!mayBe(phase) || cents > room.cents || minutes > room.minutes) continue;
      left[phase] = { cents: room.cents - cents, minutes: room.minutes - minutes };
      if (building !== undefined) visited.add(`${building.id} ${String(phase)}`);
      chosen.push({ group: group.id, option: option.id, phase });
      break;
    }
  }
  const { findings, value } = choiceFindings(problem, chosen);
  if (findings.length > 0) throw new RangeError(`the spreadsheet plan must keep the rules, got ${findings.join('; ')}`);
  return value;
}
