/** Anything that the writers of SVG and PDF and the page can show: shapes on paper with a name and words. */
import type { Theme } from './palette.ts';
import type { Shape } from './shapes.ts';

export interface Picture {
  readonly width_mm: number;
  readonly height_mm: number;
  /** Short name, read out in place of the picture. */
  readonly title: string;
  readonly theme: Theme;
  readonly shapes: readonly Shape[];
  /** The picture in words. */
  readonly description: readonly string[];
}
