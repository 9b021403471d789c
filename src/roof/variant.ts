/** One member of a strategy's family, before anything is computed. */
import type { BoardId, StrategyId, Ventilation } from '../catalog/sets.ts';
import type { EdgeCarrier } from './geometry.ts';

export type Underlayment = 'vapor-open' | 'vapor-tight';

export interface Variant {
  readonly strategy: StrategyId;
  readonly board: BoardId;
  /** Board of the layer under a prebonded panel; null when the panel lies on the deck alone, or without a panel. */
  readonly baseBoard: BoardId | null;
  readonly ventilation: Ventilation;
  readonly underlayment: Underlayment;
  readonly carrier: EdgeCarrier;
}

/** A readable id that never changes for the same variant: `prebonded-panel/eps-on-eps/panel-gap/vapor-tight/rafter-tails`. */
export const variantId = (variant: Variant): string =>
  [
    variant.strategy,
    variant.baseBoard === null ? variant.board : `${variant.board}-on-${variant.baseBoard}`,
    variant.ventilation,
    variant.underlayment,
    variant.carrier,
  ].join('/');
