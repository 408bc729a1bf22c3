import type { OwnerEntity } from '#calc';
import { Entity } from 'typeorm';
import { Key, Text } from '../columns.js';
import { FromFile } from '../inventory-place.js';
import { keptWithPlace } from '../kept-kind.js';

/** Who holds buildings and has a budget. */
@Entity('owner_entities')
export class OwnerEntityRow extends FromFile {
  @Key() id: string;
  @Text() name: string;
}

export const keptOwnerEntities = keptWithPlace<OwnerEntity, OwnerEntityRow>(OwnerEntityRow);
