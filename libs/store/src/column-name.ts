import { DefaultNamingStrategy, type NamingStrategyInterface } from 'typeorm';

/**
 * The column of a field: the same words in small letters, so that a person can query without quotes.
 * `ratedCapacity_W` → `rated_capacity_w`, `fuel_cents_kWh` → `fuel_cents_kwh`; what follows the first `_` is the unit and stays in one piece.
 */
export function columnName(field: string): string {
  const at = field.indexOf('_');
  const words = at < 0 ? field : field.slice(0, at);
  const unit = at < 0 ? '' : field.slice(at);
  return words.replace(/([a-z0-9])([A-Z])/g, '$1_$2').toLowerCase() + unit.toLowerCase();
}

/** TypeORM's own names for keys and indexes, with our names for columns. */
export class ColumnNames extends DefaultNamingStrategy implements NamingStrategyInterface {
  override columnName(field: string, given: string | undefined): string {
    return given ?? columnName(field);
  }
}
