/** What stands on a sheet already: figures keep off texts and marks always, off lines when they can. */
import { boxesOverlap, segmentHitsBox, type Box, type Segment } from './geometry.ts';
import { leaves, shapeBox, textBox, type Shape } from './shapes.ts';

/** [mm] Smaller circles are the dots at the ends of leaders. */
const LEAST_MARK_mm = 1;
/** [mm] Air between a figure and what stands beside it. */
const CLEARANCE_mm = 0.8;

export class Taken {
  readonly #boxes: Box[] = [];
  readonly #lines: Segment[] = [];
  constructor(shapes: readonly Shape[]) {
    this.add(shapes);
  }
  /** Texts, balloons and outlined areas take their place; areas without outline are paper behind figures. */
  add(shapes: readonly Shape[]): void {
    for (const shape of leaves(shapes)) {
      if (shape.kind === 'text') this.#boxes.push(textBox(shape));
      else if (shape.kind === 'line') this.#lines.push([shape.from, shape.to]);
      else if (shape.kind === 'circle' && shape.radius_mm >= LEAST_MARK_mm) this.#boxes.push(shapeBox(shape));
      else if (shape.kind === 'polygon' && shape.pen !== null) this.#boxes.push(shapeBox(shape));
    }
  }
  hasText(box: Box): boolean {
    return this.#boxes.some((other) => boxesOverlap(other, box, CLEARANCE_mm));
  }
  hasLine(box: Box): boolean {
    return this.#lines.some((segment) => segmentHitsBox(segment, box));
  }
}
