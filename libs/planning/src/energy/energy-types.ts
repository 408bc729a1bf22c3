/** What film changes in half a year of the first year. */
export interface SeasonEnergy {
  readonly cooling_kWh: number;
  readonly cooling_cents: number;
  readonly addedHeating_kWh: number;
  readonly addedHeating_cents: number;
}

/** The machine on the design day, as found and with the film. No money is given for it, nor for a longer life of the machine. */
export interface PeakCut {
  /** Hour of the day in which the dwelling as found takes most. */
  readonly hour: number;
  readonly asFound_kW: number;
  /** In that same hour. */
  readonly filmedThen_kW: number;
  /** In its own hardest hour. */
  readonly filmed_kW: number;
  readonly asFound_tons: number;
  readonly filmed_tons: number;
}

/** Share of the panes that may fail in a year before the option's value is used up. */
export interface FailureBreakEven {
  readonly share_1_yr: number | null;
  readonly why: string | null;
}

/** An option looked at closely: present machine, first year. */
export interface OptionEnergy {
  readonly option: string;
  readonly dwelling: string;
  readonly building: string;
  /** Phase of the plan; null for the best option of a dwelling that is not in it, or not with this option. */
  readonly phase: string | null;
  readonly summer: SeasonEnergy;
  readonly winter: SeasonEnergy;
  readonly asFoundCooling_kWh: number;
  readonly runHoursAvoided_h: number;
  /** Second figure: moisture follows the shorter run and the room gets damper. Shown, never used. */
  readonly damper: { readonly cooling_kWh: number; readonly cooling_cents: number };
  readonly peak: PeakCut;
  readonly failure: FailureBreakEven;
  readonly warnings: readonly string[];
}

/** What a film does on one glass of an option, beside what its sheet promises on single clear. */
export interface OptionGlass {
  readonly option: string;
  readonly glazing: string;
  readonly film: string;
  readonly glass_m2: number;
  /** Share of the glass's own heat gain the film takes away. */
  readonly cut: number;
  readonly cutOnSingleClear: number;
  /** Of the single-clear cut, the share left here. */
  readonly survives: number;
  /** The sheet's figure would promise too much here. */
  readonly misleads: boolean;
  /** Of a make-up guessed from a label: what it is and how far it misses the label; null where the type is known. */
  readonly assumed: string | null;
  readonly isMeasured: boolean;
  /** Estimated edge stress with the film, MPa, and the weather it is highest in. */
  readonly edgeStress_MPa: number;
  readonly edgeStressWeather: string;
}

/** Coincident electricity of a building's planned dwellings on the design day. */
export interface BuildingPeak {
  readonly building: string;
  readonly designDay: string;
  readonly dryBulb_degC: number;
  readonly wetBulb_degC: number;
  readonly dwellings: number;
  readonly hour: number;
  readonly asFound_kW: number;
  readonly filmed_kW: number;
  /** Warm and humid by the wet bulb of its year. */
  readonly isHumid: boolean;
}

/** Energy of the plan's lines and of each ranked dwelling's best option. */
export interface EnergyReview {
  readonly options: readonly OptionEnergy[];
  readonly glass: readonly OptionGlass[];
  readonly buildings: readonly BuildingPeak[];
}
