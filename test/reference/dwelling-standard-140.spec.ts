import { hold } from './checks/hold.js';
import { standard140Suite } from './checks/standard-140.js';
import { weatherFolder } from './weather-files.js';

weatherFolder('Standard 140-2020, all shared cases on the Denver file');
standard140Suite.forEach(hold);
