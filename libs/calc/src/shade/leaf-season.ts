/**
 * How much of its leaf a tree carries on a day.
 *
 *   1 from 1 May to 15 October, 0 from 15 November to 1 April, in a straight line between; south of the equator half a year later
 *
 * @param dayOfYear 1…366
 * @param latitude_deg −90…90; its sign chooses the season
 * @returns 0 bare … 1 in leaf
 * @source common practice, no source
 */
export function leafShare(dayOfYear: number, latitude_deg: number): number {
  const day = latitude_deg >= 0 ? dayOfYear : ((dayOfYear + 182 - 1) % 365) + 1;
  if (day <= 91 || day >= 319) return 0;
  if (day < 121) return (day - 91) / 30;
  if (day <= 288) return 1;
  return (319 - day) / 31;
}
