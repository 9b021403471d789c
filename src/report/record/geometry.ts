/** Geometry checks that trades forget, and the roof as it was taken for the quantities. */
import { geometryWords } from '../../catalog/record.ts';
import type { Candidate } from '../../evaluation/evaluation.ts';
import type { GeometryCheck } from '../../evaluation/takeoff.ts';
import type { Cell, Section, Table } from '../document.ts';
import { cell } from '../document.ts';
import { cautionLinks } from './closing.ts';
import type { Context } from './context.ts';
import { citationOf, cited, section } from './context.ts';

/** [in²/ft per m²/m] Net free area as vents are labelled: 1 in² = 0.00064516 m², 1 ft = 0.3048 m, exact. */
const IN2_PER_FT = 0.3048 / 0.00064516;
/** [mm² per m²] exact. */
const MM2_PER_M2 = 1e6;

/** [m] taller things are measured in feet, not in inches (our judgement). */
const TALL_m = 2;

function sizeText({ say, system }: Context, value: number, unit: GeometryCheck['unit']): string {
  if (unit === 'm') return say(value < TALL_m ? 'length' : 'span', value);
  return system === 'IP'
    ? `${say('ratio', value * IN2_PER_FT)} in² per ft`
    : `${say('count', value * MM2_PER_M2)} mm² per m`;
}

function rowOf(context: Context, check: GeometryCheck): Cell[] {
  const { what, onSite } = geometryWords(check.id);
  const { limit, meets, needsSite, unit } = check;
  const isOpen = needsSite || meets === false;
  return [
    cell(what),
    cell(sizeText(context, check.value, unit)),
    limit === null
      ? cell('measure on site', 'open')
      : cell(
          `at ${limit.sense} ${sizeText(context, limit.value, unit)}`,
          meets === true ? 'meets' : 'misses',
        ),
    cell(isOpen ? onSite : 'nothing left'),
    ...(context.role === 'builder' ? [] : [cell([cited(citationOf(check))])]),
  ];
}

/** The checks of the recommended candidate; no section where none were made. */
export function geometrySections(context: Context, best: Candidate): Section[] {
  const found = context.evaluation.geometryChecks.find(({ candidate }) => candidate === best.id);
  if (found === undefined) return [];
  const table: Table = {
    kind: 'table',
    id: 'geometry-table',
    caption: 'Sizes of the finished roof where it meets the rest of the house',
    columns: [
      { id: 'what', title: 'What', align: 'left', width: 2.6 },
      { id: 'value', title: 'Figure', align: 'left', width: 1.3 },
      { id: 'limit', title: 'Limit', align: 'left', width: 1.6 },
      { id: 'site', title: 'On site', align: 'left', width: 3.2 },
      ...(context.role === 'builder'
        ? []
        : [{ id: 'source', title: 'Source', align: 'left' as const, width: 2.2 }]),
    ],
    rows: found.checks.map((check) => rowOf(context, check)),
  };
  return [section(context, 'geometry', [table, ...cautionLinks(context, ['roof-breaks'])])];
}
