import { Column, PrimaryColumn, type ColumnOptions } from 'typeorm';

// The column types that SQLite and PostgreSQL both know; nothing else may be used in an entity.

/** How a column differs from a plain one that must be filled. */
interface Differs {
  /** May be blank: blank is "not known", never zero. */
  readonly blank?: true;
  /** Where the field's own word is reserved in SQL. */
  readonly name?: string;
}

const column =
  (of: ColumnOptions) =>
  ({ blank: mayBeBlank = undefined, ...differs }: Differs = {}): PropertyDecorator =>
    Column({ ...of, ...differs, nullable: mayBeBlank ?? false });

// PostgreSQL hands whole numbers of 64 bits over as text, SQLite as numbers.
const wholeNumber = {
  to: (value: number | null): number | null => value,
  from: (value: string | number | null): number | null => (value === null ? null : Number(value)),
};

export const blank: Differs = { blank: true };
export const Key = (): PropertyDecorator => PrimaryColumn({ type: 'varchar' });
export const DayKey = (name: string): PropertyDecorator => PrimaryColumn({ type: 'date', name });
export const LineKey = (): PropertyDecorator => PrimaryColumn({ type: 'integer' });
export const Text = column({ type: 'varchar' });
export const LongText = column({ type: 'text' });
export const Real = column({ type: 'double precision' });
export const Whole = column({ type: 'integer' });
export const WholeCents = column({ type: 'bigint', transformer: wholeNumber });
export const Flag = column({ type: 'boolean' });
export const Day = column({ type: 'date' });
export const Json = column({ type: 'simple-json' });
