import type { Known, PlanSettings, PlantAgeing, View } from '#calc';
import { Check, Entity } from 'typeorm';
import { Day, Flag, Json, LineKey, Real, Text, Whole, blank } from '../columns.js';
import type { KeptKind } from '../kept-kind.js';

/** Rates and rules of the plan; the table holds one line. */
@Entity('settings')
@Check('settings_one_line', 'line = 1')
@Check('settings_view', "view IN ('whole', 'owner')")
export class SettingsRow implements Omit<PlanSettings, 'plantAgeing' | 'realisation'> {
  @LineKey() line: number;
  @Text() name: string;
  @Text() currency: string;
  @Day() studyStart: string;
  @Text() view: View;
  @Real(blank) realDiscountRate: Known<number>;
  @Real(blank) realEscalation: Known<number>;
  @Real(blank) labour_cents_h: Known<number>;
  @Flag(blank) labourIsCash: Known<boolean>;
  @Real(blank) contingencyShare: Known<number>;
  @Real(blank) materialTaxShare: Known<number>;
  @Real(blank) labourTaxShare: Known<number>;
  @Real(blank) consumables_cents_m2: Known<number>;
  @Real(blank) trimPerEdge_mm: Known<number>;
  @Real(blank) endRemoval_cents_m2: Known<number>;
  @Whole(blank) crewSize: Known<number>;
  @Real(blank) crewDays_wk: Known<number>;
  @Real(blank) crewHours_day: Known<number>;
  @Text(blank) plantAgeing: Known<PlantAgeing>;
  @Flag() mixedFilm: boolean;
  @Text(blank) realisation: Known<'as-modelled' | 'as-found'>;
  @Whole(blank) drawSeed: Known<number>;
  @Whole(blank) crews: Known<number>;
  @Flag(blank) crewIsNew: Known<boolean>;
  @Json() noWork: PlanSettings['noWork'];
}

export const keptSettings: KeptKind<PlanSettings, SettingsRow> = {
  entity: SettingsRow,
  toRow: (settings) => ({ ...settings, plantAgeing: settings.plantAgeing ?? 'off', realisation: settings.realisation ?? 'as-modelled', drawSeed: settings.drawSeed ?? null, endRemoval_cents_m2: settings.endRemoval_cents_m2 ?? null, crews: settings.crews ?? null, crewIsNew: settings.crewIsNew ?? null, line: 1 }),
  toRecord: ({ line: _one, plantAgeing, realisation, ...settings }) => ({ ...settings, plantAgeing: plantAgeing ?? 'off', realisation: realisation ?? 'as-modelled' }),
};
