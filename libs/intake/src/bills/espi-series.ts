import type { EspiBlock, EspiFeed, EspiReading } from './espi-feed.js';

/** Readings of energy delivered to one usage point, in kWh. */
export interface EspiSeries {
  readonly usagePoint: EspiFeed['usagePoints'][number];
  readonly blocks: readonly EspiBlock[];
  readonly kWh: (reading: EspiReading) => number;
}

/** Readings that are something else than energy delivered between two moments. */
export interface LeftOutReadings {
  readonly line: number;
  readonly what: string;
}

const WATT_HOURS = 72;
const DELIVERED = 1;
const DELTA = 4;

const part = (href: string, resource: string): string | null => new RegExp(`^.*${resource}/[^/]+`).exec(href)?.[0] ?? null;
/** Links may be whole addresses or start anywhere in them. */
const endsAlike = (a: string, b: string): boolean => a === b || a.endsWith(`/${b}`) || b.endsWith(`/${a}`);

function typeOf(feed: EspiFeed, block: EspiBlock): EspiFeed['readingTypes'] extends ReadonlyMap<string, infer T> ? T | null : never {
  const reading = part(block.href, 'MeterReading');
  const related = [...feed.meterReadings].find(([href]) => reading !== null && endsAlike(href, reading))?.[1] ?? [];
  for (const [href, type] of feed.readingTypes) if (related.some((link) => endsAlike(link, href))) return type;
  return feed.readingTypes.size === 1 ? [...feed.readingTypes.values()][0]! : null;
}

function pointOf(feed: EspiFeed, block: EspiBlock): EspiFeed['usagePoints'][number] | null {
  const named = part(block.href, 'UsagePoint');
  const found = feed.usagePoints.find(({ href }) => named !== null && endsAlike(href, named));
  return found ?? (feed.usagePoints.length === 1 ? feed.usagePoints[0]! : null);
}

/** Why a block is no energy delivered, or null. */
function whyNot(type: ReturnType<typeof typeOf>): string | null {
  if (type === null) return 'readings whose type the file does not say';
  if (type.uom !== WATT_HOURS) return `readings in unit ${type.uom}, not watt-hours (72)`;
  if (type.flowDirection !== null && type.flowDirection !== DELIVERED) return `energy of flow direction ${type.flowDirection}, not delivered (1)`;
  if (type.accumulationBehaviour !== null && type.accumulationBehaviour !== DELTA && type.accumulationBehaviour !== 0) return `readings of accumulation ${type.accumulationBehaviour}, not use between two moments (4)`;
  return null;
}

/** Energy delivered by usage point, and what else the file holds. */
export function espiSeries(feed: EspiFeed): { readonly series: readonly EspiSeries[]; readonly leftOut: readonly LeftOutReadings[] } {
  const byPoint = new Map<EspiFeed['usagePoints'][number], { blocks: EspiBlock[]; factors: Map<EspiReading, number> }>();
  const leftOut: LeftOutReadings[] = [];
  for (const block of feed.blocks) {
    const [type, usagePoint] = [typeOf(feed, block), pointOf(feed, block)];
    const why = usagePoint === null ? 'readings that belong to no usage point of the file' : whyNot(type);
    if (why !== null || usagePoint === null || type === null) {
      leftOut.push({ line: block.line, what: why ?? '' });
      continue;
    }
    const of = byPoint.get(usagePoint) ?? { blocks: [], factors: new Map<EspiReading, number>() };
    byPoint.set(usagePoint, of);
    of.blocks.push(block);
    const factor = 10 ** type.powerOfTenMultiplier / 1000;
    for (const reading of block.readings) of.factors.set(reading, factor);
  }
  return { leftOut, series: [...byPoint].map(([usagePoint, { blocks, factors }]) => ({ usagePoint, blocks, kWh: (reading) => reading.value * (factors.get(reading) ?? 0) })) };
}
