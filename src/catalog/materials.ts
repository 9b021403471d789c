/** Typed access to content/tables/materials.json and the small look-ups that every layer needs. */
import * as v from 'valibot';
import json from '../../content/tables/materials.json' with { type: 'json' };
import { materialsTable, type BoardAtTemperature, type Material } from './schemas.ts';
import { boards as boardIds, isBoard, type BoardId } from './sets.ts';

export type { BoardAtTemperature, Material };

const table = v.parse(materialsTable, json);
const byId = new Map(table.rows.map((row) => [row.id, row]));

export const allMaterials = (): readonly Material[] => table.rows;

export const hasMaterial = (id: string): boolean => byId.has(id);

/** The material of an id. @throws RangeError when the table has no such id. */
export function material(id: string): Material {
  const found = byId.get(id);
  if (!found) throw new RangeError(`no material ${id} in materials.json`);
  return found;
}

export interface Board extends Material {
  readonly id: BoardId;
  readonly conductivity_W_mK: number;
  readonly soldThicknesses_m: number[];
}

/** One of the six boards of the case file. @throws RangeError when its row lacks what a board needs. */
export function board(id: BoardId): Board {
  const row = material(id);
  const { conductivity_W_mK, soldThicknesses_m } = row;
  if (!isBoard(row.id) || conductivity_W_mK === null || soldThicknesses_m === undefined) {
    throw new RangeError(`${id} needs a conductivity and the thicknesses sold`);
  }
  return { ...row, id: row.id, conductivity_W_mK, soldThicknesses_m };
}

/** The six boards, in the order of the closed set. */
export const boards = (): Board[] => boardIds.map(board);

/** Every series of polyisocyanurate against mean temperature, for the workings page. */
export const polyisocyanurateSeries = (): readonly BoardAtTemperature[] =>
  table.polyisocyanurateByTemperature;

const design = table.polyisocyanurateByTemperature
  .filter((row) => row.series === 'design')
  .sort((a, b) => a.meanTemperature_C - b.meanTemperature_C);

/** [°C] mean temperature at which boards are rated: 75 °F. @source ASTM-C1289 (memory) */
const RATING_C = 23.8889;

/**
 * Thermal resistivity of the polyisocyanurate core at a mean temperature: linear between table rows
 *
 * @param meanTemperature_C [°C] mean temperature of the board
 * @returns [m·K/W] resistance of one meter of board
 * @range held at the end values below 25 °F (-3.9 °C) and above 75 °F (23.9 °C)
 * @throws RangeError when the temperature is not finite or the design series is empty
 * @source FOAM-PRODUCER-NOTE design series of materials.json (seen)
 * @assumes the linear course between the three points is our proposal
 */
export function polyisocyanurateResistivity_mK_W(meanTemperature_C: number): number {
  const first = design[0];
  const last = design[design.length - 1];
  if (!Number.isFinite(meanTemperature_C) || !first || !last) {
    throw new RangeError('the mean temperature must be a finite number');
  }
  if (meanTemperature_C <= first.meanTemperature_C) return first.resistivity_mK_W;
  for (let i = 1; i < design.length; i += 1) {
    const colder = design[i - 1];
    const warmer = design[i];
    if (!colder || !warmer || meanTemperature_C > warmer.meanTemperature_C) continue;
    const share =
      (meanTemperature_C - colder.meanTemperature_C) / (warmer.meanTemperature_C - colder.meanTemperature_C);
    return colder.resistivity_mK_W + share * (warmer.resistivity_mK_W - colder.resistivity_mK_W);
  }
  return last.resistivity_mK_W;
}

const isPolyisocyanurate = (id: string): boolean =>
  id === 'polyisocyanurate' || id === 'polyisocyanurate-foil';

/**
 * Thermal resistance of one board: thickness over conductivity, corrected for cold in polyisocyanurate
 *
 * @param id board, or polyisocyanurate-foil
 * @param thickness_m [m] thickness, > 0
 * @param meanTemperature_C [°C] mean temperature of the board; the rated value when left out
 * @returns [m²·K/W] resistance without surface films
 * @range only polyisocyanurate is corrected; the other boards gain slightly in the cold, which is left out
 * @throws RangeError when the thickness is not > 0 or the material has no conductivity
 * @source FOAM-PRODUCER-NOTE design series (seen); ASHRAE-HOF-2017 chapter 26 table 1 for the others (memory)
 * @assumes a foil-faced board follows the same relative course as the permeable-faced one
 */
export function boardResistance(
  id: BoardId | 'polyisocyanurate-foil',
  thickness_m: number,
  meanTemperature_C?: number,
): number {
  const { conductivity_W_mK } = material(id);
  if (!(thickness_m > 0) || conductivity_W_mK === null) {
    throw new RangeError(`${id}: the thickness must be above 0 and the conductivity known`);
  }
  const rated = thickness_m / conductivity_W_mK;
  if (meanTemperature_C === undefined || !isPolyisocyanurate(id)) return rated;
  return (
    (rated * polyisocyanurateResistivity_mK_W(meanTemperature_C)) / polyisocyanurateResistivity_mK_W(RATING_C)
  );
}

/**
 * Thermal resistance of a material as it is used: by conductivity, or the fixed value of a sheet or film
 *
 * @param id material of materials.json
 * @param thickness_m [m] thickness; the row's own when left out
 * @returns [m²·K/W] resistance without surface films
 * @throws RangeError when the row has no thickness and none is given, or the thickness is not > 0
 * @source ASHRAE-HOF-2017 chapter 26 table 1 and the sources of the row (memory)
 * @assumes rated conductivity; use boardResistance for polyisocyanurate in winter
 */
export function materialResistance(id: string, thickness_m?: number): number {
  const row = material(id);
  if (row.conductivity_W_mK === null) return row.resistance_m2K_W ?? 0;
  const used_m = thickness_m ?? row.thickness_m;
  if (used_m === null || !(used_m > 0)) throw new RangeError(`${id}: the thickness must be above 0`);
  return used_m / row.conductivity_W_mK;
}
