import type { Portfolio } from '#calc';
import { buildingOf } from '../building-id.js';
import type { PlanJob } from '../job/plan-job.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import { wrapped_deg } from './bearings.js';

const signed = (degrees: number): string => `${degrees < 0 ? '−' : '+'}${String(Math.abs(degrees))}`;

/**
 * Bearings read off a compass turned to true north.
 *
 *   true = magnetic + declination (east positive)
 *
 * For buildings with a declination: sides of windows, fronts, skylines, readings and locks. The survey's own bearings stay in the store;
 * a plan type's windows are measured from its own front and are left alone.
 */
export function trueBearings(portfolio: Portfolio): { readonly portfolio: Portfolio; readonly findings: readonly PlanFinding[] } {
  const turn = new Map(portfolio.buildings.flatMap((b): [string, number][] => (b.declination_deg == null || b.declination_deg === 0 ? [] : [[b.id, b.declination_deg]])));
  if (turn.size === 0) return { portfolio, findings: [] };
  const turned = (building: string, azimuth_deg: number): number => wrapped_deg(azimuth_deg + (turn.get(building) ?? 0));
  const orNull = (building: string, azimuth_deg: number | null): number | null => (azimuth_deg === null ? null : turned(building, azimuth_deg));
  return {
    portfolio: {
      ...portfolio,
      buildings: portfolio.buildings.map((b) => ({ ...b, horizons: b.horizons.map((h) => ({ azimuth_deg: turned(b.id, h.azimuth_deg), points: h.points.map((p) => ({ ...p, azimuth_deg: turned(b.id, p.azimuth_deg) })) })) })),
      dwellings: portfolio.dwellings.map((d) => ({ ...d, frontAzimuth_deg: orNull(d.building, d.frontAzimuth_deg) })),
      windows: portfolio.windows.map((w) => (w.dwelling === null ? w : { ...w, azimuth_deg: orNull(buildingOf(w.dwelling), w.azimuth_deg) })),
      readings: portfolio.readings.map((r) => ({ ...r, azimuth_deg: turned(r.building, r.azimuth_deg) })),
      locks: portfolio.locks.map((l) => ({ ...l, azimuth_deg: orNull(buildingOf(l.subject), l.azimuth_deg) })),
    },
    findings: [...turn].map(([building, degrees]) => ({
      severity: 'note',
      subject: building,
      text: `bearings were read off a compass; ${signed(degrees)}° of declination is added: what the survey calls 270° is ${String(wrapped_deg(270 + degrees))}° from true north here`,
      whatToDo: 'nothing, unless the bearings came from a plan; then leave the declination blank',
    })),
  };
}

/** A plan's job with its bearings turned, and a finding for each building whose bearings were. */
export function withTrueBearings(job: PlanJob): PlanJob {
  const { portfolio, findings } = trueBearings(job.portfolio);
  return { ...job, portfolio, findings: [...job.findings, ...findings] };
}
