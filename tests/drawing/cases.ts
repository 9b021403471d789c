/** Random roofs over the whole range of the case file, for the drawing's properties. */
import fc from 'fast-check';
import type { Case } from '../../src/case/case.ts';
import { boards, coverings, strategies } from '../../src/catalog/sets.ts';
import type { Candidate } from '../../src/evaluation/evaluation.ts';
import type { Sketch } from './fixture.ts';

const amount = (least: number, greatest: number) =>
  fc.double({ min: least, max: greatest, noNaN: true, noDefaultInfinity: true });

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

interface Wish {
  readonly member: { size: string; orientation: 'flat' | 'on-edge'; depth_m: number; width_m: number };
  readonly backSpan_m: number;
  readonly spacing_m: number;
}
/** The evaluation chooses no outrigger deeper than the boards. */
const fitting = ({ member, ...rest }: Wish, boards_m: number): Candidate['structure']['outrigger'] =>
  member.depth_m <= boards_m ? { ...member, ...rest } : null;

export const anySketch: fc.Arbitrary<Sketch> = fc
  .record({
    strategy: fc.constantFrom(...strategies),
    pitch: amount(2, 24),
    boards_m: fc.array(amount(0.019, 0.1524), { minLength: 1, maxLength: 4 }),
    board: fc.constantFrom(...boards),
    isVented: fc.boolean(),
    hasMat: fc.boolean(),
    panelOnOutriggers: fc.boolean(),
    fasciaLimit_m: fc.option(amount(0.1, 1.2), { nil: null }),
    ridgeLimit_m: fc.option(amount(0, 1.2), { nil: null }),
    kind: fc.constantFrom('new-roof' as const, 're-roof' as const),
    attic: fc.constantFrom('cathedral' as const, 'conditioned-attic' as const),
    rake_m: fc.oneof(fc.constant(0), amount(0, 1.2)),
    framing: fc.record({
      kind: fc.constantFrom('rafter' as const, 'truss' as const),
      depth_m: amount(0.0889, 0.302),
      spacing_m: amount(0.3, 0.9),
      width_m: amount(0.0381, 0.0889),
      deckThickness_m: amount(0.0119, 0.038),
    }),
    eave_m: fc.oneof(fc.constant(0), amount(0, 1.2)),
    cut: fc.constantFrom('plumb' as const, 'square' as const),
    look: fc.constantFrom('thin-edge' as const, 'exposed-tails' as const, 'no-preference' as const),
    wall: fc.record({
      airBarrier: fc.constantFrom(
        'exterior-membrane' as const,
        'taped-sheathing' as const,
        'interior' as const,
        'none' as const,
      ),
      exteriorInsulation_m: fc.oneof(fc.constant(0), amount(0.025, 0.2)),
      thickness_m: amount(0.1, 0.4),
    }),
    fill: fc.constantFrom('none' as const, 'glass-fiber-batt' as const, 'closed-cell-spray' as const),
    ceiling: fc.constantFrom(
      'gypsum' as const,
      'wood-boards' as const,
      'deck-in-view' as const,
      'none' as const,
    ),
    covering: fc.constantFrom(...coverings),
    outrigger: fc.option(
      fc.record({
        member: fc.constantFrom(
          { size: '2x4', orientation: 'flat' as const, depth_m: 0.0381, width_m: 0.0889 },
          { size: '2x4', orientation: 'on-edge' as const, depth_m: 0.0889, width_m: 0.0381 },
          { size: '2x6', orientation: 'on-edge' as const, depth_m: 0.1397, width_m: 0.0381 },
        ),
        backSpan_m: amount(0.3, 2.6),
        spacing_m: amount(0.3, 0.6096),
      }),
      { nil: null },
    ),
  })
  .map((r): Sketch => {
    const tails = r.framing.kind === 'truss' ? 'truss-tails' : 'rafter-tails';
    const isFlush =
      r.strategy === 'flush-outriggers' || (r.strategy === 'prebonded-panel' && r.panelOnOutriggers);
    const panelVent = r.isVented ? 'panel-gap' : 'unvented';
    const boardVent = r.isVented ? 'vented-furring' : r.hasMat ? 'drainage-mat' : 'unvented';
    return {
      strategy: r.strategy,
      pitch: r.pitch,
      boards_m: r.boards_m,
      board: r.board,
      ventilation: r.strategy === 'prebonded-panel' ? panelVent : boardVent,
      carrier: isFlush ? 'outriggers' : tails,
      fasciaLimit_m: r.fasciaLimit_m,
      ridgeLimit_m: r.ridgeLimit_m,
      outrigger: r.outrigger === null ? null : fitting(r.outrigger, sum(r.boards_m)),
      case: {
        framing: r.framing,
        project: { kind: r.kind },
        overhang: { eave_m: r.eave_m, rake_m: r.rake_m },
        profile: { cut: r.cut, look: r.look },
        wall: r.wall,
        belowDeck: { attic: r.attic, fill: r.fill, ceiling: r.ceiling },
        covering: { kind: r.covering },
      } satisfies Partial<Case>,
    };
  });

/** A steep square cut with a deep overhang on a phone: its edge figure once stood on the scale's words. */
export const steepSquare: Sketch = {
  strategy: 'rafter-overhang',
  pitch: 17.39857995140872,
  boards_m: [0.048204334472489466, 0.019],
  board: 'polyisocyanurate',
  ventilation: 'unvented',
  carrier: 'rafter-tails',
  case: {
    framing: { kind: 'rafter', depth_m: 0.19923782631302947, deckThickness_m: 0.01821236422500255 },
    overhang: { eave_m: 1.2 },
    profile: { cut: 'square', look: 'thin-edge' },
    wall: { airBarrier: 'exterior-membrane', exteriorInsulation_m: 0, thickness_m: 0.1 },
    belowDeck: { fill: 'none', ceiling: 'gypsum' },
    covering: { kind: 'asphalt-shingle' },
  },
};

/** The three strategies at one ordinary roof, for facts and golden files. */
export const ordinary = {
  'rafter-overhang': {
    strategy: 'rafter-overhang',
    pitch: 7,
    boards_m: [0.0635, 0.0635],
    fasciaLimit_m: 0.4064,
  },
  'flush-outriggers': { strategy: 'flush-outriggers', pitch: 7, boards_m: [0.0889, 0.0635] },
  'prebonded-panel': { strategy: 'prebonded-panel', pitch: 7, boards_m: [0.0508, 0.1016], board: 'eps' },
} as const satisfies Record<string, Sketch>;
