/** Clashes about boards, venting, drying and the people who do the work. */
import { boards, ventilations, type BoardId, type Ventilation } from '../catalog/sets.ts';
import { show } from '../measures.ts';
import type { Answers } from './answers.ts';
import type { ContradictionRule } from './contradictions.ts';
import { hasCeiling } from './guards.ts';

/** Boards that are no plastic foam. */
const foamFreeBoards: readonly BoardId[] = ['stone-wool', 'wood-fiber'];
/** Ways with a real vented gap; a drainage mat lets a covering dry but does not vent it. */
const ventedWays: readonly Ventilation[] = ['vented-furring', 'panel-gap'];
/** [0 to 100] weight from which a wish counts as strong; our judgement. */
const STRONG_WISH = 70;

const refusedBoards = ({ insulation }: Answers): readonly BoardId[] => insulation?.refusedBoards ?? [];
const refusedWays = ({ covering }: Answers): readonly Ventilation[] => covering?.refusedVentilations ?? [];

export const layerContradictions: readonly ContradictionRule[] = [
  {
    id: 'no-board-left',
    questions: ['insulation'],
    clash: (answers) => {
      const isFoamFree = answers.insulation?.foamFree === true;
      const left = (isFoamFree ? foamFreeBoards : boards).filter(
        (board) => !refusedBoards(answers).includes(board),
      );
      if (left.length > 0) return undefined;
      return isFoamFree
        ? 'The roof must be free of plastic foam, but both boards that are (stone wool and wood fiber) are refused. Only foam boards are left.'
        : 'Every board is refused. At least one must be allowed.';
    },
  },
  {
    id: 'stock-is-foam',
    questions: ['insulation'],
    clash: ({ insulation }) => {
      const board = insulation?.stock?.board;
      return insulation?.foamFree === true && board !== undefined && !foamFreeBoards.includes(board)
        ? 'The roof must be free of plastic foam, but the board in stock is foam.'
        : undefined;
    },
  },
  {
    id: 'stock-is-refused',
    questions: ['insulation'],
    clash: (answers) => {
      const board = answers.insulation?.stock?.board;
      return board !== undefined && refusedBoards(answers).includes(board)
        ? 'The board in stock is one of those you do not want.'
        : undefined;
    },
  },
  {
    id: 'stock-half-described',
    questions: ['insulation'],
    clash: ({ insulation }) => {
      const stock = insulation?.stock;
      return stock?.board !== undefined && (stock.thickness_m === undefined || stock.area_m2 === undefined)
        ? 'The board in stock counts only when its thickness and its area are given as well.'
        : undefined;
    },
  },
  {
    id: 'part-above-whole',
    questions: ['insulation'],
    clash: ({ insulation }, system) => {
      const part = insulation?.aboveDeckTarget_m2K_W;
      const whole = insulation?.totalTarget_m2K_W;
      if (part === undefined || whole === undefined || part <= whole) return undefined;
      return `${show('resistance', part, system)} is wanted above the deck but only ${show('resistance', whole, system)} for the whole roof. The part cannot be more than the whole.`;
    },
  },
  {
    id: 'plastic-sheet-and-drying',
    questions: ['below-deck', 'priorities'],
    clash: (answers) =>
      hasCeiling(answers) &&
      answers.belowDeck?.interiorRetarder === 'polyethylene' &&
      (answers.priorities?.['drying'] ?? 0) >= STRONG_WISH
        ? 'Drying matters much to you, but the plastic sheet behind the ceiling stops the roof from drying to the inside. It can then dry outward only.'
        : undefined,
  },
  {
    id: 'vented-but-refused',
    questions: ['venting'],
    clash: (answers) =>
      answers.covering?.ventWish === 'vented' && ventedWays.every((way) => refusedWays(answers).includes(way))
        ? 'A vented covering is wanted, but both ways to vent it (furring and a panel gap) are refused.'
        : undefined,
  },
  {
    id: 'unvented-but-refused',
    questions: ['venting'],
    clash: (answers) =>
      answers.covering?.ventWish === 'unvented' &&
      ['unvented', 'drainage-mat'].every((way) => (refusedWays(answers) as readonly string[]).includes(way))
        ? 'A covering without a vented gap is wanted, but both ways without one are refused.'
        : undefined,
  },
  {
    id: 'no-way-left',
    questions: ['venting'],
    clash: (answers) =>
      ventilations.every((way) => refusedWays(answers).includes(way))
        ? 'Every way to lay the covering is refused. At least one must be allowed.'
        : undefined,
  },
  {
    id: 'panel-crew-without-panel',
    questions: ['crew', 'venting'],
    clash: (answers) => {
      const { work } = answers;
      if (work?.crew !== 'panel-crew') return undefined;
      if (work.panelSupply === 'not-available') {
        return 'A panel crew is to do the work, but panels are not available or not wanted.';
      }
      return refusedWays(answers).includes('panel-gap')
        ? 'A panel crew is to do the work, but panels with their own gap are refused.'
        : undefined;
    },
  },
  {
    id: 'crew-of-strangers',
    questions: ['crew'],
    clash: ({ work }) =>
      work?.crew === 'panel-crew' && work.experience === 'none'
        ? 'A crew that sets insulated panels is said to have built none of these roofs. Ask again, or choose another crew.'
        : undefined,
  },
];
