/** What solving one independent part gives: options with their phases, and bounds. */
export type PartAnswer =
  | {
      readonly found: true;
      /** Option index and phase, parallel lists. */
      readonly options: readonly number[];
      readonly phases: readonly number[];
      readonly value: number;
      /** Lagrangian value of the part at its multipliers, and the magnitudes added up in it. */
      readonly bound: number;
      readonly size: number;
      /** Whole number no choice is worth more than, by the multipliers or by search; equal to value when proved. */
      readonly shown: number;
      readonly states: number;
    }
  | {
      readonly found: false;
      /** No choice keeps all rules; otherwise none was found within the limits of the search. */
      readonly impossible: boolean;
      readonly why: string;
      readonly states: number;
    };
