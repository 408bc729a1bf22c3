import type { Plan } from '#planning';

/** A plan whose IDs mean something to a spreadsheet: patterns that fit other IDs too, comparisons, a zero in front. */
export function oddlyNamed(plan: Plan): Plan {
  const phase = plan.phases[0]!.phase.id;
  const text = JSON.stringify(plan)
    .replaceAll('QA/', 'Q*/')
    .replaceAll('"QA"', '"Q*"')
    .replaceAll('"QB"', '"Q~B"')
    .replaceAll('QB/', 'Q~B/')
    .replaceAll(`"${phase}"`, '"=?*"')
    .replaceAll(/"(phase|film)":"([AB])"/g, '"$1":"<$2*"')
    .replaceAll(/"films":\[([^\]]*)\]/g, (_, films: string) => `"films":[${films.replaceAll(/"([AB])"/g, '"<$1*"')}]`);
  return JSON.parse(text) as Plan;
}
