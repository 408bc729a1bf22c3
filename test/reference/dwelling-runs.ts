import type { ReferenceTable } from './reference-table.js';

/** A box of a dwelling driven by formulas: weather, sun and gains can be written down in a line each. */
export interface RunGiven {
  readonly windowArea_m2: number;
  readonly opaqueToMass_W_K: number;
  readonly floor_m2: number;
  readonly volume_m3: number;
  readonly facingArea_m2: number;
  readonly windowU_W_m2K: number;
  readonly airChange_1_h: number;
  readonly capacity_J_m2K: number;
  readonly heatingSetPoint_degC: number;
  readonly coolingSetPoint_degC: number;
  readonly solarHeatGain: number;
  readonly heatingLimit_W?: number;
}

export interface RunHour {
  readonly hour: number;
  readonly outdoor_degC: number;
  readonly solar_W: number;
  readonly internal_W: number;
  readonly heating_W: number;
  readonly cooling_W: number;
  readonly air_degC: number;
  readonly surface_degC: number;
  readonly mass_degC: number;
  readonly massEnd_degC: number;
}

export interface RunExpect {
  readonly heating_kWh: number;
  readonly cooling_kWh: number;
  readonly peakHeating_W: number;
  readonly peakCooling_W: number;
  readonly coolingHours: number;
  readonly monthlyCooling_kWh: readonly number[];
  readonly finalMass_degC: number;
  readonly hours: readonly RunHour[];
}

/**
 * Weather of the runs: outdoors 15 − 12 cos(2π(h−480)/8760) + 6 sin(2π((h mod 24)−9)/24) °C;
 * sun area × SHGC × 600 × sin(π(hour−6)/12) × (0.75 − 0.25 cos(2π(day−10)/365)) W; gains 200 W, 350 W from 18:00 to 08:00.
 * Mass area 2.5 × floor; air change 1200 × volume × rate / 3600; opaque path U × A taken as it stands; start at 20 °C.
 */
