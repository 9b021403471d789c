/** The layers of a variant, inside to outside. */
import { covering } from '../catalog/coverings.ts';
import { dimension } from '../catalog/dimensions.ts';
import { boardResistance, material, materialResistance } from '../catalog/materials.ts';
import { permeance, permeanceDoubt } from '../catalog/vapor.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Layer } from '../evaluation/evaluation.ts';
import type { BoardStack } from './boards.ts';
import { once } from './memo.ts';
import type { Variant } from './variant.ts';

/** [m/s²] standard gravity, to turn a covering's weight into mass (BIPM SI brochure, 9th edition). */
const GRAVITY = 9.80665;

/** Dry-cup and wet-cup permeance of a layer; null where vapor is no obstacle or no value is known. */
function permeanceOf(id: string, thickness_m?: number): Pick<Layer, 'permeance_ng' | 'permeanceWet_ng'> {
  const value = permeance(id, thickness_m);
  return value.kind === 'permeance' && Number.isFinite(value.dry_ng_Pasm2)
    ? { permeance_ng: value.dry_ng_Pasm2, permeanceWet_ng: value.wet_ng_Pasm2 }
    : { permeance_ng: null, permeanceWet_ng: null };
}

/** Name of the vent channels of a panel, which tells them from the space between furring. */
const PANEL_GAP_NAME = 'vent channels of the panel';
/**
 * Whether a layer is the vent channels of a prebonded panel.
 *
 * @param layer [-] any layer
 * @returns [-] true for the channels, false for the space between furring
 * @source OUR-JUDGEMENT name of the layer, which assemble gives
 */
export const isPanelGap = (layer: Layer): boolean => layer.name === PANEL_GAP_NAME;

interface Draft {
  readonly id: string;
  readonly role: Layer['role'];
  readonly material: string;
  readonly thickness_m: number;
  readonly question: string;
  readonly why: string;
}

function layerOf(draft: Draft, resistance_m2K_W: number): Layer {
  const { density_kg_m3, name } = material(draft.material);
  const used_m = draft.thickness_m > 0 ? draft.thickness_m : undefined;
  return {
    ...draft,
    name,
    resistance_m2K_W,
    winterResistance_m2K_W: resistance_m2K_W,
    ...permeanceOf(draft.material, used_m),
    permeanceDoubt: permeanceDoubt(draft.material, used_m),
    mass_kg_m2: (density_kg_m3 ?? 0) * draft.thickness_m,
  };
}

const plain = (draft: Draft): Layer =>
  layerOf(draft, materialResistance(draft.material, draft.thickness_m > 0 ? draft.thickness_m : undefined));

/** An air space or mat that counts for nothing thermally and lets vapor pass. */
const open = (draft: Omit<Draft, 'material'>, name: string): Layer => ({
  ...draft,
  material: null,
  name,
  resistance_m2K_W: 0,
  winterResistance_m2K_W: 0,
  permeance_ng: null,
  permeanceWet_ng: null,
  permeanceDoubt: null,
  mass_kg_m2: 0,
});

/** [m] thickness of a membrane for the drawing and the build-up. */
const sheet_m = (id: string): number => material(id).thickness_m ?? 0;

/**
 * Thermal resistance of what fills the cavity.
 *
 * R = the user's, else depth / conductivity; 0 without a fill
 *
 * @param given  [m, m²·K/W] the complete case
 * @returns      [m²·K/W] of the cavity alone, framing left out
 * @source       ASHRAE-HOF-2017 chapter 26 table 1, through materials.json (memory)
 * @assumes      rated conductivity; batts not compressed
 */
export function fillResistance_m2K_W(given: CompleteCase): number {
  const { fill, fillResistance_m2K_W } = given.belowDeck;
  if (fill === 'none') return 0;
  if (fillResistance_m2K_W !== undefined) return fillResistance_m2K_W;
  const depth_m = fillDepth_m(given);
  return depth_m > 0 ? materialResistance(fill, depth_m) : 0;
}

