/** The questions of the interview: their order, their ids and the case paths that each one settles. */

/** Id = state of the chart = file in content/questions = `[data-question]` on the page. In the order asked. */
export const questionIds = [
  'reader',
  'job',
  'place',
  'code',
  'roof-shape',
  'roof-breaks',
  'covering',
  'framing',
  'deck',
  'below-deck',
  'indoor',
  'overhang',
  'outriggers',
  'profile',
  'wall',
  'insulation',
  'venting',
  'snow',
  'wind',
  'screws',
  'hazards',
  'crew',
  'budget',
  'priorities',
] as const;
export type QuestionId = (typeof questionIds)[number];

/** The last page of the interview: all answers at once, and the head of the record. */
export const REVIEW = 'review';
export const stateIds = [...questionIds, REVIEW] as const;
export type StateId = (typeof stateIds)[number];

/** Every case path that the interview asks, by the page that asks it. Equal to the front matter (a test compares). */
export const pathsOf = {
  reader: ['project.role'],
  job: ['project.kind'],
  place: [
    'place.zone',
    'place.id',
    'place.name',
    'place.countyFips',
    'place.weatherFile',
    'place.elevation_m',
    'place.monthlyTemperature_C',
    'place.monthlyRelativeHumidity_pct',
    'place.designTemperature_C',
  ],
  code: [
    'codes.edition',
    'codes.localCeiling_m2K_W',
    'codes.localAboveDeck_m2K_W',
    'codes.iceBarrierRequired',
  ],
  'roof-shape': [
    'roof.shape',
    'roof.pitch_rise_per_12',
    'roof.length_m',
    'roof.width_m',
    'roof.eaveHeight_m',
  ],
  'roof-breaks': [
    'roof.valleys',
    'roof.dormers',
    'roof.skylights',
    'roof.chimneys',
    'roof.penetrations',
    'roof.exhaustEndsInRoof',
  ],
  covering: ['covering.kind', 'covering.solarPlanned'],
  framing: ['framing.kind', 'framing.depth_m', 'framing.width_m', 'framing.spacing_m'],
  deck: [
    'framing.deck',
    'framing.deckThickness_m',
    'framing.deckSeenFromBelow',
    'framing.deckCondition',
    'framing.deckMoisture_pct',
  ],
  'below-deck': [
    'belowDeck.attic',
    'belowDeck.fill',
    'belowDeck.fillDepth_m',
    'belowDeck.fillResistance_m2K_W',
    'belowDeck.ceiling',
    'belowDeck.interiorRetarder',
    'belowDeck.recessedLights',
    'belowDeck.wiringNearDeck',
  ],
  indoor: [
    'indoor.temperature_C',
    'indoor.relativeHumidity_pct',
    'indoor.humidityClass',
    'indoor.airtightness',
    'indoor.appliances',
  ],
  overhang: [
    'overhang.eave_m',
    'overhang.rake_m',
    'overhang.carriedToday',
    'overhang.tails',
    'overhang.iceDams',
  ],
  outriggers: [
    'overhang.outriggerSpecies',
    'overhang.outriggerGrade',
    'overhang.outriggerSize',
    'overhang.outriggerOrientation',
    'overhang.outriggerSpacing_m',
    'overhang.outriggerBackSpan_m',
    'overhang.outriggerSeat',
  ],
  profile: [
    'profile.fasciaLimit_m',
    'profile.ridgeRiseLimit_m',
    'profile.heritage',
    'profile.look',
    'profile.cut',
  ],
  wall: ['wall.airBarrier', 'wall.exteriorInsulation_m', 'wall.thickness_m', 'wall.cladding'],
  insulation: [
    'insulation.aboveDeckTarget_m2K_W',
    'insulation.totalTarget_m2K_W',
    'insulation.refusedBoards',
    'insulation.foamFree',
    'insulation.stock.board',
    'insulation.stock.thickness_m',
    'insulation.stock.area_m2',
  ],
  venting: ['covering.ventWish', 'covering.refusedVentilations'],
  snow: ['loads.groundSnow_Pa', 'loads.snowLevel', 'loads.upperRoofLength_m'],
  wind: [
    'loads.basicWindSpeed_m_s',
    'loads.exposure',
    'loads.onHill',
    'loads.topographicFactor',
    'loads.standard',
  ],
  screws: [
    'insulation.screwReport.name',
    'insulation.screwReport.withdrawal_N_m',
    'insulation.screwReport.pullThrough_N',
    'insulation.screwReport.lateral_N',
    'insulation.screwReport.lateralGap_m',
    'insulation.screwReport.minimumPenetration_m',
    'insulation.screwReport.longest_m',
  ],
  hazards: ['loads.wildfire', 'loads.seismicCategory', 'loads.insects'],
  crew: [
    'work.crew',
    'work.experience',
    'work.lift',
    'work.schedule',
    'work.weather',
    'work.engineer',
    'work.panelSupply',
  ],
  budget: ['work.budget'],
  priorities: ['priorities'],
  review: ['project.name', 'project.client', 'project.author', 'project.revision', 'project.date', 'notes'],
} as const satisfies Record<StateId, readonly string[]>;
export type AnswerPath = (typeof pathsOf)[StateId][number];

/** Paths of the case that no page asks, and why. */
export const neverAsked: Readonly<Record<string, string>> = {
  overdeck: 'the format version, written by the program',
  'insulation.screwReport.allowableWithdrawal_N':
    'the pull-out of one screw instead of that for each length of thread, for case files',
  'insulation.screwReport.lengths_m':
    'every length that is sold, for case files; the page asks for the longest',
  'loads.snowExposureFactor': 'a factor that an engineer sets in the case file; an ordinary roof is assumed',
  'loads.thermalFactor':
    'a factor that an engineer sets in the case file; a roof cold above its insulation is assumed',
  'loads.importanceFactor': 'a factor that an engineer sets in the case file; an ordinary house is assumed',
};

const pageOf = new Map<string, StateId>(
  stateIds.flatMap((page) => pathsOf[page].map((path): [string, StateId] => [path, page])),
);

/** Whether a path is one that the interview sets. */
export const isAnswerPath = (path: string): path is AnswerPath => pageOf.has(path);

/**
 * The page that settles a case path: the asking page of the path itself, or of the nearest path above it
 * (`priorities.cost` is settled by `priorities`); undefined for a path that nobody asks.
 */
export function settledBy(path: string): StateId | undefined {
  const found = pageOf.get(path);
  if (found !== undefined) return found;
  const end = path.lastIndexOf('.');
  if (end >= 0) return settledBy(path.slice(0, end));
  return stateIds.find((page) => pathsOf[page].some((asked) => asked.startsWith(`${path}.`)));
}

export const isQuestion = (id: string): id is QuestionId => (questionIds as readonly string[]).includes(id);
