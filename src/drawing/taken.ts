/** What stands on a sheet already: figures keep off texts always, off lines when they can. */
import { boxesOverlap, segmentHitsBox, type Box, type Segment } from './geometry.ts';
import { leaves, textBox, type Shape } from './shapes.ts';

export class Taken {
  readonly #boxes: Box[];
  readonly #lines: Segment[];
  constructor(shapes: readonly Shape[]) {
    this.#boxes = [];
    this.#lines = [];
    this.add(shapes);
  }
  add(shapes: readonly Shape[]): void {
    for (const shape of leaves(shapes)) {
      if (shape.kind === 'text') this.#boxes.push(textBox(shape));
      if (shape.kind === 'line') this.#lines.push([shape.from, shape.to]);
    }
  }
  hasText(box: Box): boolean {
    return this.#boxes.some((other) => boxesOverlap(other, box, 0.8));
  }
  hasLine(box: Box): boolean {
    return this.#lines.some((segment) => segmentHitsBox(segment, box));
  }
}
