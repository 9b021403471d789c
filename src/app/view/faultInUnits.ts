/** A range fault of the case schema, said in the units that the reader types. */
import { words } from 'virtual:words';
import { fieldSchema } from '../../interview/validate.ts';
import { measureKinds, show, type MeasureKind, type System } from '../../measures.ts';

const kinds = new Map<string, MeasureKind>(
  Object.values(words.questions).flatMap(({ fields }) =>
    fields.flatMap(({ path, kind }): [string, MeasureKind][] =>
      (measureKinds as readonly string[]).includes(kind) ? [[path, kind as MeasureKind]] : [],
    ),
  ),
);

interface Limits {
  readonly pipe?: readonly { readonly type: string; readonly requirement?: unknown }[];
}

/** `2 ft is above 1.5 m` never: `59 1/16 in` both times. Messages that are not about a range stay as they are. */
export function faultInUnits(path: string, value: unknown, message: string, system: System): string {
  const kind = kinds.get(path);
  if (kind === undefined || typeof value !== 'number') return message;
  const limits = (fieldSchema(path) as Limits | undefined)?.pipe ?? [];
  const limit = (type: string): number | undefined =>
    limits.find((each) => each.type === type)?.requirement as number | undefined;
  const [least, greatest] = [limit('min_value'), limit('max_value')];
  if (least !== undefined && value < least) {
    return `${show(kind, value, system)} is below ${show(kind, least, system)}, the least that is taken here`;
  }
  if (greatest !== undefined && value > greatest) {
    return `${show(kind, value, system)} is above ${show(kind, greatest, system)}, the most that is taken here`;
  }
  return message;
}
