/** Both sides of every rule about one candidate. */
import { at, each, type Pair, type Branch } from './facts.ts';

const carrier = 'candidate.carrier';
const vent = 'candidate.ventilation.kind';
const covering = 'case.covering.kind';
const pitch = 'case.roof.pitch_rise_per_12';
const snow = 'case.loads.groundSnow_Pa';
const kind = 'case.project.kind';
const fill = 'case.belowDeck.fill';
const board = 'candidate.board';
const base = 'candidate.baseBoard';
const foamFree = 'case.insulation.foamFree';
const weight = 'candidate.structure.addedDeadLoad_Pa';
const category = 'case.loads.seismicCategory';
const strategy = 'candidate.strategy';
const walls = (carriedBy: string, job: string, cladding: string): Branch =>
  at(carrier, carriedBy, kind, job, 'case.wall.cladding', cladding);
const tails = (carriedBy: string, job: string, plan: string, today: string): Branch =>
  at(carrier, carriedBy, kind, job, 'case.overhang.tails', plan, 'case.overhang.carriedToday', today);
const venting = (is: string, wish: string, refused: readonly string[]): Branch =>
  at(vent, is, 'case.covering.ventWish', wish, 'case.covering.refusedVentilations', refused);
const refusedBoards = (is: string, below: string | null, refused: readonly string[]): Branch =>
  at(board, is, base, below, 'case.insulation.refusedBoards', refused);
const upliftOpen = 'candidate.fasteners.upliftNeedsDesign';
const windGap = 'candidate.fasteners.windGap';
const shed = { reason: 'a shed has its own figures', standIn: 'plain gable' };
const permeable = ['glass-fiber-batt', 'mineral-wool-batt', 'cellulose'];
/** The two paths of condensation control, each met or missed, with a fill below the deck. */
const paths = (has: string, byTable: boolean, byTemperature: boolean): Branch =>
  at(
    fill,
    has,
    'candidate.condensationControl.table.meets',
    byTable,
    'candidate.condensationControl.temperature.meets',
    byTemperature,
  );
const ceiling = (byResistance: boolean, byTransmittance: boolean): Branch =>
  at(
    'candidate.thermal.meetsCeilingResistance',
    byResistance,
    'candidate.thermal.meetsTransmittance',
    byTransmittance,
  );

