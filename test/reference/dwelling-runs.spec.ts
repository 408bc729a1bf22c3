import { dwelling } from './checks/dwelling-and-plant.js';
import { hold } from './checks/hold.js';

dwelling.forEach(hold);
