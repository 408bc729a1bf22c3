import type { TariffText } from '#calc';
import { Entity } from 'typeorm';
import { Json, Key, Text, blank } from '../columns.js';
import type { KeptKind } from '../kept-kind.js';

/** A tariff as it was sent, all fields kept; its name stands beside for people. */
@Entity('tariffs')
export class TariffRow {
  @Key() label: string;
  @Text(blank) name: string | null;
  @Json() text: TariffText;
}

export const keptTariffs: KeptKind<TariffText, TariffRow> = {
  entity: TariffRow,
  toRow: (tariff) => ({ label: tariff.label, name: tariff.name ?? null, text: tariff }),
  toRecord: (row) => row.text,
};