/**
 * Depth of the fill: the user's, else the framing's.
 *
 * @param given  [m] the complete case
 * @returns      [m] 0 without a fill
 * @source       OUR-JUDGEMENT cavities are taken as full
 */
export const fillDepth_m = (given: CompleteCase): number =>
  given.belowDeck.fill === 'none' ? 0 : (given.belowDeck.fillDepth_m ?? given.framing.depth_m);

function belowDeckLayers(given: CompleteCase): Layer[] {
  const { ceiling, interiorRetarder, fill } = given.belowDeck;
  const layers: Layer[] = [];
  const question = 'below-deck';
  if (ceiling === 'gypsum' || ceiling === 'wood-boards') {
    layers.push(
      plain({
        id: 'ceiling',
        role: 'ceiling',
        material: ceiling,
        thickness_m: dimension(ceiling === 'gypsum' ? 'gypsum_m' : 'wood-ceiling_m'),
        question,
        why: 'Finishes the room and slows fire and air.',
      }),
    );
  }
  if (interiorRetarder !== 'none') {
    layers.push({
      ...plain({
        id: 'interior-retarder',
        role: 'interior-retarder',
        material: interiorRetarder,
        thickness_m: sheet_m(interiorRetarder),
        question,
        why: 'Sets how fast room vapor gets in, and how fast the deck can dry inward.',
      }),
      resistance_m2K_W: 0,
      winterResistance_m2K_W: 0,
    });
  }
  if (fill !== 'none') {
    layers.push(
      layerOf(
        {
          id: 'cavity',
          role: 'cavity',
          material: fill,
          thickness_m: fillDepth_m(given),
          question,
          why: 'Adds R below the deck, which makes the deck colder.',
        },
        fillResistance_m2K_W(given),
      ),
    );
  }
  return layers;
}

/** Fibrous boards dry outward, so the membrane under them stays open to vapor. */
const membraneOf = (variant: Variant): string =>
  material(variant.board).airPermeable ? 'self-adhered-vapor-open' : 'self-adhered-bitumen';

const deckLayers = (given: CompleteCase, variant: Variant): Layer[] => [
  plain({
    id: 'deck',
    role: 'deck',
    material: given.framing.deck,
    thickness_m: given.framing.deckThickness_m,
    question: 'deck',
    why: 'The structural deck; its underside is the first cold surface that room air can reach.',
  }),
  plain({
    id: 'air-barrier',
    role: 'air-barrier',
    material: membraneOf(variant),
    thickness_m: sheet_m(membraneOf(variant)),
    question: 'wall',
    why: 'The air barrier: fully adhered, lapped to the wall at every edge.',
  }),
];

const boardLayers = (stack: BoardStack): Layer[] =>
  stack.map(({ board, thickness_m }, index) =>
    layerOf(
      {
        id: `insulation-${index + 1}`,
        role: 'insulation',
        material: board,
        thickness_m,
        question: 'insulation',
        why:
          index === 0
            ? 'Keeps the deck warm; the first layer.'
            : 'Joints offset from the layer below, so that no gap goes through.',
      },
      boardResistance(board, thickness_m),
    ),
  );

/** Lapped metal on furring goes on cross battens and needs no second deck. */
const needsUpperDeck = (given: CompleteCase, variant: Variant): boolean =>
  !(given.covering.kind === 'metal-panel' && variant.ventilation === 'vented-furring');

