import fc from 'fast-check';

// One seed for every property test, so a failure on one machine is the same failure on all.
fc.configureGlobal({ seed: 20260701, numRuns: 60 });
