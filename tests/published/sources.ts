/** Where the published values were read; the reasons for their tolerances stand with the rows. */
import type { Published } from './rows.ts';

const READ = '2026-11-25';
export const CENGEL: Published = {
  publisher: 'McGraw-Hill',
  title: 'Cengel and Ghajar, Heat and Mass Transfer: solutions',
  edition: '5th',
  address: 'www.coursepaper.com/solution-manual/978-0073398198-chapter-3-part-7',
  read: READ,
  known: 'seen',
};
export const BOLES: Published = {
  publisher: 'McGraw-Hill',
  title: 'Cengel and Boles, Thermodynamics',
  edition: '5th',
  address: 'www.yumpu.com/en/document/view/41645095/thermodynamics/746',
  read: READ,
  known: 'seen',
};
export const MUSAAT: Published = {
  publisher: 'Fundacion MUSAAT',
  title: 'Principios en materia de eficiencia energetica en edificacion',
  edition: '1st',
  address: 'fundacionmusaat.musaat.es/static/ebooks/EFICIENCIA_ENERGETICA/104',
  read: READ,
  known: 'seen',
};
export const CTE: Published = {
  publisher: 'condensaciones, an open program after CTE DB-HE1 annex G',
  title: 'tests of wall, checks and psychrometrics',
  edition: 'main branch',
  address: 'github.com/pachi/condensaciones',
  read: READ,
  known: 'seen',
};
export const DIN: Published = {
  publisher: 'UvalR, an open program after DIN 4108-3 annex B.5',
  title: 'examples 1 and 4',
  edition: 'main branch',
  address: 'github.com/emunozh/UvalR',
  read: READ,
  known: 'seen-secondary',
};

export const LEHRBUCH: Published = {
  publisher: 'a German textbook',
  title: 'Lehrbuch der Bauphysik, section 13.2.5',
  edition: 'not named where it was read',
  address: 'through public notes on its pages 321 to 360',
  read: READ,
  known: 'seen-secondary',
};
export const DA_DB_HE: Published = {
  publisher: 'Ministerio de Fomento',
  title: 'DA DB-HE/1, table 2, air layers that are not ventilated',
  edition: 'as quoted in a public program',
  address: 'www.codigotecnico.org, through that program',
  read: READ,
  known: 'seen-secondary',
};
export const AWC_EXAMPLES: Published = {
  publisher: 'American Wood Council',
  title: 'Structural Wood Design Examples',
  edition: '2015/2018',
  address: 'awc.org, through a public set of notes that gives the printed pages',
  read: READ,
  known: 'seen-transcription',
};
export const HUD_GUIDE: Published = {
  publisher: 'HUD',
  title: 'Residential Structural Design Guide, as verified in an open finite element program',
  edition: '2nd, 2017',
  address: 'github.com/xcfem/xc, verif/tests/materials/awc_nds/rsdg_exemple_5_1.py',
  read: READ,
  known: 'seen-transcription',
};
export const SNOW_GUIDE: Published = {
  publisher: 'ASCE',
  title: 'Snow Loads: guide to the snow load provisions of ASCE 7-10',
  edition: '2010',
  address: 'what-when-how.com/Tutorial/topic-995b1cj0, Snow-Loads-35 and -54',
  read: READ,
  known: 'seen-primary',
};
export const SNOW_SHEET: Published = {
  publisher: 'an engineer',
  title: 'Roof snow load determination using ASCE 7-10',
  edition: '9 January 2012',
  address: 'de.scribd.com/document/440739599',
  read: READ,
  known: 'seen',
};
export const SLOPE_THREAD: Published = {
  publisher: 'Eng-Tips',
  title: 'thread on the slope factor of a slippery roof',
  edition: 'thread 165815',
  address: 'www.eng-tips.com',
  read: READ,
  known: 'seen',
};
export const WIND_SHEET: Published = {
  publisher: 'St. Lucie County, Florida, building file',
  title: "engineer's table of pressures on components and cladding",
  edition: 'ASCE 7-10',
  address: 'documents.stlucieco.gov/WebLink, document 891767',
  read: READ,
  known: 'seen',
};
export const IRC_WIND: Published = {
  publisher: 'ICC',
  title: 'International Residential Code, table R301.2(2)',
  edition: '2018',
  address: 'online.flipbuilder.com/mewf/mima/files/basic-html/page58.html',
  read: READ,
  known: 'seen-primary',
};
export const WIND_GUIDE: Published = {
  publisher: 'ASCE',
  title: 'Wind Loads: guide to the wind load provisions of ASCE 7-16, chapter 8',
  edition: '2020',
  address: 'www.scribd.com/document/555899864',
  read: READ,
  known: 'seen',
};
