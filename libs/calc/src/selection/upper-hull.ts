/** A way to spend, with what it stands for. */
export interface HullPoint<T> {
  readonly cost: number;
  readonly value: number;
  readonly tag: T;
}

/**
 * The ways worth taking at some price of a cent: the upper-left hull, from the cheapest way on, each step worth less per cent than the one before.
 *
 * @param points at least one
 * @returns points of rising cost and value; of equal ones the earlier
 * @source Pisinger, DIKU report 95/1, section 7.2
 */
export function upperHull<T>(points: readonly HullPoint<T>[]): HullPoint<T>[] {
  const order = points.map((point, i) => ({ point, i })).sort((a, b) => a.point.cost - b.point.cost || b.point.value - a.point.value || a.i - b.i);
  const hull: HullPoint<T>[] = [];
  for (const { point } of order) {
    const last = hull.at(-1);
    if (last !== undefined && point.value <= last.value) continue;
    while (hull.length >= 2) {
      const [a, b] = [hull.at(-2)!, hull.at(-1)!];
      if ((b.value - a.value) * (point.cost - b.cost) > (point.value - b.value) * (b.cost - a.cost)) break;
      hull.pop();
    }
    if (hull.length > 0 && hull.at(-1)!.cost === point.cost) hull.pop();
    hull.push(point);
  }
  return hull;
}
