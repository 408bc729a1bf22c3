import { bills } from './bills.js';
import type { Check } from './check.js';
import { choosing, cutting } from './choosing-and-cutting.js';
import { cooling, dwelling, labour } from './dwelling-and-plant.js';
import { glassFilms } from './glass-films.js';
import { glassHandbook } from './glass-handbook.js';
import { glassHeat } from './glass-heat.js';
import { glassSheets } from './glass-sheets.js';
import { finance, tariff } from './money.js';
import { standard140Suite } from './standard-140.js';
import { sunAndSky } from './sun-and-sky.js';
import { weatherYears } from './weather-years.js';

/** Every published table of the project with our figures for it, by chapters of the validation page. */
export const chapters: readonly { readonly title: string; readonly checks: readonly Check[] }[] = [
  { title: 'Sun, sky and shade', checks: sunAndSky },
  { title: 'Weather years and light on walls', checks: weatherYears },
  { title: 'Glass: sheets and layers', checks: glassSheets },
  { title: 'Glass: heat', checks: glassHeat },
  { title: 'Glass: the handbook', checks: glassHandbook },
  { title: 'Film, meter, stress and blinds', checks: glassFilms },
  { title: 'Dwelling', checks: [...dwelling, ...standard140Suite] },
  { title: 'Cooling plant', checks: cooling },
  { title: 'Tariffs', checks: tariff },
  { title: 'Finance', checks: finance },
  { title: 'Labour', checks: labour },
  { title: 'Bills', checks: bills },
  { title: 'Choosing under caps', checks: choosing },
  { title: 'Cutting', checks: cutting },
];
