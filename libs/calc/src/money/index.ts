export * from './cents.js';
