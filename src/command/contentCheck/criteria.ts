/** Criteria and sizes: anchors and lists rise, ids stand once, conditions can hold. */
import { conditionFaults, idFaults, tablePath } from './parts.ts';
import type { Fault } from './content.ts';
import type { Further } from './tables.ts';

const rises = (values: readonly number[]): boolean =>
  values.every((value, index) => index === 0 || value > (values[index - 1] ?? Infinity));

/** Values never fall along the anchors. */
const holdsUp = (values: readonly number[]): boolean =>
  values.every((value, index) => index === 0 || value >= (values[index - 1] ?? -Infinity));

export function criteriaFaults({ rows }: Further['criteria.json']): Fault[] {
  const file = tablePath('criteria.json');
  return [
    ...idFaults(
      file,
      rows.map(({ id }) => id),
    ),
    ...rows.flatMap(({ id, anchors, better, modifiers }) => {
      const values = anchors.map(([, value]) => (better === 'more' ? value : -value));
      return [
        ...(rises(anchors.map(([measure]) => measure))
          ? []
          : [{ file, path: id, rule: 'anchors-rise', hint: 'list anchors by rising measure, each once' }]),
        ...(holdsUp(values)
          ? []
          : [{ file, path: id, rule: 'anchors-turn', hint: `${better} is better, but a value turns back` }]),
        ...modifiers.flatMap(({ when }) => conditionFaults(file, id, when)),
      ];
    }),
  ];
}

export function sizeFaults(tables: Further): Fault[] {
  const faults = (name: keyof Further, list: readonly string[]): Fault[] => idFaults(tablePath(name), list);
  const { lengths_in } = tables['screws.json'].lengths;
  const windFaults = tables['wind-gcp.json'].rows.flatMap(({ above_deg, to_deg, points }, index) =>
    above_deg < to_deg && points[0][0] < points[1][0]
      ? []
      : [
          {
            file: tablePath('wind-gcp.json'),
            path: `rows[${index}]`,
            rule: 'ascending',
            hint: 'slopes and areas go from small to large',
          },
        ],
  );
  const holdIds = tables['sequence.json'].holds.map(({ id }) => id);
  return [
    ...faults(
      'dimensions.json',
      tables['dimensions.json'].rows.map(({ id }) => id),
    ),
    ...faults(
      'lumber.json',
      [...tables['lumber.json'].species, ...tables['lumber.json'].sizes].map(({ id }) => id),
    ),
    ...faults(
      'screws.json',
      tables['screws.json'].screws.map(({ id }) => id),
    ),
    ...faults('sequence.json', [...holdIds, ...tables['sequence.json'].steps.map(({ id }) => id)]),
    ...tables['sequence.json'].steps
      .filter(({ hold }) => hold !== undefined && !holdIds.includes(hold))
      .map(({ id, hold }) => ({
        file: tablePath('sequence.json'),
        path: id,
        rule: 'hold-exists',
        hint: `${String(hold)} is not among the hold points`,
      })),
    ...(rises(lengths_in)
      ? []
      : [
          {
            file: tablePath('screws.json'),
            path: 'lengths',
            rule: 'ascending',
            hint: 'list lengths from short to long',
          },
        ]),
    ...windFaults,
  ];
}
