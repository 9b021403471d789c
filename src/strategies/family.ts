/** The families: which members each strategy has, before any is computed or excluded. */
import { boards, type BoardId, type StrategyId, type Ventilation } from '../catalog/sets.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { EdgeCarrier } from '../roof/geometry.ts';
import type { Underlayment, Variant } from '../roof/variant.ts';

export interface Strategy {
  readonly id: StrategyId;
  /** Every member of the family for a case; rules exclude later, with a reason. */
  variants(given: CompleteCase): Variant[];
}

export const underlayments: readonly Underlayment[] = ['vapor-open', 'vapor-tight'];

/** Tails of the framing that the roof has. */
export const tailsOf = (given: CompleteCase): EdgeCarrier =>
  given.framing.kind === 'truss' ? 'truss-tails' : 'rafter-tails';

/** The product of boards, ventilations, underlayments and carriers for one strategy. */
export const members = (
  strategy: StrategyId,
  cores: readonly (readonly [BoardId, BoardId | null])[],
  ventilations: readonly Ventilation[],
  carriers: readonly EdgeCarrier[],
): Variant[] =>
  cores.flatMap(([board, baseBoard]) =>
    ventilations.flatMap((ventilation) =>
      underlayments.flatMap((underlayment) =>
        carriers.map((carrier) => ({ strategy, board, baseBoard, ventilation, underlayment, carrier })),
      ),
    ),
  );

export const looseBoards = boards.map((board) => [board, null] as const);
export const layeredVentilations: readonly Ventilation[] = ['vented-furring', 'drainage-mat', 'unvented'];
