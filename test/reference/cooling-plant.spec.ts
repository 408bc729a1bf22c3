import { copOf_eer, copOf_kW_ton, WOf_ton } from '#calc';
import { cooling } from './checks/dwelling-and-plant.js';
import { hold } from './checks/hold.js';

cooling.forEach(hold);

describe('scales of efficiency, by their definitions', () => {
  test.each([[10, 2.9307107018321124, 1.2], [12, 3.516852842198535, 1]])('EER %d', (eer, cop, rate_kW_ton) => {
    expect(copOf_eer(eer)).toBeCloseTo(cop, 8);
    expect(copOf_kW_ton(rate_kW_ton)).toBeCloseTo(cop, 8);
  });
  test('a ton is 3516.8528 W', () => {
    expect(WOf_ton(1)).toBeCloseTo(3516.8528, 3);
  });
});
