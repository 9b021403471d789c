/** Words for the closed sets of case and evaluation, as the record writes them. */
import type { Evaluation, Candidate, Deferral } from '../evaluation/evaluation.ts';
import type { BoardId, Ventilation } from '../catalog/sets.ts';

export { strategyNames } from '../catalog/sets.ts';

export const boardNames: Readonly<Record<BoardId, string>> = {
  polyisocyanurate: 'polyisocyanurate board',
  xps: 'extruded polystyrene board',
  eps: 'expanded polystyrene board',
  'graphite-eps': 'graphite polystyrene board',
  'stone-wool': 'stone wool board',
  'wood-fiber': 'wood fiber board',
};

export const ventilationNames: Readonly<Record<Ventilation, string>> = {
  unvented: 'unvented covering',
  'vented-furring': 'vented furring',
  'drainage-mat': 'drainage mat',
  'panel-gap': 'vented gap in the panel',
};

export const carrierNames: Readonly<Record<Candidate['carrier'], string>> = {
  'rafter-tails': 'rafter tails',
  'truss-tails': 'truss tails',
  outriggers: 'outriggers',
};

export const roleNames: Readonly<Record<Deferral['to'], string>> = {
  'structural-engineer': 'structural engineer',
  'code-official': 'code official',
  roofer: 'roofer',
  'energy-reviewer': 'energy reviewer',
  'fire-official': 'fire official',
  electrician: 'electrician',
  specialist: 'specialist',
  owner: 'owner',
};

export const governedNames: Readonly<Record<string, string>> = {
  wanted: 'the R above the deck that was asked for',
  'total-wanted': 'the total R that was asked for',
  table: 'the condensation-control table of the code',
  temperature: 'the deck temperature in the coldest months',
  ceiling: 'the ceiling R of the energy code',
  local: 'the local amendment',
};

export const basisNames: Readonly<Record<Evaluation['climate']['basis'], string>> = {
  own: 'your own monthly values',
  'weather-file': 'your weather file',
  place: 'the station of this place',
  county: 'the county',
  representative: 'a representative place of the zone',
};

export const climateNoteLead = 'About this place: ';

/** `Stone wool board on polyisocyanurate board, vented furring, vapor-open underlayment, outriggers`. */
export function variantName(candidate: Candidate): string {
  const board = boardNames[candidate.board];
  const boards =
    candidate.baseBoard === null ? board : `${board} over a base layer of ${boardNames[candidate.baseBoard]}`;
  return [
    boards,
    ventilationNames[candidate.ventilation.kind],
    `${candidate.underlayment} underlayment`,
    `overhang on ${carrierNames[candidate.carrier]}`,
  ].join(', ');
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** `asphalt-shingle` as `asphalt shingle`, for sets without words of their own. */
export const spaced = (id: string): string => id.replaceAll('-', ' ');
