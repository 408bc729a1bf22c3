import { choosing } from './checks/choosing-and-cutting.js';
import { hold } from './checks/hold.js';

choosing.forEach(hold);
