/** Both sides of every rule about the whole case. */
import { at, each, type Pair, type Branch } from './facts.ts';

const pitch = 'case.roof.pitch_rise_per_12';
const snow = 'case.loads.groundSnow_Pa';
const kind = 'case.project.kind';
const fill = 'case.belowDeck.fill';
const foamFree = 'case.insulation.foamFree';
const shares = (has: string, share: number, needed: number, above: number, least: number): Branch =>
  at(
    fill,
    has,
    'requirements.split.share_pct',
    share,
    'requirements.tableShare_pct',
    needed,
    'requirements.split.aboveDeck_m2K_W',
    above,
    'requirements.aboveDeckTable.resistance_m2K_W',
    least,
  );

export const casePairs: Readonly<Record<string, Pair>> = {
  'attic-stays-vented': {
    holds: each('case.belowDeck.attic', 'stays-vented'),
    not: each('case.belowDeck.attic', 'cathedral', 'conditioned-attic'),
  },
  'active-leak': {
    holds: each('case.framing.deckCondition', 'active-leak', 'some-rot'),
    not: each('case.framing.deckCondition', 'sound'),
  },
  'wet-deck': {
    holds: each('case.framing.deckMoisture_pct', 19.1),
    not: each('case.framing.deckMoisture_pct', 19, undefined),
  },
  'damp-deck': {
    holds: each('case.framing.deckMoisture_pct', 16.1, 19),
    not: each('case.framing.deckMoisture_pct', 16, 19.1, undefined),
  },
  'humid-rooms': {
    holds: ['5A', '6B', '7', '8'].map((zone) =>
      at('climate.zone', zone, 'case.indoor.relativeHumidity_pct', 36),
    ),
    not: [
      at('climate.zone', '5A', 'case.indoor.relativeHumidity_pct', 35),
      at('climate.zone', '4C', 'case.indoor.relativeHumidity_pct', 60),
    ],
  },
  'plank-deck': {
    holds: each('case.framing.deck', 'plank'),
    not: each('case.framing.deck', 'plywood', 'osb'),
  },
  'thin-deck-under-foam': {
    holds: [
      at('case.framing.deckThickness_m', 0.0111, 'case.framing.deck', 'osb'),
      at('case.framing.deckThickness_m', 0.0111, 'case.framing.deck', 'osb', foamFree, false),
    ],
    not: [
      at('case.framing.deckThickness_m', 0.0111, 'case.framing.deck', 'osb', foamFree, true),
      at('case.framing.deckThickness_m', 0.0119, 'case.framing.deck', 'osb'),
      at('case.framing.deckThickness_m', 0.0111, 'case.framing.deck', 'plank'),
    ],
  },
  'drafting-appliances': {
    holds: each('case.indoor.appliances', 'drafting'),
    not: each('case.indoor.appliances', 'none-or-sealed'),
  },
  'exhaust-in-roof': {
    holds: each('case.roof.exhaustEndsInRoof', true),
    not: each('case.roof.exhaustEndsInRoof', false),
  },
  'recessed-lights': {
    holds: each('case.belowDeck.recessedLights', 1),
    not: each('case.belowDeck.recessedLights', 0),
  },
  'wiring-near-deck': {
    holds: each('case.belowDeck.wiringNearDeck', true),
    not: each('case.belowDeck.wiringNearDeck', false),
  },
  'visible-deck': {
    holds: each('case.framing.deckSeenFromBelow', true),
    not: each('case.framing.deckSeenFromBelow', false),
  },
  'two-tight-layers': {
    holds: each('case.belowDeck.interiorRetarder', 'polyethylene'),
    not: each('case.belowDeck.interiorRetarder', 'none', 'latex-paint', 'kraft-facer', 'smart-membrane'),
  },
  'tight-membrane-closed-foam': {
    holds: each(fill, 'closed-cell-spray'),
    not: each(fill, 'open-cell-spray', 'none', 'cellulose'),
  },
  'wildfire-edges': {
    holds: each('case.loads.wildfire', 'hazard-zone'),
    not: each('case.loads.wildfire', 'none'),
  },
  'insects-in-foam': {
    holds: each('case.loads.insects', 'carpenter-ants-or-termites'),
    not: each('case.loads.insects', 'low'),
  },
  'old-materials': { holds: each(kind, 're-roof', 'addition'), not: each(kind, 'new-roof') },
  'hidden-damage': { holds: each(kind, 're-roof', 'addition'), not: each(kind, 'new-roof') },
  'slick-membrane': { holds: each(pitch, 8, 24), not: each(pitch, 7.9, 2) },
  falls: { holds: each(pitch, 2, 7.9), not: each(pitch, 8) },
  heritage: { holds: each('case.profile.heritage', true), not: each('case.profile.heritage', false) },
  'ice-barrier-length': {
    holds: [at('requirements.iceBarrier.required', true, 'requirements.iceBarrier.courses', 2)],
    not: [
      at('requirements.iceBarrier.required', true, 'requirements.iceBarrier.courses', 1),
      at('requirements.iceBarrier.required', false, 'requirements.iceBarrier.courses', 2),
    ],
  },
  'double-underlayment': {
    holds: each('requirements.slope.doubleUnderlayment', true),
    not: each('requirements.slope.doubleUnderlayment', false),
  },
  'table-share-missed': {
    holds: [
      shares('glass-fiber-batt', 40, 41, 3.53, 3.52),
      shares('cellulose', 40, 41, 3.52, 3.52),
      shares('mineral-wool-batt', 40, 41, 4, 3.52),
    ],
    not: [
      shares('cellulose', 41, 41, 3.52, 3.52),
      shares('cellulose', 40, 41, 3.51, 3.52),
      shares('none', 40, 41, 3.52, 3.52),
    ],
  },
  'high-wind': {
    holds: each('case.loads.basicWindSpeed_m_s', 58.1152),
    not: each('case.loads.basicWindSpeed_m_s', 58, 51.4),
  },
  'heavy-snow': { holds: each(snow, 2394, 2394.013), not: each(snow, 2393.9, 0) },
  'steep-sliding': { holds: each(pitch, 9), not: each(pitch, 8.9) },
  'wet-season': { holds: each('case.work.weather', 'wet'), not: each('case.work.weather', 'mixed', 'dry') },
  'solar-later': {
    holds: each('case.covering.solarPlanned', true),
    not: each('case.covering.solarPlanned', false),
  },
  'broken-roof-panels': {
    holds: [
      at('case.roof.valleys', 4, 'case.roof.dormers', 0),
      at('case.roof.valleys', 2, 'case.roof.dormers', 2),
    ],
    not: [
      at('case.roof.valleys', 2, 'case.roof.dormers', 1),
      at('case.roof.valleys', 0, 'case.roof.dormers', 3),
    ],
  },
  'cut-trusses': {
    holds: [at('case.framing.kind', 'truss', kind, 're-roof')],
    not: [
      at('case.framing.kind', 'rafter', kind, 're-roof'),
      at('case.framing.kind', 'truss', kind, 'new-roof'),
    ],
  },
  'wall-without-air-barrier': {
    holds: each('case.wall.airBarrier', 'none'),
    not: each('case.wall.airBarrier', 'interior', 'taped-sheathing', 'exterior-membrane'),
  },
  'combustion-test': {
    holds: each('case.indoor.appliances', 'drafting'),
    not: each('case.indoor.appliances', 'none-or-sealed'),
  },
  'wires-found': {
    holds: each('case.belowDeck.wiringNearDeck', true),
    not: each('case.belowDeck.wiringNearDeck', false),
  },
  'hazard-test': { holds: each(kind, 're-roof', 'addition'), not: each(kind, 'new-roof') },
  'truss-designer': {
    holds: each('case.framing.kind', 'truss'),
    not: each('case.framing.kind', 'rafter', 'i-joist'),
  },
  'fibrous-acceptance': {
    holds: each(foamFree, true),
    not: each(foamFree, false, null, undefined),
  },
};
