import { hold } from './checks/hold.js';
import { sunAndSky } from './checks/sun-and-sky.js';

sunAndSky.filter(({ table }) => table.of.startsWith('calc/shade/')).forEach(hold);
