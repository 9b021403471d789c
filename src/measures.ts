/**
 * Quantities as people see and type them: `show` writes, `read` reads, both in inch-pound or SI.
 * Inside, every value is SI; this is the edge.
 */
export { measureKinds } from './measures/scales.ts';
export type { MeasureKind, System } from './measures/scales.ts';
export { show, unitOf } from './measures/show.ts';
export type { ShowOptions } from './measures/show.ts';
export { read } from './measures/read.ts';
export type { Reading } from './measures/read.ts';
