/** Layers in words. */
import type { Layer } from '../../evaluation/evaluation.ts';
import { show, type System } from '../../measures.ts';

/** [m] Sheets and coats thinner than this are called thin: a tape would show nothing. Our judgement. */
const THIN_m = 0.0015;

export const thicknessInWords = (layer: Layer, system: System): string =>
  layer.thickness_m < THIN_m ? 'thin' : show('length', layer.thickness_m, system);