function aboveBoardLayers(given: CompleteCase, variant: Variant): Layer[] {
  const { ventilation, underlayment } = variant;
  const question = 'venting';
  const layers: Layer[] = [];
  const gap = (thickness_m: number, name: string): void => {
    layers.push(
      open(
        {
          id: 'vent-gap',
          role: 'vent-gap',
          thickness_m,
          question,
          why: 'Carries water and heat away from the nailing deck, from eave to ridge.',
        },
        name,
      ),
    );
  };
  if (ventilation === 'vented-furring') {
    const battens_m = needsUpperDeck(given, variant) ? 0 : dimension('batten-height_m');
    gap(
      dimension('furring-height_m') + battens_m,
      battens_m > 0 ? 'vented space: furring and cross battens' : 'vented space between furring',
    );
  }
  if (ventilation === 'panel-gap') gap(dimension('panel-gap_m'), PANEL_GAP_NAME);
  if (needsUpperDeck(given, variant)) {
    const isPanel = variant.strategy === 'prebonded-panel';
    layers.push(
      plain({
        id: 'upper-deck',
        role: 'upper-deck',
        material: isPanel ? 'osb' : 'plywood',
        thickness_m: dimension(isPanel ? 'panel-top-sheet_m' : 'upper-deck_m'),
        question: 'covering',
        why: 'Holds the nails of the covering; insulation board does not.',
      }),
    );
  }
  const sheet = underlayment === 'vapor-open' ? 'vapor-open-underlayment' : 'synthetic-underlayment';
  layers.push({
    ...plain({
      id: 'underlayment',
      role: 'underlayment',
      material: sheet,
      thickness_m: sheet_m(sheet),
      question,
      why:
        underlayment === 'vapor-open'
          ? 'Sheds water and lets vapor out.'
          : 'Sheds water; lets next to no vapor through.',
    }),
    resistance_m2K_W: 0,
    winterResistance_m2K_W: 0,
  });
  if (ventilation === 'drainage-mat') {
    layers.push(
      open(
        {
          id: 'drainage-mat',
          role: 'drainage-mat',
          thickness_m: dimension('drainage-mat_m'),
          question,
          why: 'A thin drained space that lets vapor out under the covering.',
        },
        'drainage mat',
      ),
    );
  }
  return layers;
}

function coveringLayer(given: CompleteCase): Layer {
  const { kind } = given.covering;
  const { material: id, weight_Pa } = covering(kind);
  const row = material(id);
  const thickness_m = row.thickness_m ?? dimension(`${kind}_m`);
  return {
    ...plain({
      id: 'covering',
      role: 'covering',
      material: id,
      thickness_m,
      question: 'covering',
      why: 'Keeps the weather out.',
    }),
    mass_kg_m2: weight_Pa / GRAVITY,
  };
}

/**
 * All layers of a variant with a given board stack.
 *
 * @param given    [-] the complete case
 * @param variant  [-] what distinguishes this member of the family
 * @param stack    [m] boards, inside first
 * @returns        [-] layers from inside to outside, labelled resistance; winter values are set by thermal.ts
 * @source         COMMON-PRACTICE order of the layers (common practice); sizes of dimensions.json
 * @assumes        the membrane under fibrous board is open to vapor, under foam it is not
 */
export const assemble = (given: CompleteCase, variant: Variant, stack: BoardStack): Layer[] => {
  const { strategy, ventilation, underlayment } = variant;
  // Every stack that is tried lies between the same layers.
  return [
    ...once(given, 'layers/below-deck', () => belowDeckLayers(given)),
    ...once(given, `layers/deck/${membraneOf(variant)}`, () => deckLayers(given, variant)),
    ...boardLayers(stack),
    ...once(given, `layers/above/${strategy}/${ventilation}/${underlayment}`, () =>
      aboveBoardLayers(given, variant),
    ),
    once(given, 'layers/covering', () => coveringLayer(given)),
  ];
};

const belowDeck = new Set<Layer['role']>(['ceiling', 'interior-retarder', 'cavity']);

/**
 * The deck and all that lies on it: what the fascia and the ridge grow by.
 *
 * @param layers  [-] inside to outside
 * @returns       [-] those above the framing's top face, same order
 * @source        COMMON-PRACTICE the deck lies on the framing (common practice)
 */
export const layersAboveFraming = (layers: readonly Layer[]): Layer[] =>
  layers.filter((layer) => !belowDeck.has(layer.role));

/**
 * The boards above the deck.
 *
 * @param layers  [-] inside to outside
 * @returns       [-] insulation layers, same order
 * @source        OUR-JUDGEMENT roles of the evaluation
 */
export const insulationLayers = (layers: readonly Layer[]): Layer[] =>
  layers.filter((layer) => layer.role === 'insulation');
