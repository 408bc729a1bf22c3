/** The items by key, keys in the order they first appear. */
export function grouped<T>(items: Iterable<T>, keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [item]);
    else group.push(item);
  }
  return groups;
}

/** Sorts by the text key; the same order on every machine and locale. */
export function sortedBy<T>(items: Iterable<T>, keyOf: (item: T) => string): T[] {
  return [...items].sort((a, b) => {
    const [left, right] = [keyOf(a), keyOf(b)];
    return left < right ? -1 : left > right ? 1 : 0;
  });
}
