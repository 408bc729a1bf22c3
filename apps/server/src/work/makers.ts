import type { Provider } from '@nestjs/common';
import { PortfolioStore } from '#store';
import { Edge } from '../edge.js';
import { WeatherPlace } from '../verification/weather-place.js';
import { PlanMaker, WorkbookMaker } from './plan-maker.js';
import { PlanWorkbooks, PortfolioPlans } from './portfolio-plans.js';

/**
 * The real makers of plans and workbooks.
 *
 * @param weatherFolder where the weather files lie that buildings name
 */
export const makers = (weatherFolder: string): Provider[] => [
  { provide: PlanMaker, useFactory: (store: PortfolioStore, edge: Edge) => new PortfolioPlans(store, edge, weatherFolder), inject: [PortfolioStore, Edge] },
  { provide: WeatherPlace, useValue: new WeatherPlace(weatherFolder) },
  { provide: WorkbookMaker, useClass: PlanWorkbooks },
];
