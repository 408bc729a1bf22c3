/** How long film work takes, in person-minutes; editable data, replaced by measured minutes. */
export interface TimeModel {
  /** Set-up, moving and clean-up of a dwelling. */
  readonly perDwelling_min: number;
  readonly perPane_min: number;
  readonly perArea_min_m2: number;
  /** Per pane of a window with divided lites, in place of `perPane_min`. */
  readonly perLite_min: number;
  readonly ladderFactor: number;
  /** Over furniture or a stair. */
  readonly overFurnitureFactor: number;
  /** The film's edge runs along wood or putty. */
  readonly woodOrPuttyFactor: number;
  readonly oldFilm_min: number;
  readonly oldFilm_min_m2: number;
  readonly seam_min: number;
  /** First day of a new crew. */
  readonly firstDayFactor: number;
  /** Ends of the range over the best figure. */
  readonly lowFactor: number;
  readonly highFactor: number;
}
