export * from './angles.js';
export * from './lengths.js';
export * from './conversions.js';
