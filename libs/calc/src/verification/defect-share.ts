/**
 * Share of panes that have to be done again, from those that were.
 *
 *   (defects + expected × 20) / (panes + 20)
 *
 * @param counted panes done and panes with a defect, whole numbers, defects ≤ panes
 * @param expected share expected before any pane was done, 0…1
 * @returns share 0…1
 * @throws RangeError outside those ranges
 * @source own rule: the expected share counts as much as twenty panes
 */
export function defectShare(counted: { readonly panes: number; readonly defects: number }, expected: number): number {
  const { panes, defects } = counted;
  if (!(Number.isInteger(panes) && Number.isInteger(defects) && defects >= 0 && panes >= defects)) throw new RangeError(`defects must be 0…panes, got ${defects} of ${panes}`);
  if (!(expected >= 0 && expected <= 1)) throw new RangeError(`expected must be 0…1, got ${expected}`);
  return (defects + expected * 20) / (panes + 20);
}
