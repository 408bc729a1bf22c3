import { kernel as changePoint } from './change-point.js';
import { kernel as cut } from './cut.js';
import { kernel as select } from './select.js';
import { kernel as coolingPlant } from './cooling-plant.js';
import { kernel as dwellingYear } from './dwelling-year.js';
import { kernel as depreciation } from './depreciation.js';
import { kernel as draw } from './draw.js';
import { kernel as glazing } from './glazing.js';
import type { Kernel } from './kernel.js';
import { kernel as lifeCycle } from './life-cycle.js';
import { kernel as tariffBill } from './tariff-bill.js';
import { kernel as meterPair } from './meter-pair.js';
import { kernel as paneStress } from './pane-stress.js';
import { kernel as realisation } from './realisation.js';
import { kernel as rebate } from './rebate.js';
import { kernel as spread } from './spread.js';
import { kernel as facadeIrradiance } from './facade-irradiance.js';
import { kernel as facadeYear } from './facade-year.js';
import { kernel as solarGainFactor } from './solar-gain-factor.js';
import { kernel as sunPosition } from './sun-position.js';
import { kernel as sunlitShare } from './sunlit-share.js';

/** Every kernel by name, in flow order. */
export const allKernels: readonly Kernel[] = [
  sunPosition,
  facadeIrradiance,
  facadeYear,
  sunlitShare,
  solarGainFactor,
  glazing,
  meterPair,
  paneStress,
  dwellingYear,
  coolingPlant,
  tariffBill,
  lifeCycle,
  depreciation,
  rebate,
  realisation,
  draw,
  spread,
  select,
  cut,
  changePoint,
];