export const candidatePairs: Readonly<Record<string, Pair>> = {
  'goal-not-reached': { holds: each('draft.reachesGoal', false), not: each('draft.reachesGoal', true) },
  'slope-under-minimum': {
    holds: each('requirements.slope.meetsMinimum', false),
    not: each('requirements.slope.meetsMinimum', true),
  },
  'condensation-minimum-missed': {
    holds: permeable.map((has) => paths(has, false, false)),
    not: [
      paths('cellulose', false, true),
      paths('cellulose', true, false),
      paths('cellulose', true, true),
      paths('none', false, false),
      paths('closed-cell-spray', false, false),
    ],
  },
  'fascia-over-limit': {
    holds: [at('candidate.edge.fasciaLimit_m', 0.3, 'candidate.edge.fasciaMargin_m', -0.001)],
    not: [
      at('candidate.edge.fasciaLimit_m', 0.3, 'candidate.edge.fasciaMargin_m', 0),
      at('candidate.edge.fasciaLimit_m', 0.3, 'candidate.edge.fasciaMargin_m', -1e-9),
      at('candidate.edge.fasciaLimit_m', null, 'candidate.edge.fasciaMargin_m', null),
    ],
  },
  'ridge-over-limit': {
    holds: [at('candidate.edge.ridgeLimit_m', 0.3, 'candidate.edge.ridgeMargin_m', -0.001)],
    not: [
      at('candidate.edge.ridgeLimit_m', 0.3, 'candidate.edge.ridgeMargin_m', 0),
      at('candidate.edge.ridgeLimit_m', null, 'candidate.edge.ridgeMargin_m', null),
    ],
  },
  'walls-stay-closed': {
    holds: [walls('outriggers', 're-roof', 'stays')],
    not: [
      walls('rafter-tails', 're-roof', 'stays'),
      walls('outriggers', 'new-roof', 'stays'),
      walls('outriggers', 're-roof', 'comes-off'),
    ],
  },
  'tails-stay': {
    holds: [
      tails('outriggers', 're-roof', 'keep', 'rafter-tails'),
      tails('outriggers', 're-roof', 'keep', 'truss-tails'),
    ],
    not: [
      tails('rafter-tails', 're-roof', 'keep', 'rafter-tails'),
      tails('outriggers', 'new-roof', 'keep', 'rafter-tails'),
      tails('outriggers', 're-roof', 'may-cut', 'rafter-tails'),
      tails('outriggers', 're-roof', 'keep', 'none'),
    ],
  },
  'tails-must-go': {
    holds: [
      at(carrier, 'rafter-tails', 'case.overhang.tails', 'must-cut'),
      at(carrier, 'truss-tails', 'case.overhang.tails', 'must-cut'),
    ],
    not: [
      at(carrier, 'outriggers', 'case.overhang.tails', 'must-cut'),
      at(carrier, 'rafter-tails', 'case.overhang.tails', 'may-cut'),
    ],
  },
  'exposed-tails-wanted': {
    holds: [at(carrier, 'outriggers', 'case.profile.look', 'exposed-tails')],
    not: [
      at(carrier, 'rafter-tails', 'case.profile.look', 'exposed-tails'),
      at(carrier, 'outriggers', 'case.profile.look', 'thin-edge'),
    ],
  },
  'outrigger-past-limit': {
    holds: [at(carrier, 'outriggers', 'candidate.structure.use', 1.001)],
    not: [
      at(carrier, 'outriggers', 'candidate.structure.use', 1),
      at(carrier, 'rafter-tails', 'candidate.structure.use', 2),
    ],
  },
  'board-refused': {
    holds: [refusedBoards('xps', null, ['eps', 'xps']), refusedBoards('xps', 'eps', ['xps'])],
    not: [
      refusedBoards('eps', null, []),
      refusedBoards('eps', null, ['xps']),
      refusedBoards('eps', 'xps', ['xps']),
    ],
  },
  'base-board-refused': {
    holds: [refusedBoards('eps', 'xps', ['xps']), refusedBoards('eps', 'eps', ['xps', 'eps'])],
    not: [refusedBoards('xps', null, ['xps']), refusedBoards('xps', 'eps', ['xps'])],
  },
  'foam-refused': {
    holds: [
      ...['polyisocyanurate', 'xps', 'eps', 'graphite-eps'].map((is) => at(foamFree, true, board, is)),
      at(foamFree, true, board, 'stone-wool', base, 'eps'),
    ],
    not: [
      at(foamFree, true, board, 'stone-wool', base, null),
      at(foamFree, true, board, 'wood-fiber', base, 'stone-wool'),
      at(foamFree, false, board, 'xps', base, 'xps'),
    ],
  },
  'vapor-open-board-under-tight-deck': {
    holds: ['stone-wool', 'wood-fiber'].map((is) =>
      at(board, is, vent, 'unvented', 'candidate.underlayment', 'vapor-tight'),
    ),
    not: [
      at(board, 'stone-wool', vent, 'unvented', 'candidate.underlayment', 'vapor-open'),
      at(board, 'stone-wool', vent, 'vented-furring', 'candidate.underlayment', 'vapor-tight'),
      at(board, 'eps', vent, 'unvented', 'candidate.underlayment', 'vapor-tight'),
    ],
  },
  'wood-covering-needs-gap': {
    holds: ['wood-shingle', 'wood-shake'].map((is) => at(covering, is, vent, 'unvented')),
    not: [at(covering, 'wood-shake', vent, 'drainage-mat'), at(covering, 'slate', vent, 'unvented')],
  },
  'mat-under-shingles': {
    holds: [at(covering, 'asphalt-shingle', vent, 'drainage-mat')],
    not: [
      at(covering, 'standing-seam-metal', vent, 'drainage-mat'),
      at(covering, 'asphalt-shingle', vent, 'unvented'),
    ],
  },
  'heavy-snow-needs-vented-base': {
    holds: ['unvented', 'drainage-mat'].map((is) => at(vent, is, snow, 2394)),
    not: [
      at(vent, 'unvented', snow, 2393),
      at(vent, 'vented-furring', snow, 2394),
      at(vent, 'panel-gap', snow, 5000),
    ],
  },
  'ventilation-refused': {
    holds: [
      venting('drainage-mat', 'no-preference', ['drainage-mat']),
      venting('unvented', 'vented', []),
      venting('drainage-mat', 'vented', []),
      venting('vented-furring', 'unvented', []),
      venting('panel-gap', 'unvented', []),
    ],
    not: [
      venting('drainage-mat', 'no-preference', ['unvented']),
      venting('vented-furring', 'vented', []),
      venting('unvented', 'unvented', []),
      venting('drainage-mat', 'unvented', []),
    ],
  },
  'panel-not-available': {
    holds: [at(strategy, 'prebonded-panel', 'case.work.panelSupply', 'not-available')],
    not: [
      at(strategy, 'prebonded-panel', 'case.work.panelSupply', 'can-be-ordered'),
      at(strategy, 'rafter-overhang', 'case.work.panelSupply', 'not-available'),
    ],
  },
  'engineer-missing': {
    holds: [at(carrier, 'outriggers', 'case.work.engineer', 'none')],
    not: [
      at(carrier, 'outriggers', 'case.work.engineer', 'can-be-hired'),
      at(carrier, 'truss-tails', 'case.work.engineer', 'none'),
    ],
  },
  'panel-never-air-barrier': {
    holds: each(strategy, 'prebonded-panel'),
    not: each(strategy, 'rafter-overhang', 'flush-outriggers'),
  },
  'panel-single-joint': {
    holds: [at(strategy, 'prebonded-panel', 'candidate.baseBoard', null)],
    not: [
      at(strategy, 'prebonded-panel', 'candidate.baseBoard', 'eps'),
      at(strategy, 'rafter-overhang', 'candidate.baseBoard', null),
    ],
  },
  'panel-without-gap': {
    holds: [at(strategy, 'prebonded-panel', vent, 'unvented')],
    not: [
      at(strategy, 'prebonded-panel', vent, 'panel-gap'),
      at(strategy, 'rafter-overhang', vent, 'unvented'),
    ],
  },
  'shingles-unvented': {
    holds: [at(covering, 'asphalt-shingle', vent, 'unvented')],
    not: [at(covering, 'asphalt-shingle', vent, 'vented-furring'), at(covering, 'slate', vent, 'unvented')],
  },
  'unvented-drying': {
    holds: [at(vent, 'unvented', 'candidate.drying.path', 'neither')],
    not: [
      at(vent, 'unvented', 'candidate.drying.path', 'outward'),
      at(vent, 'panel-gap', 'candidate.drying.path', 'neither'),
    ],
  },
  'low-slope-gap': {
    holds: [at(vent, 'vented-furring', pitch, 2.9), at(vent, 'panel-gap', pitch, 2)],
    not: [at(vent, 'vented-furring', pitch, 3), at(vent, 'unvented', pitch, 2)],
  },
  'outriggers-engineered': {
    holds: each(carrier, 'outriggers'),
    not: each(carrier, 'rafter-tails', 'truss-tails'),
  },
  'tails-past-limit': {
    holds: [
      at(carrier, 'rafter-tails', 'candidate.structure.use', 1.001),
      at(carrier, 'truss-tails', 'candidate.structure.use', 1.001),
    ],
    not: [
      at(carrier, 'rafter-tails', 'candidate.structure.use', 1),
      at(carrier, 'outriggers', 'candidate.structure.use', 2),
    ],
  },
  sliding: {
    holds: each('candidate.fasteners.slopeUse', 1.001),
    not: each('candidate.fasteners.slopeUse', 1),
  },
  'long-screws': {
    holds: each('candidate.fasteners.screwLength_m', 0.2),
    not: each('candidate.fasteners.screwLength_m', 0.199),
  },
  'uplift-past-spacing': {
    holds: [at(upliftOpen, true, windGap, null)],
    not: [at(upliftOpen, false, windGap, null), at(upliftOpen, true, windGap, shed)],
  },
  'wind-not-covered': {
    holds: [at(windGap, shed)],
    not: [at(windGap, null)],
  },
  'slide-needs-design': {
    holds: each('candidate.fasteners.slopePath.needsDesign', true),
    not: each('candidate.fasteners.slopePath.needsDesign', false),
  },
  'deck-only-screws': {
    holds: [at('candidate.fasteners.into', 'deck', 'candidate.fasteners.hold.meetsPenetration', false)],
    not: [
      at('candidate.fasteners.into', 'deck', 'candidate.fasteners.hold.meetsPenetration', true),
      at('candidate.fasteners.into', 'rafter', 'candidate.fasteners.hold.meetsPenetration', false),
    ],
  },
  'missed-rafter': {
    holds: each('candidate.fasteners.missesRafter.ratio', 1.001),
    not: each('candidate.fasteners.missesRafter.ratio', 1),
  },
  'screws-not-sold': {
    holds: each('candidate.fasteners.sold', false),
    not: each('candidate.fasteners.sold', true),
  },
  'table-minimum-missed': {
    holds: permeable.map((has) => paths(has, false, true)),
    not: [
      paths('cellulose', false, false),
      paths('cellulose', true, true),
      paths('cellulose', true, false),
      paths('none', false, true),
      paths('closed-cell-spray', false, true),
    ],
  },
  'temperature-rule-missed': {
    holds: each('candidate.condensationControl.temperature.meets', false),
    not: each('candidate.condensationControl.temperature.meets', true),
  },
  'indoor-humidity-high': {
    holds: each('candidate.condensationControl.humidity.meets', false),
    not: each('candidate.condensationControl.humidity.meets', true),
  },
  'ceiling-missed': { holds: [ceiling(false, false)], not: [ceiling(true, false), ceiling(false, true)] },
  'u-factor-path': { holds: [ceiling(false, true)], not: [ceiling(true, true), ceiling(false, false)] },
  'fibrous-board': { holds: each(board, 'stone-wool', 'wood-fiber'), not: each(board, 'eps') },
  'foam-fire': {
    holds: [
      ...each(board, 'polyisocyanurate', 'xps', 'eps', 'graphite-eps'),
      at(board, 'wood-fiber', base, 'graphite-eps'),
    ],
    not: [at(board, 'stone-wool', base, null), at(board, 'wood-fiber', base, 'stone-wool')],
  },
  'condensate-past-limit': {
    holds: each('candidate.moisture.meetsLimit', false),
    not: each('candidate.moisture.meetsLimit', true),
  },
  'condensate-accumulates': {
    holds: each('candidate.moisture.verdict', 'accumulates'),
    not: each('candidate.moisture.verdict', 'dries-out', 'none', 'not-covered'),
  },
  'shingles-need-deck': {
    holds: ['asphalt-shingle', 'slate', 'wood-shingle'].map((is) =>
      at(covering, is, 'draft.hasUpperDeck', false),
    ),
    not: [
      at(covering, 'slate', 'draft.hasUpperDeck', true),
      at(covering, 'standing-seam-metal', 'draft.hasUpperDeck', false),
    ],
  },
  'screws-show-below': {
    holds: each('candidate.fasteners.mayShowBelow', true),
    not: each('candidate.fasteners.mayShowBelow', false),
  },
  'many-bays-very-tight': {
    holds: [at('case.indoor.airtightness', 'very-tight', 'candidate.airBarrier.bays', 1)],
    not: [
      at('case.indoor.airtightness', 'very-tight', 'candidate.airBarrier.bays', 0),
      at('case.indoor.airtightness', 'tight', 'candidate.airBarrier.bays', 54),
    ],
  },
  'i-joist-tails': {
    holds: [at('case.framing.kind', 'i-joist', carrier, 'rafter-tails')],
    not: [
      at('case.framing.kind', 'i-joist', carrier, 'outriggers'),
      at('case.framing.kind', 'rafter', carrier, 'rafter-tails'),
    ],
  },
  'vented-edge-wildfire': {
    holds: [at('case.loads.wildfire', 'hazard-zone', 'candidate.ventilation.gap_m', 0.0254)],
    not: [
      at('case.loads.wildfire', 'hazard-zone', 'candidate.ventilation.gap_m', 0),
      at('case.loads.wildfire', 'none', 'candidate.ventilation.gap_m', 0.0254),
    ],
  },
  'heavy-roof': {
    holds: ['D0', 'D1', 'D2', 'E'].map((shaken) => at(weight, 480, category, shaken)),
    not: [at(weight, 479, category, 'D2'), at(weight, 900, category, 'C')],
  },
};
