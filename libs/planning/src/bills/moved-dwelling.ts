import { calibrationMoves, type Efficiency, type ParameterMove } from '#calc';
import type { DefaultOf } from '../job/assumption-book.js';
import type { KnownDwelling } from '../known/known-dwelling.js';
import type { MovedParameter } from './review.js';

/** A parameter that bills may move: in its own unit, or as a change of its logarithm. */
interface Movable {
  readonly key: 'useFactor' | 'setPoint_K' | 'airChange' | 'efficiency';
  readonly field: string;
  readonly unit: string;
  readonly step: number;
  readonly moved: (d: KnownDwelling, by: number) => KnownDwelling;
  readonly shown: (d: KnownDwelling) => string;
}

const scaled = (e: Efficiency, by: number): Efficiency => ({ ...e, value: e.value * Math.exp(e.scale === 'kW_ton' ? -by : by) });

/** What may move, and how a dwelling looks when it has; steps are those of the sensitivity. */
export const MOVABLE: readonly Movable[] = [
  { key: 'useFactor', field: 'use factor of the sun through the glass', unit: 'share', step: -0.1, moved: (d, by) => ({ ...d, useFactor: Math.min(1, d.useFactor * Math.exp(by)) }), shown: (d) => d.useFactor.toFixed(2) },
  { key: 'setPoint_K', field: 'cooling set point', unit: '°C', step: 0.5, moved: (d, by) => ({ ...d, coolingSetPoint_degC: d.coolingSetPoint_degC + by }), shown: (d) => d.coolingSetPoint_degC.toFixed(1) },
  { key: 'airChange', field: 'air change', unit: '1/h', step: 0.1, moved: (d, by) => ({ ...d, airChange_1_h: d.airChange_1_h * Math.exp(by) }), shown: (d) => d.airChange_1_h.toFixed(2) },
  { key: 'efficiency', field: 'present cooling efficiency', unit: 'as surveyed', step: 0.1, moved: (d, by) => ({ ...d, plantNow: scaled(d.plantNow, by) }), shown: (d) => `${d.plantNow.value.toFixed(1)} ${d.plantNow.scale}` },
];

export type Moves = readonly number[];

/** A dwelling with its parameters moved. */
export function movedDwelling(d: KnownDwelling, moves: Moves): KnownDwelling {
  return MOVABLE.reduce((dwelling, m, i) => (moves[i] === 0 ? dwelling : m.moved(dwelling, moves[i]!)), d);
}

/** A dwelling whose base load is scaled: bills and internal gains follow together, since both come from it. */
export const withBase = (d: KnownDwelling, factor: number): KnownDwelling => ({ ...d, baseLoad_kWh_yr: d.baseLoad_kWh_yr * factor });

export interface Allowed {
  readonly defaultOf: DefaultOf;
  /** Largest use factor of the group as surveyed: it may not pass 1. */
  readonly useFactor: number;
}

/** The moves that close a gap of ln(cooling), each within its limit. */
export function movesFor(sensitivities: readonly number[], gap: number, of: Allowed): { readonly moves: readonly ParameterMove[]; readonly open: number } {
  const value = (key: string): number => of.defaultOf<number>(key).value;
  const parameters = MOVABLE.map((m, i) => {
    const limit = value(`calibration.${m.key}.limit`);
    const up = m.key === 'useFactor' && gap * sensitivities[i]! > 0 ? Math.min(limit, -Math.log(of.useFactor)) : limit;
    return { key: m.key, spread: value(`calibration.${m.key}.spread`), limit: Math.max(0, up), sensitivity: sensitivities[i]! };
  });
  return calibrationMoves(parameters, gap);
}

/** What was moved, in words, by one dwelling of the group. */
export function movedWords(from: KnownDwelling, to: KnownDwelling, moves: readonly ParameterMove[]): MovedParameter[] {
  const base = { field: 'base load', before: from.baseLoad_kWh_yr.toFixed(0), after: to.baseLoad_kWh_yr.toFixed(0), unit: 'kWh/yr', atLimit: false };
  const others = MOVABLE.map((m, i) => ({ field: m.field, before: m.shown(from), after: m.shown(to), unit: m.unit, atLimit: moves[i]?.atLimit ?? false }));
  return [base, ...others].filter((m) => m.before !== m.after);
}
