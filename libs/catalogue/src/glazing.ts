import type { BlindKind, Gap, GlazingMakeUp, Optics, Pane } from '#calc';
import { z } from 'zod';
import { readData } from './data-folder.js';

/** How far a built-in figure is to be trusted. */
export type Basis = 'measured' | 'published' | 'assumed';

/** A glazing type a surveyor can name, with its make-up. */
export interface CatalogueGlazing {
  readonly key: string;
  /** Trade name. */
  readonly name: string;
  /** Other ways it is written in surveys, lower case. */
  readonly synonyms: readonly string[];
  readonly makeUp: GlazingMakeUp;
  readonly visibleTransmittance: number;
  /** Any pane is tinted in the mass. */
  readonly tinted: boolean;
  /** Any face carries a low-e coating. */
  readonly lowE: boolean;
  /** Row of the handbook table the figures can be held against. */
  readonly handbookRow: string | null;
  readonly source: string;
  readonly basis: Basis;
}

/** A default with where it comes from. */
export interface SourcedValue {
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  readonly basis: Basis;
}

/** Glazing types, and the blinds behind them. */
export interface GlazingCatalogue {
  /** @throws RangeError for a KEY the catalogue does not hold */
  readonly get: (key: string) => CatalogueGlazing;
  readonly find: (key: string) => CatalogueGlazing | null;
  readonly list: () => readonly CatalogueGlazing[];
  /** The figures of a drawn blind or curtain; none for `none`. */
  readonly blind: (kind: BlindKind) => Optics | null;
  readonly blindCoveredShare: SourcedValue;
  readonly blindClosesAt_W_m2: SourcedValue;
}

const share = z.number().min(0).max(1);
const basis = z.enum(['measured', 'published', 'assumed']);
const origin = { validFrom: z.iso.date(), source: z.string().min(1), basis };
const units = z.record(z.string(), z.string());
const paneFile = z.strictObject({
  about: z.string(),
  units,
  panes: z.array(
    z.strictObject({
      key: z.string(),
      name: z.string(),
      solarTransmittance: share,
      frontReflectance: share,
      backReflectance: share,
      emissivityFront: share,
      emissivityBack: share,
      thickness_mm: z.number().positive(),
      coated: z.boolean(),
      tinted: z.boolean(),
      ...origin,
    }),
  ),
});
const gapFile = z.strictObject({
  about: z.string(),
  units,
  gaps: z.array(
    z.strictObject({
      key: z.string(),
      resistance_m2K_W: z.number().positive(),
      width_mm: z.number().positive(),
      gas: z.enum(['air', 'argon']),
      emissivities: z.tuple([share, share]),
      ...origin,
    }),
  ),
});
const makeUpFile = z.strictObject({
  about: z.string(),
  units,
  glazing: z.array(
    z.strictObject({
      key: z.string(),
      name: z.string(),
      synonyms: z.array(z.string()),
      panes: z.array(z.string()).min(1),
      gaps: z.array(z.string()),
      visibleTransmittance: share,
      handbookRow: z.string().nullable(),
      ...origin,
    }),
  ),
});
const sourced = z.strictObject({ value: z.number(), unit: z.string(), ...origin });
const blindFile = z.strictObject({
  about: z.string(),
  units,
  coveredShare: sourced,
  closesAt_W_m2: sourced,
  blinds: z.array(
    z.strictObject({
      key: z.enum(['light', 'medium', 'dark']),
      name: z.string(),
      solarTransmittance: share,
      frontReflectance: share,
      backReflectance: share,
      ...origin,
    }),
  ),
});

function pick<T extends { readonly key: string }>(rows: readonly T[], what: string): (key: string) => T {
  const byKey = new Map(rows.map((row) => [row.key, row]));
  if (byKey.size !== rows.length) throw new Error(`the built-in data name the same ${what} twice`);
  return (key) => {
    const found = byKey.get(key);
    if (found === undefined) throw new RangeError(`${what} must be one of ${[...byKey.keys()].join(', ')}, got ${key}`);
    return found;
  };
}

const gapOf = (row: { readonly resistance_m2K_W: number }): Gap => ({ resistance_m2K_W: row.resistance_m2K_W });
const paneOf = (row: z.infer<typeof paneFile>['panes'][number]): Pane => ({
  solarTransmittance: row.solarTransmittance,
  frontReflectance: row.frontReflectance,
  backReflectance: row.backReflectance,
  emissivityFront: row.emissivityFront,
  emissivityBack: row.emissivityBack,
  thickness_mm: row.thickness_mm,
  coated: row.coated,
});

/**
 * Opens the built-in glazing types and blinds.
 *
 * @param folder the data folder
 */
export function openGlazing(folder: string): GlazingCatalogue {
  const paneAt = pick(paneFile.parse(readData(folder, 'glazing/panes.json')).panes, 'pane');
  const gapAt = pick(gapFile.parse(readData(folder, 'glazing/gaps.json')).gaps, 'gap');
  const blinds = blindFile.parse(readData(folder, 'glazing/blinds.json'));
  const rows = makeUpFile.parse(readData(folder, 'glazing/make-ups.json')).glazing.map((row): CatalogueGlazing => {
    const panes = row.panes.map(paneAt);
    return {
      key: row.key,
      name: row.name,
      synonyms: row.synonyms,
      makeUp: { key: row.key, panes: panes.map(paneOf), gaps: row.gaps.map((key) => gapOf(gapAt(key))) },
      visibleTransmittance: row.visibleTransmittance,
      tinted: panes.some((pane) => pane.tinted),
      lowE: panes.some((pane) => pane.coated),
      handbookRow: row.handbookRow,
      source: row.source,
      basis: row.basis,
    };
  });
  const get = pick(rows, 'glazing');
  const blindAt = pick(blinds.blinds, 'blind');
  return {
    get,
    find: (key) => rows.find((row) => row.key === key) ?? null,
    list: () => rows,
    blind: (kind) => (kind === 'none' ? null : blindAt(kind)),
    blindCoveredShare: blinds.coveredShare,
    blindClosesAt_W_m2: blinds.closesAt_W_m2,
  };
}
