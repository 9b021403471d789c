/** Clashes about place, roof, deck and what is below it. */
import { covering, underlaymentLayers } from '../catalog/coverings.ts';
import { show } from '../measures.ts';
import type { ContradictionRule } from './contradictions.ts';
import { hasOldRoof } from './guards.ts';
import { mappedZone } from './zone.ts';

/** [%] moisture of wood above which nothing is closed in: AITC Technical Note 20, 1992 (seen as quoted). */
const WET_WOOD_PCT = 19;
const fillWords: Readonly<Record<string, string>> = {
  'glass-fiber-batt': 'glass fiber batts',
  'mineral-wool-batt': 'mineral wool batts',
  cellulose: 'cellulose',
  'open-cell-spray': 'spray foam',
  'closed-cell-spray': 'spray foam',
};
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
/** Months of the code's cold-month rule (IRC R806.5 item 5.1.4, seen-secondary). */
const COLD_MONTHS = 3;

export const roofContradictions: readonly ContradictionRule[] = [
  {
    id: 'zone-against-county',
    questions: ['place', 'code'],
    clash: (answers) => {
      const given = answers.place?.zone;
      const mapped = mappedZone(answers);
      if (given === undefined || mapped === undefined || mapped.zones.length === 0) return undefined;
      if (mapped.zones.includes(given)) return undefined;
      return `You chose zone ${given}, but the map of the code edition puts ${mapped.name} in zone ${mapped.zones.join(' or ')}. The zone you chose counts; ask the building department which one it uses.`;
    },
  },
  {
    id: 'design-temperature-too-warm',
    questions: ['place'],
    clash: ({ place }, system) => {
      const design = place?.designTemperature_C;
      const months = place?.monthlyTemperature_C;
      if (design === undefined || months === undefined) return undefined;
      const coldest = mean([...months].sort((a, b) => a - b).slice(0, COLD_MONTHS));
      if (design <= coldest) return undefined;
      return `The winter design temperature (${show('temperature', design, system)}) is warmer than the mean of your three coldest months (${show('temperature', coldest, system)}). A design temperature is the cold of a hard night.`;
    },
  },
  {
    id: 'local-deck-above-local-ceiling',
    questions: ['code'],
    clash: ({ codes }, system) => {
      const part = codes?.localAboveDeck_m2K_W;
      const whole = codes?.localCeiling_m2K_W;
      if (part === undefined || whole === undefined || part <= whole) return undefined;
      return `The local code is said to ask for ${show('resistance', part, system)} above the deck but only ${show('resistance', whole, system)} in all. The part cannot be more than the whole.`;
    },
  },
  {
    id: 'pitch-below-covering',
    questions: ['roof-shape', 'covering'],
    clash: ({ roof, covering: chosen }, system) => {
      const pitch = roof?.pitch_rise_per_12;
      if (pitch === undefined || chosen?.kind === undefined) return undefined;
      if (underlaymentLayers(chosen.kind, pitch) !== 'not-allowed') return undefined;
      const { name, minimumPitch_rise_per_12 } = covering(chosen.kind);
      return `${name} may not go on a pitch of ${show('pitch', pitch, system)}; the code allows this covering from ${show('pitch', minimumPitch_rise_per_12, system)} on.`;
    },
  },
  {
    id: 'valley-on-plain-gable',
    questions: ['roof-shape', 'roof-breaks'],
    clash: ({ roof }) =>
      (roof?.shape === 'gable' || roof?.shape === 'shed') && (roof.valleys ?? 0) > 0 && roof.dormers === 0
        ? `A plain ${roof.shape} roof without dormers has no valley. Count the dormers, or choose the cross gable.`
        : undefined,
  },
  {
    id: 'wet-but-sound',
    questions: ['deck'],
    clash: (answers, system) => {
      const { deckMoisture_pct, deckCondition } = answers.framing ?? {};
      if (!hasOldRoof(answers) || deckCondition !== 'sound' || deckMoisture_pct === undefined)
        return undefined;
      return deckMoisture_pct > WET_WOOD_PCT
        ? `A reading of ${show('share', deckMoisture_pct, system)} is wet wood (above ${WET_WOOD_PCT} %), yet the deck is called sound. Find out where the water comes from before you cover it.`
        : undefined;
    },
  },
  {
    id: 'seen-deck-with-fill',
    questions: ['deck', 'below-deck'],
    clash: ({ framing, belowDeck }) => {
      const isSeen = framing?.deckSeenFromBelow === true || belowDeck?.ceiling === 'deck-in-view';
      const fill = belowDeck?.fill;
      return isSeen && fill !== undefined && fill !== 'none'
        ? `The deck is seen from below, yet ${fillWords[fill] ?? fill} is said to lie between the rafters. It would hide the deck.`
        : undefined;
    },
  },
  {
    id: 'seen-deck-with-ceiling',
    questions: ['deck', 'below-deck'],
    clash: ({ framing, belowDeck }) => {
      const ceiling = belowDeck?.ceiling;
      if (framing?.deckSeenFromBelow === true && (ceiling === 'gypsum' || ceiling === 'wood-boards')) {
        return 'The deck is seen from below, yet there is a ceiling under it. Only one of the two can be true.';
      }
      return framing?.deckSeenFromBelow === false && ceiling === 'deck-in-view'
        ? 'You said that the deck is hidden from below, and also that it is in view because there is no ceiling.'
        : undefined;
    },
  },
  {
    id: 'fill-deeper-than-framing',
    questions: ['framing', 'below-deck'],
    clash: ({ framing, belowDeck }, system) => {
      const depth = framing?.depth_m;
      const fill = belowDeck?.fillDepth_m;
      if (depth === undefined || fill === undefined || framing?.kind === 'truss') return undefined;
      if (belowDeck?.fill === 'none' || fill <= depth) return undefined;
      return `Insulation ${show('length', fill, system)} deep does not fit between members ${show('length', depth, system)} deep.`;
    },
  },
  {
    id: 'tight-with-open-flue',
    questions: ['indoor'],
    clash: ({ indoor }) =>
      indoor?.airtightness === 'very-tight' && indoor.appliances === 'drafting'
        ? 'A very tight house and an appliance that takes its air from the room do not go together: its gases may come back into the house. Plan a sealed appliance.'
        : undefined,
  },
];
