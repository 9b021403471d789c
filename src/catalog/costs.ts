/** Editable defaults of cost, hours and embodied carbon from content/tables/costs.json. */
import * as v from 'valibot';
import json from '../../content/tables/costs.json' with { type: 'json' };
import { costsTable, type Carbon, type Cost } from './schemas.ts';
import type { BoardId } from './sets.ts';

export type { Carbon, Cost };

const table = v.parse(costsTable, json);

export const allCosts = (): readonly Cost[] => table.rows;
export const allCarbon = (): readonly Carbon[] => table.carbon;

/** A default by id. @throws RangeError when the table has no such row. */
export function cost(id: string): Cost {
  const found = table.rows.find((row) => row.id === id);
  if (!found) throw new RangeError(`no cost ${id} in costs.json`);
  return found;
}

/** Price of a board in USD per m² and m²·K/W: low, mid, high. @throws RangeError when missing. */
export const boardCost = (board: BoardId): Cost => cost(`board-${board}`);

/** Embodied carbon of a board in kg CO2e per m² at 1 m²·K/W. @throws RangeError when missing. */
export function boardCarbon(board: BoardId): Carbon {
  const found = table.carbon.find((row) => row.id === board);
  if (!found) throw new RangeError(`no carbon value for ${board} in costs.json`);
  return found;
}
