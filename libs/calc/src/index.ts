// In flow order; each line is a stage, and a stage uses only those above it.
export * from './units/index.js'; // what is written in inches, tons and degrees Fahrenheit becomes SI
export * from './money/index.js'; // whole cents, and shares that add up
export type * from './portfolio/index.js'; // the records: building, dwelling, window, film, meter, consent
export * from './sun/index.js'; // where the sun stands
export * from './weather/index.js'; // a year of hours
export * from './sky/index.js'; // beam, sky and ground light on a facade
export * from './shade/index.js'; // what overhangs, fins and neighbours take away
export * from './glass/index.js'; // what the glazing lets in, bare and filmed
export * from './dwelling/index.js'; // the heat balance of a dwelling
export * from './cooling/index.js'; // from heat to electricity
export * from './tariff/index.js'; // from electricity to a bill
export * from './lifecycle/index.js'; // from bills to a present value
export * from './labour/index.js'; // person-minutes of a job
export * from './selection/index.js'; // the best plan under the caps, with its bound
export * from './cutting/index.js'; // pieces from rolls
export * from './verification/index.js'; // what the bills say after the work
export * from './uncertainty/index.js'; // draws of what is not known, and what they say
