/** Published worked examples of snow, computed by the functions. */
import { slopeFactor } from '../../src/structure/snow.ts';
import { driftHeight, snowDensity, unbalancedSnow } from '../../src/structure/snowDrift.ts';
import {
  METERS_PER_FOOT,
  NEWTONS_PER_POUND,
  metersFromFeet,
  pascalsFromPsf,
  psfFromPascals,
} from '../../src/units.ts';
import { publishedValues, type PublishedValue } from './rows.ts';
import { SLOPE_THREAD, SNOW_GUIDE, SNOW_SHEET } from './sources.ts';

const PCF = NEWTONS_PER_POUND / METERS_PER_FOOT ** 3;
const degrees = (rise: number): number => (Math.atan(rise / 12) * 180) / Math.PI;

/** A roof of half an inch in twelve, 130 ft from eave to ridge. */
const wide = unbalancedSnow({
  groundSnow_Pa: pascalsFromPsf(30),
  sloped_Pa: pascalsFromPsf(25),
  eaveToRidge_m: metersFromFeet(130),
  // A hair above half on twelve: the rule begins there.
  angle_deg: degrees(0.5) + 1e-6,
  importanceFactor: 1,
});
const house = unbalancedSnow({
  groundSnow_Pa: pascalsFromPsf(20),
  sloped_Pa: pascalsFromPsf(14.784),
  eaveToRidge_m: metersFromFeet(50),
  angle_deg: degrees(5),
  importanceFactor: 1,
});
const snow: PublishedValue[] = [
  {
    id: 'PUB-S2-hd',
    what: 'drift height, 130 ft, 30 psf',
    source: SNOW_GUIDE,
    place: 'example 6-2',
    unit: 'ft',
    computed: driftHeight(pascalsFromPsf(30), metersFromFeet(130), 1) / METERS_PER_FOOT,
    printed: 3.97,
    tolerance: 0.01,
    why: 'Printed to two decimals, cut: 3.978.',
  },
  {
    id: 'PUB-S2-density',
    what: 'weight of snow, 30 psf',
    source: SNOW_GUIDE,
    place: 'example 6-2',
    unit: 'pcf',
    computed: snowDensity(pascalsFromPsf(30)) / PCF,
    printed: 17.9,
    tolerance: 0.05,
    why: 'Printed to one decimal.',
  },
  {
    id: 'PUB-S2-windward',
    what: 'windward load',
    source: SNOW_GUIDE,
    place: 'example 6-2',
    unit: 'psf',
    computed: psfFromPascals(wide.windward_Pa),
    printed: 7.5,
    tolerance: 1e-6,
    why: 'A product of 0.3 and 25, exact.',
  },
  {
    id: 'PUB-S2-surcharge',
    what: 'surcharge',
    source: SNOW_GUIDE,
    place: 'example 6-2',
    unit: 'psf',
    computed: psfFromPascals(wide.surcharge_Pa),
    printed: 14.5,
    tolerance: 0.05,
    why: 'Printed to one decimal.',
  },
  {
    id: 'PUB-S3-hd',
    what: 'drift height, 50 ft, 20 psf',
    source: SNOW_SHEET,
    place: 'unbalanced load',
    unit: 'ft',
    computed: house.driftHeight_m / METERS_PER_FOOT,
    printed: 2.21,
    tolerance: 0.005,
    why: 'Printed to two decimals; the 2010 edition has no root of the importance factor, so it is 1 here.',
  },
  {
    id: 'PUB-S3-density',
    what: 'weight of snow, 20 psf',
    source: SNOW_SHEET,
    place: 'unbalanced load',
    unit: 'pcf',
    computed: snowDensity(pascalsFromPsf(20)) / PCF,
    printed: 16.6,
    tolerance: 0.05,
    why: 'Printed to one decimal.',
  },
  {
    id: 'PUB-S3-windward',
    what: 'windward load',
    source: SNOW_SHEET,
    place: 'unbalanced load',
    unit: 'psf',
    computed: psfFromPascals(house.windward_Pa),
    printed: 4.4,
    tolerance: 0.05,
    why: 'Printed to one decimal.',
  },
  {
    id: 'PUB-S3-surcharge',
    what: 'surcharge',
    source: SNOW_SHEET,
    place: 'unbalanced load',
    unit: 'psf',
    computed: psfFromPascals(house.surcharge_Pa),
    printed: 23.7,
    tolerance: 0.05,
    why: 'Printed to one decimal.',
  },
  {
    id: 'PUB-S3-extent',
    what: 'width of the surcharge',
    source: SNOW_SHEET,
    place: 'unbalanced load',
    unit: 'ft',
    computed: house.surchargeExtent_m / METERS_PER_FOOT,
    printed: 9.12,
    tolerance: 0.02,
    why: 'Printed to two decimals from a drift height of two: 0.005 ft times 8/3 and 1.55 is 0.02.',
  },
  {
    id: 'PUB-S11-slope',
    what: 'slope factor of a cool slippery roof at 6 on 12',
    source: SLOPE_THREAD,
    place: 'equation C7.4-2a',
    unit: '',
    computed: slopeFactor(degrees(6), 1.1, true),
    printed: 0.72,
    tolerance: 0.005,
    why: 'Printed to two decimals.',
  },
];

publishedValues('published examples of snow', snow);
