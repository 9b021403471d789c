/** Clashes about the overhang, the edge, the wall and the snow on them. */
import type { ContradictionRule } from './contradictions.ts';
import { hasEave, hasOldRoof, isTrussRoof } from './guards.ts';

export const edgeContradictions: readonly ContradictionRule[] = [
  {
    id: 'truss-tails-cut',
    questions: ['framing', 'overhang'],
    clash: (answers) => {
      const plan = answers.overhang?.tails;
      return isTrussRoof(answers) && (plan === 'may-cut' || plan === 'must-cut')
        ? 'A truss roof has no rafter tails to cut flush: the tail is part of the truss, and cutting it needs the truss designer. That answer does not count.'
        : undefined;
    },
  },
  {
    id: 'carrier-against-framing',
    questions: ['framing', 'overhang'],
    clash: (answers) => {
      const carrier = answers.overhang?.carriedToday;
      const kind = answers.framing?.kind;
      if (kind === undefined || !hasOldRoof(answers)) return undefined;
      if (kind === 'truss' && carrier === 'rafter-tails') {
        return 'The framing is trusses, yet rafter tails are said to carry the overhang. Choose truss tails, or rafters.';
      }
      return kind !== 'truss' && carrier === 'truss-tails'
        ? 'Truss tails are said to carry the overhang, yet the framing is not trusses.'
        : undefined;
    },
  },
  {
    id: 'no-overhang-but-tails-stay',
    questions: ['overhang'],
    clash: (answers) =>
      hasOldRoof(answers) && answers.overhang?.carriedToday === 'none' && answers.overhang.tails === 'keep'
        ? 'You said that there is no overhang today, and also that its tails stay.'
        : undefined,
  },
  {
    id: 'cut-tails-but-shown',
    questions: ['overhang', 'profile'],
    clash: ({ overhang, profile }) =>
      overhang?.tails === 'must-cut' && profile?.look === 'exposed-tails'
        ? 'The tails must go, yet the wanted look shows tails from below. Short false tails can be added later, but they carry nothing.'
        : undefined,
  },
  {
    id: 'no-eave-but-tails-shown',
    questions: ['overhang', 'profile'],
    clash: (answers) =>
      !hasEave(answers) && answers.profile?.look === 'exposed-tails'
        ? 'Without an overhang at the eave there are no tails to show.'
        : undefined,
  },
  {
    id: 'i-joists-shown',
    questions: ['framing', 'profile'],
    clash: ({ framing, profile }) =>
      framing?.kind === 'i-joist' && profile?.look === 'exposed-tails'
        ? 'I-joists may not stay open to the weather, so their tails cannot be shown. Box them in, or use solid tails.'
        : undefined,
  },
  {
    id: 'tails-shown-in-fire-zone',
    questions: ['profile', 'hazards'],
    clash: ({ profile, loads }) =>
      loads?.wildfire === 'hazard-zone' && profile?.look === 'exposed-tails'
        ? 'Open tails catch embers, and the roof is in a wildfire zone. A boxed soffit is the safer edge; ask the fire official.'
        : undefined,
  },
  {
    id: 'cut-tails-closed-wall',
    questions: ['overhang', 'wall'],
    clash: (answers) =>
      hasOldRoof(answers) && answers.overhang?.tails === 'must-cut' && answers.wall?.cladding === 'stays'
        ? 'The tails must go, but the wall cladding stays. Then the roof membrane cannot lap onto the wall behind the cladding; open at least the top courses.'
        : undefined,
  },
  {
    id: 'ice-without-snow',
    questions: ['overhang', 'snow'],
    clash: (answers) => {
      const ice = answers.overhang?.iceDams;
      return hasOldRoof(answers) &&
        answers.loads?.groundSnow_Pa === 0 &&
        (ice === 'sometimes' || ice === 'every-winter')
        ? 'Ice builds up along the eaves, yet the ground snow load is 0. One of the two is wrong.'
        : undefined;
    },
  },
  {
    id: 'no-rise-at-all',
    questions: ['profile', 'insulation'],
    clash: ({ profile, insulation }) =>
      profile?.ridgeRiseLimit_m === 0 && (insulation?.aboveDeckTarget_m2K_W ?? 0) > 0
        ? 'The ridge may not rise at all, yet insulation above the deck is wanted. Every board lifts the ridge.'
        : undefined,
  },
];
