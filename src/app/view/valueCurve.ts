/** A value function as places on a small picture, 120 wide and 44 high. */
import { valueOfMeasure } from '../../judgement/criteria.ts';

type Place = readonly [number, number];
const [LEFT, RIGHT, TOP, BOTTOM] = [6, 114, 4, 40] as const;

export interface Curve {
  readonly line: string;
  readonly anchors: readonly Place[];
  readonly marks: readonly Place[];
}

/** The anchors joined by straight lines, and each measure on them; measures past the ends stand at the ends. */
export function curveOf(anchors: Parameters<typeof valueOfMeasure>[1], measures: readonly number[]): Curve {
  const least = anchors[0]?.[0] ?? 0;
  const most = anchors.at(-1)?.[0] ?? 1;
  const at = (measure: number): Place => {
    const within = Math.min(most, Math.max(least, measure));
    const x = LEFT + ((within - least) / (most - least)) * (RIGHT - LEFT);
    return [x, BOTTOM - valueOfMeasure(measure, anchors) * (BOTTOM - TOP)];
  };
  const places = anchors.map(([measure]) => at(measure));
  return { line: places.map(([x, y]) => `${x},${y}`).join(' '), anchors: places, marks: measures.map(at) };
}
