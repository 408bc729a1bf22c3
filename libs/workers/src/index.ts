export { workerPool, type WorkerPool } from './pool.js'; // the heavy work on threads