export const dwellingRuns: ReferenceTable<RunGiven, RunExpect> = {
  of: 'calc/dwelling/dwelling-year',
  source: 'RC_BuildingSimulator, public 5R1C implementation of ISO 13790 annex C, commit 97c1cdd7, run with the inputs stated in each row',
  seen: 'computed from the stated formula',
  tolerance: { rel: 1e-6, abs: 1e-6, why: 'same equations; that program interpolates the demand from a trial of 10 W/m², which rounds in the eleventh digit' },
  rows: [
    {
      given: { windowArea_m2: 12, opaqueToMass_W_K: 60.0, floor_m2: 75, volume_m3: 187.5, facingArea_m2: 337.5, windowU_W_m2K: 5.8, airChange_1_h: 0.5001, capacity_J_m2K: 165000, heatingSetPoint_degC: 20, coolingSetPoint_degC: 24, solarHeatGain: 0.8 },
      expect: {
        heating_kWh: 3462.2454306696295, cooling_kWh: 6880.666246671127, peakHeating_W: 2701.658129900832, peakCooling_W: 4762.5866317425225,
        coolingHours: 3702, finalMass_degC: 18.63580235296545,
        monthlyCooling_kWh: [0.0, 0.0, 0.9050881346493148, 202.741190803646, 825.2117497620866, 1357.626045337537, 1670.7316055587528, 1512.8015539383582, 962.3275101544488, 340.06016871306514, 8.261334268585253, 0.0],
        hours: [
          { hour: 0, outdoor_degC: -0.5384484972734516, solar_W: 0.0, internal_W: 350.0, heating_W: 1173.5410962898206, cooling_W: 0, air_degC: 19.999999999999996, surface_degC: 19.393162670576984, mass_degC: 19.74882095982153, massEnd_degC: 19.49764191964306 },
          { hour: 1, outdoor_degC: -1.4948624214076265, solar_W: 0.0, internal_W: 350.0, heating_W: 1543.28830728588, cooling_W: 0, air_degC: 19.999999999999996, surface_degC: 19.101286515317863, mass_degC: 19.284870683204964, massEnd_degC: 19.07209944676687 },
          { hour: 12, outdoor_degC: 7.912390581108892, solar_W: 2901.2830462712727, internal_W: 200.0, heating_W: 287.76220470244465, cooling_W: 0, air_degC: 20.0, surface_degC: 19.99145561970737, mass_degC: 19.736431392228248, massEnd_degC: 19.939060062718397 },
          { hour: 720, outdoor_degC: -1.0652819681920125, solar_W: 0.0, internal_W: 350.0, heating_W: 2080.861157675385, cooling_W: 0, air_degC: 20.000000000000004, surface_degC: 18.628071335989624, mass_degC: 18.451899020093354, massEnd_degC: 18.339431438554897 },
          { hour: 3612, outdoor_degC: 26.747567562942237, solar_W: 5391.50967341476, internal_W: 200.0, heating_W: 0, cooling_W: 3130.8466257770524, air_degC: 24.000000000000004, surface_degC: 26.52922638079471, mass_degC: 26.8888148664224, massEnd_degC: 27.242097195970267 },
          { hour: 4380, outdoor_degC: 30.53844849727345, solar_W: 5736.5413830339985, internal_W: 200.0, heating_W: 0, cooling_W: 3956.866068247657, air_degC: 24.000000000000018, surface_degC: 27.13687487914527, mass_degC: 27.695994119257968, massEnd_degC: 28.05367747195805 },
          { hour: 4381, outdoor_degC: 31.494862421407625, solar_W: 5541.07347544855, internal_W: 200.0, heating_W: 0, cooling_W: 4409.478780932793, air_degC: 24.000000000000007, surface_degC: 27.499918400320926, mass_degC: 28.330900025358154, massEnd_degC: 28.60812257875826 },
          { hour: 4382, outdoor_degC: 32.09716133224933, solar_W: 4967.990567568161, internal_W: 200.0, heating_W: 0, cooling_W: 4650.654097431442, air_degC: 24.00000000000003, surface_degC: 27.6908789681506, mass_degC: 28.7770617634741, massEnd_degC: 28.946000948189948 },
          { hour: 4390, outdoor_degC: 24.771653673846636, solar_W: 0.0, internal_W: 350.0, heating_W: 0, cooling_W: 1603.030297316636, air_degC: 23.999999999999996, surface_degC: 25.205720920814567, mass_degC: 26.002972444184802, massEnd_degC: 25.808504470985014 },
          { hour: 5000, outdoor_degC: 25.386636066319404, solar_W: 2854.522206497695, internal_W: 200.0, heating_W: 0, cooling_W: 1216.9076905449876, air_degC: 23.999999999999986, surface_degC: 24.922011076325987, mass_degC: 24.801901190401278, massEnd_degC: 25.075562690218902 },
          { hour: 8759, outdoor_degC: 0.7071001896325129, solar_W: 0.0, internal_W: 350.0, heating_W: 1770.5830294426107, cooling_W: 0, air_degC: 19.999999999999996, surface_degC: 18.846969979821946, mass_degC: 18.75680947687127, massEnd_degC: 18.63580235296545 },
        ],
      },
      place: 'run A_medium_single_glazed',
    },
    {
      given: { windowArea_m2: 12, opaqueToMass_W_K: 60.0, floor_m2: 75, volume_m3: 187.5, facingArea_m2: 337.5, windowU_W_m2K: 5.8, airChange_1_h: 0.5001, capacity_J_m2K: 165000, heatingSetPoint_degC: 20, coolingSetPoint_degC: 24, solarHeatGain: 0.45 },
      expect: {
        heating_kWh: 4788.122405128478, cooling_kWh: 4089.995088786643, peakHeating_W: 2741.140594590644, peakCooling_W: 3207.3112778718832,
        coolingHours: 3099, finalMass_degC: 18.416082093880025,
        monthlyCooling_kWh: [0.0, 0.0, 0.0, 12.491331967021539, 393.8867189158701, 878.3153095887722, 1159.887255024195, 1023.7590237537219, 547.5009387932896, 74.15451074377225, 0.0, 0.0],
        hours: [
          { hour: 0, outdoor_degC: -0.5384484972734516, solar_W: 0.0, internal_W: 350.0, heating_W: 1173.5410962898206, cooling_W: 0, air_degC: 19.999999999999996, surface_degC: 19.393162670576984, mass_degC: 19.74882095982153, massEnd_degC: 19.49764191964306 },
          { hour: 1, outdoor_degC: -1.4948624214076265, solar_W: 0.0, internal_W: 350.0, heating_W: 1543.28830728588, cooling_W: 0, air_degC: 19.999999999999996, surface_degC: 19.101286515317863, mass_degC: 19.284870683204964, massEnd_degC: 19.07209944676687 },
          { hour: 12, outdoor_degC: 7.912390581108892, solar_W: 1631.9717135275907, internal_W: 200.0, heating_W: 986.6520318097488, cooling_W: 0, air_degC: 19.999999999999996, surface_degC: 19.39122817828402, mass_degC: 19.01588621045335, massEnd_degC: 19.152093338070184 },
          { hour: 720, outdoor_degC: -1.0652819681920125, solar_W: 0.0, internal_W: 350.0, heating_W: 2211.2769271997026, cooling_W: 0, air_degC: 20.000000000000004, surface_degC: 18.516066380949955, mass_degC: 18.25889109691005, massEnd_degC: 18.168211412067752 },
          { hour: 3612, outdoor_degC: 26.747567562942237, solar_W: 3032.724191295802, internal_W: 200.0, heating_W: 0, cooling_W: 1760.5544349378938, air_degC: 24.000000000000004, surface_degC: 25.352378551839983, mass_degC: 25.443948880391062, massEnd_degC: 25.6857492551344 },
          { hour: 4380, outdoor_degC: 30.53844849727345, solar_W: 3226.8045279566236, internal_W: 200.0, heating_W: 0, cooling_W: 2559.3840844673127, air_degC: 23.99999999999999, surface_degC: 25.936675644551283, mass_degC: 26.24820375827599, massEnd_degC: 26.477162969628825 },
          { hour: 4381, outdoor_degC: 31.494862421407625, solar_W: 3116.8538299398087, internal_W: 200.0, heating_W: 0, cooling_W: 2876.012594794531, air_degC: 23.999999999999993, surface_degC: 26.182931874383595, mass_degC: 26.660721040217894, massEnd_degC: 26.844279110806962 },
          { hour: 4382, outdoor_degC: 32.09716133224933, solar_W: 2794.49469425709, internal_W: 200.0, heating_W: 0, cooling_W: 3063.0491181983775, air_degC: 24.00000000000002, surface_degC: 26.32739643096707, mass_degC: 26.96478187009877, massEnd_degC: 27.08528462939058 },
          { hour: 4390, outdoor_degC: 24.771653673846636, solar_W: 0.0, internal_W: 350.0, heating_W: 0, cooling_W: 1229.5470612150857, air_degC: 24.00000000000001, surface_degC: 24.88496237129097, mass_degC: 25.45023849179035, massEnd_degC: 25.318166455796682 },
          { hour: 5000, outdoor_degC: 25.386636066319404, solar_W: 1605.6687411549533, internal_W: 200.0, heating_W: 0, cooling_W: 799.3825117358498, air_degC: 24.000000000000004, surface_degC: 24.563427992002538, mass_degC: 24.492702532340516, massEnd_degC: 24.655888724729337 },
          { hour: 8759, outdoor_degC: 0.7071001896325129, solar_W: 0.0, internal_W: 350.0, heating_W: 1937.9407109978176, cooling_W: 0, air_degC: 20.00000000000001, surface_degC: 18.70323820822329, mass_degC: 18.509129624476437, massEnd_degC: 18.416082093880025 },
        ],
      },
      place: 'run B_film_g_0.45',
    },
    {
      given: { windowArea_m2: 12, opaqueToMass_W_K: 60.0, floor_m2: 75, volume_m3: 187.5, facingArea_m2: 337.5, windowU_W_m2K: 3.0, airChange_1_h: 0.5001, capacity_J_m2K: 110000, heatingSetPoint_degC: 20, coolingSetPoint_degC: 24, solarHeatGain: 0.6 },
      expect: {
        heating_kWh: 2798.2535207178707, cooling_kWh: 5720.9295548506725, peakHeating_W: 2231.742975837748, peakCooling_W: 4194.227473259865,
        coolingHours: 3578, finalMass_degC: 18.680249258910955,
        monthlyCooling_kWh: [0.0, 0.0, 6.466896342036072, 203.84157194463822, 689.7403650802621, 1108.2928014002314, 1357.8644012854252, 1231.9017246474946, 795.9684631533551, 308.25867733572846, 18.59465366151298, 0.0],
        hours: [
          { hour: 0, outdoor_degC: -0.5384484972734516, solar_W: 0.0, internal_W: 350.0, heating_W: 927.6757472492338, cooling_W: 0, air_degC: 20.000000000000004, surface_degC: 19.6043191700214, mass_degC: 19.71490804849161, massEnd_degC: 19.429816096983213 },
          { hour: 1, outdoor_degC: -1.4948624214076265, solar_W: 0.0, internal_W: 350.0, heating_W: 1315.2851042861585, cooling_W: 0, air_degC: 20.0, surface_degC: 19.297102470658476, mass_degC: 19.21173861991026, massEnd_degC: 18.993661142837308 },
          { hour: 12, outdoor_degC: 7.912390581108892, solar_W: 2175.9622847034543, internal_W: 200.0, heating_W: 29.188011968384757, cooling_W: 0, air_degC: 19.999999999999993, surface_degC: 20.213526853402744, mass_degC: 20.041573967674513, massEnd_degC: 20.222679516674173 },
          { hour: 720, outdoor_degC: -1.0652819681920125, solar_W: 0.0, internal_W: 350.0, heating_W: 1768.1847757630494, cooling_W: 0, air_degC: 20.0, surface_degC: 18.89660714439528, mass_degC: 18.520424554553166, massEnd_degC: 18.425284490867842 },
          { hour: 3612, outdoor_degC: 26.747567562942237, solar_W: 4043.6322550610694, internal_W: 200.0, heating_W: 0, cooling_W: 2861.2860871987823, air_degC: 23.99999999999998, surface_degC: 26.297719745408088, mass_degC: 26.805364357836872, massEnd_degC: 27.117883956053905 },
          { hour: 4380, outdoor_degC: 30.53844849727345, solar_W: 4302.406037275498, internal_W: 200.0, heating_W: 0, cooling_W: 3574.9702284606383, air_degC: 24.00000000000001, surface_degC: 26.808891334507994, mass_degC: 27.53054242814153, massEnd_degC: 27.834892606495437 },
          { hour: 4381, outdoor_degC: 31.494862421407625, solar_W: 4155.805106586412, internal_W: 200.0, heating_W: 0, cooling_W: 3944.56053035136, air_degC: 23.999999999999968, surface_degC: 27.100632731544557, mass_degC: 28.04452895233213, massEnd_degC: 28.25416529816882 },
          { hour: 4382, outdoor_degC: 32.09716133224933, solar_W: 3725.99292567612, internal_W: 200.0, heating_W: 0, cooling_W: 4104.942565722485, air_degC: 24.000000000000004, surface_degC: 27.222205618320015, mass_degC: 28.34792738497427, massEnd_degC: 28.441689471779718 },
          { hour: 4390, outdoor_degC: 24.771653673846636, solar_W: 0.0, internal_W: 350.0, heating_W: 0, cooling_W: 1059.1463373304578, air_degC: 23.999999999999993, surface_degC: 24.738617144122195, mass_degC: 25.197583606475725, massEnd_degC: 25.042359220993635 },
          { hour: 5000, outdoor_degC: 25.386636066319404, solar_W: 2140.891654873271, internal_W: 200.0, heating_W: 0, cooling_W: 1041.647897451683, air_degC: 23.99999999999999, surface_degC: 24.771492735505117, mass_degC: 24.716680550463508, massEnd_degC: 25.017479189723474 },
          { hour: 8759, outdoor_degC: 0.7071001896325129, solar_W: 0.0, internal_W: 350.0, heating_W: 1503.7978587793855, cooling_W: 0, air_degC: 19.999999999999996, surface_degC: 19.07609304641409, mass_degC: 18.788786431343645, massEnd_degC: 18.680249258910955 },
        ],
      },
      place: 'run C_light_mass',
    },
    {
      given: { windowArea_m2: 24, opaqueToMass_W_K: 108.0, floor_m2: 75, volume_m3: 187.5, facingArea_m2: 337.5, windowU_W_m2K: 2.8, airChange_1_h: 0.8001, capacity_J_m2K: 165000, heatingSetPoint_degC: 20, coolingSetPoint_degC: 24, solarHeatGain: 0.7 },
      expect: {
        heating_kWh: 4563.727756342359, cooling_kWh: 11438.601186626003, peakHeating_W: 3757.052213346292, peakCooling_W: 7662.747514641137,
        coolingHours: 3992, finalMass_degC: 18.22596813753915,
        monthlyCooling_kWh: [0.0, 0.0, 83.08957231237912, 551.115195674666, 1398.3760117736908, 2119.996016620762, 2557.814217573243, 2329.751728578716, 1555.2967962102668, 717.1645930633281, 125.99705481894514, 0.0],
        hours: [
          { hour: 0, outdoor_degC: -0.5384484972734516, solar_W: 0.0, internal_W: 350.0, heating_W: 1622.718298642971, cooling_W: 0, air_degC: 20.0, surface_degC: 19.33812774365974, mass_degC: 19.625945881075594, massEnd_degC: 19.251891762151192 },
          { hour: 1, outdoor_degC: -1.4948624214076265, solar_W: 0.0, internal_W: 350.0, heating_W: 2160.177810904624, cooling_W: 0, air_degC: 19.999999999999993, surface_degC: 18.917616449216, mass_degC: 18.939576604652235, massEnd_degC: 18.627261447153277 },
          { hour: 12, outdoor_degC: 7.912390581108892, solar_W: 5077.245330974726, internal_W: 200.0, heating_W: 0, cooling_W: 0, air_degC: 20.176004453067705, surface_degC: 20.61680517550218, mass_degC: 20.135794757855493, massEnd_degC: 20.481517489509034 },
          { hour: 720, outdoor_degC: -1.0652819681920125, solar_W: 0.0, internal_W: 350.0, heating_W: 2807.488072473897, cooling_W: 0, air_degC: 19.999999999999982, surface_degC: 18.34323794649317, mass_degC: 17.933691575367092, massEnd_degC: 17.75101834994916 },
          { hour: 3612, outdoor_degC: 26.747567562942237, solar_W: 9435.141928475827, internal_W: 200.0, heating_W: 0, cooling_W: 5246.210478974075, air_degC: 24.00000000000004, surface_degC: 28.301719745382496, mass_degC: 28.937057628671546, massEnd_degC: 29.51549993862278 },
          { hour: 4380, outdoor_degC: 30.53844849727345, solar_W: 10038.947420309494, internal_W: 200.0, heating_W: 0, cooling_W: 6446.066981652256, air_degC: 23.99999999999998, surface_degC: 29.16938588640726, mass_degC: 30.132168284313522, massEnd_degC: 30.718914373536897 },
          { hour: 4381, outdoor_degC: 31.494862421407625, solar_W: 9696.878582034959, internal_W: 200.0, heating_W: 0, cooling_W: 7159.072019174496, air_degC: 24.000000000000046, surface_degC: 29.740660916984677, mass_degC: 31.162838504190354, massEnd_degC: 31.60676263484381 },
          { hour: 4382, outdoor_degC: 32.09716133224933, solar_W: 8693.983493244279, internal_W: 200.0, heating_W: 0, cooling_W: 7510.683262564875, air_degC: 23.999999999999986, surface_degC: 30.016768299468865, mass_degC: 31.862893096013877, massEnd_degC: 32.119023557183944 },
          { hour: 4390, outdoor_degC: 24.771653673846636, solar_W: 0.0, internal_W: 350.0, heating_W: 0, cooling_W: 2235.5954325297716, air_degC: 23.999999999999986, surface_degC: 25.736560752336626, mass_degC: 26.916282928880385, massEnd_degC: 26.603948572364136 },
          { hour: 5000, outdoor_degC: 25.386636066319404, solar_W: 4995.413861370965, internal_W: 200.0, heating_W: 0, cooling_W: 1886.0814061383824, air_degC: 24.00000000000001, surface_degC: 25.47438835113001, mass_degC: 25.222080016690953, massEnd_degC: 25.699033998877997 },
          { hour: 8759, outdoor_degC: 0.7071001896325129, solar_W: 0.0, internal_W: 350.0, heating_W: 2335.8911521222753, cooling_W: 0, air_degC: 19.999999999999986, surface_degC: 18.672141207961264, mass_degC: 18.430193344226694, massEnd_degC: 18.22596813753915 },
        ],
      },
      place: 'run E_heavy_big_east_west_glass',
    },
    {
      given: { windowArea_m2: 3, opaqueToMass_W_K: 60.0, floor_m2: 75, volume_m3: 187.5, facingArea_m2: 337.5, windowU_W_m2K: 1.2, airChange_1_h: 0.5001, capacity_J_m2K: 165000, heatingSetPoint_degC: 20, coolingSetPoint_degC: 28, solarHeatGain: 0.3 },
      expect: {
        heating_kWh: 3358.2397028533687, cooling_kWh: 552.936902249357, peakHeating_W: 1557.2254609312645, peakCooling_W: 793.2943693299005,
        coolingHours: 1385, finalMass_degC: 18.94466493268398,
        monthlyCooling_kWh: [0.0, 0.0, 0.0, 0.0, 0.0, 109.38040540285024, 247.30854870966226, 181.34204704860042, 14.905901088244569, 0.0, 0.0, 0.0],
        hours: [
          { hour: 0, outdoor_degC: -0.5384484972734516, solar_W: 0.0, internal_W: 350.0, heating_W: 568.1389942307017, cooling_W: 0, air_degC: 20.000000000000004, surface_degC: 19.91310006364977, mass_degC: 19.85148471528867, massEnd_degC: 19.702969430577344 },
          { hour: 1, outdoor_degC: -1.4948624214076265, solar_W: 0.0, internal_W: 350.0, heating_W: 789.8493187889659, cooling_W: 0, air_degC: 20.0, surface_degC: 19.74836240452617, mass_degC: 19.575997531014586, massEnd_degC: 19.449025631451825 },
          { hour: 12, outdoor_degC: 7.912390581108892, solar_W: 271.9952855879318, internal_W: 200.0, heating_W: 924.1456517936862, cooling_W: 0, air_degC: 20.0, surface_degC: 19.4449105229033, mass_degC: 18.99379817845606, massEnd_degC: 19.03910581909913 },
          { hour: 720, outdoor_degC: -1.0652819681920125, solar_W: 0.0, internal_W: 350.0, heating_W: 1273.4718579862192, cooling_W: 0, air_degC: 20.0, surface_degC: 19.321481362561098, mass_degC: 18.855998320773637, massEnd_degC: 18.811805716400418 },
          { hour: 3612, outdoor_degC: 26.747567562942237, solar_W: 505.45403188263367, internal_W: 200.0, heating_W: 0, cooling_W: 0, air_degC: 26.875782568204333, surface_degC: 26.793341361770167, mass_degC: 26.579885722095426, massEnd_degC: 26.6832505143415 },
          { hour: 4380, outdoor_degC: 30.53844849727345, solar_W: 537.8007546594373, internal_W: 200.0, heating_W: 0, cooling_W: 417.81849472733427, air_degC: 28.0, surface_degC: 28.204810403765478, mass_degC: 28.1739565546561, massEnd_degC: 28.25378893999261 },
          { hour: 4381, outdoor_degC: 31.494862421407625, solar_W: 519.4756383233015, internal_W: 200.0, heating_W: 0, cooling_W: 549.3059907804749, air_degC: 27.999999999999986, surface_degC: 28.29206200512837, mass_degC: 28.323677087965947, massEnd_degC: 28.39356523593929 },
          { hour: 4382, outdoor_degC: 32.09716133224933, solar_W: 465.749115709515, internal_W: 200.0, heating_W: 0, cooling_W: 645.8419629319653, air_degC: 27.999999999999993, surface_degC: 28.358801987367336, mass_degC: 28.44878942655821, massEnd_degC: 28.504013617177133 },
          { hour: 4390, outdoor_degC: 24.771653673846636, solar_W: 0.0, internal_W: 350.0, heating_W: 0, cooling_W: 323.29107710302833, air_degC: 28.0, surface_degC: 28.21401788681469, mass_degC: 28.321866642011106, massEnd_degC: 28.278258279186154 },
          { hour: 5000, outdoor_degC: 25.386636066319404, solar_W: 267.61145685915886, internal_W: 200.0, heating_W: 0, cooling_W: 0, air_degC: 27.883694769750164, surface_degC: 27.864842330543816, mass_degC: 27.761702851458864, massEnd_degC: 27.796278315636947 },
          { hour: 8759, outdoor_degC: 0.7071001896325129, solar_W: 0.0, internal_W: 350.0, heating_W: 1124.788100500536, cooling_W: 0, air_degC: 20.0, surface_degC: 19.401597938118957, mass_degC: 18.987217361719935, massEnd_degC: 18.94466493268398 },
        ],
      },
      place: 'run G_no_cooling_needed_small_glass',
    },
    {
      given: { windowArea_m2: 12, opaqueToMass_W_K: 60.0, floor_m2: 75, volume_m3: 187.5, facingArea_m2: 337.5, windowU_W_m2K: 5.8, airChange_1_h: 0.5001, capacity_J_m2K: 165000, heatingSetPoint_degC: 20, coolingSetPoint_degC: 24, solarHeatGain: 0.8, heatingLimit_W: 750.0 },
      expect: {
        heating_kWh: 2180.1536580033303, cooling_kWh: 6878.279446042138, peakHeating_W: 750.0, peakCooling_W: 4762.5866317425225,
        coolingHours: 3691, finalMass_degC: 16.25037812710139,
        monthlyCooling_kWh: [0.0, 0.0, 0.14332282164198423, 201.49846926979376, 825.2117497620866, 1357.626045337537, 1670.7316055587528, 1512.8015539383582, 962.3275101544488, 340.06016871306514, 7.879020486454363, 0.0],
        hours: [
          { hour: 0, outdoor_degC: -0.5384484972734516, solar_W: 0.0, internal_W: 350.0, heating_W: 750.0, cooling_W: 0, air_degC: 19.372388874539805, surface_degC: 19.112453811181982, mass_degC: 19.69339385247679, massEnd_degC: 19.386787704953583 },
          { hour: 1, outdoor_degC: -1.4948624214076265, solar_W: 0.0, internal_W: 350.0, heating_W: 750.0, cooling_W: 0, air_degC: 18.724754621865944, surface_degC: 18.473108378352315, mass_degC: 19.07263846307621, massEnd_degC: 18.758489221198836 },
          { hour: 12, outdoor_degC: 7.912390581108892, solar_W: 2901.2830462712727, internal_W: 200.0, heating_W: 750.0, cooling_W: 0, air_degC: 18.527754876058022, surface_degC: 18.082706227851045, mass_degC: 17.45194361817355, massEnd_degC: 17.76776107136469 },
          { hour: 720, outdoor_degC: -1.0652819681920125, solar_W: 0.0, internal_W: 350.0, heating_W: 750.0, cooling_W: 0, air_degC: 15.458590855711444, surface_degC: 15.107736792331632, mass_degC: 15.484765035480418, massEnd_degC: 15.26089812088104 },
          { hour: 3612, outdoor_degC: 26.747567562942237, solar_W: 5391.50967341476, internal_W: 200.0, heating_W: 0, cooling_W: 3130.8466257770524, air_degC: 24.000000000000004, surface_degC: 26.52922638079471, mass_degC: 26.8888148664224, massEnd_degC: 27.242097195970267 },
          { hour: 4380, outdoor_degC: 30.53844849727345, solar_W: 5736.5413830339985, internal_W: 200.0, heating_W: 0, cooling_W: 3956.866068247657, air_degC: 24.000000000000018, surface_degC: 27.13687487914527, mass_degC: 27.695994119257968, massEnd_degC: 28.05367747195805 },
          { hour: 4381, outdoor_degC: 31.494862421407625, solar_W: 5541.07347544855, internal_W: 200.0, heating_W: 0, cooling_W: 4409.478780932793, air_degC: 24.000000000000007, surface_degC: 27.499918400320926, mass_degC: 28.330900025358154, massEnd_degC: 28.60812257875826 },
          { hour: 4382, outdoor_degC: 32.09716133224933, solar_W: 4967.990567568161, internal_W: 200.0, heating_W: 0, cooling_W: 4650.654097431442, air_degC: 24.00000000000003, surface_degC: 27.6908789681506, mass_degC: 28.7770617634741, massEnd_degC: 28.946000948189948 },
          { hour: 4390, outdoor_degC: 24.771653673846636, solar_W: 0.0, internal_W: 350.0, heating_W: 0, cooling_W: 1603.030297316636, air_degC: 23.999999999999996, surface_degC: 25.205720920814567, mass_degC: 26.002972444184802, massEnd_degC: 25.808504470985014 },
          { hour: 5000, outdoor_degC: 25.386636066319404, solar_W: 2854.522206497695, internal_W: 200.0, heating_W: 0, cooling_W: 1216.9076905449876, air_degC: 23.999999999999986, surface_degC: 24.922011076325987, mass_degC: 24.801901190401278, massEnd_degC: 25.075562690218902 },
          { hour: 8759, outdoor_degC: 0.7071001896325129, solar_W: 0.0, internal_W: 350.0, heating_W: 750.0, cooling_W: 0, air_degC: 16.494207109199486, surface_degC: 16.123575448999564, mass_degC: 16.456246788425027, massEnd_degC: 16.25037812710139 },
        ],
      },
      place: 'run H_heating_capped_10Wm2',
    },
  ],
};
