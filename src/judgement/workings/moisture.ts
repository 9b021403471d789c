/** Workings of moisture in depth: the month that decides, limits of condensate, drying by place, the gap, leaking air. */
import { DAYS_OF_MONTHS } from '../../physics/climate.ts';
import { monthNames } from '../../catalog/months.ts';
import type {
  AirLeakage,
  Candidate,
  DryingPlace,
  Evaluation,
  GapFlow,
  LeakSurface,
} from '../../evaluation/evaluation.ts';
import type { Working } from '../../evaluation/working.ts';
import { valueIn } from './value.ts';

/** Index of the lowest value. */
const lowest = (values: readonly number[]): number => values.indexOf(Math.min(...values));

function monthWorking({ condensationControl, moisture }: Candidate, inside_C: number): Working[] {
  const deck = condensationControl.planes.find(({ id }) => id === 'deck-underside');
  if (deck === undefined) return [];
  const month = lowest(deck.maximumIndoor_pct);
  const most_pct = deck.maximumIndoor_pct[month] ?? 0;
  const indoor_pct = moisture.indoorAir.relativeHumidity_pct[month] ?? 0;
  return [
    {
      id: 'month-humidity',
      title: `Highest indoor humidity in the month that decides, ${monthNames[month] ?? ''}`,
      formula: 'φ = p_sat(T_deck) / p_sat(T_room)',
      formulaTex: '\\varphi = \\frac{p_{sat}(T_{deck})}{p_{sat}(T_{room})}',
      inputs: [
        valueIn('T_room', 'indoor air of this house', inside_C, 'temperature'),
        valueIn(
          'T_deck',
          "the deck's underside in that month",
          deck.temperature_C[month] ?? 0,
          'temperature',
        ),
      ],
      result: valueIn('φ', 'highest indoor relative humidity', most_pct, 'humidity'),
      limit: {
        value: indoor_pct,
        kind: 'humidity',
        meaning: 'indoor humidity in that month',
        meets: indoor_pct <= most_pct,
      },
      source: 'ASHRAE-HOF-2017-CH1',
      clause: 'equations 5 and 6',
      known: 'memory',
      note: 'Every layer and film counts here; the 45 °F rule leaves films, deck and covering out.',
    },
  ];
}

function editionWorking({ condensationControl }: Candidate, evaluation: Evaluation): Working {
  const { editionShare, table } = condensationControl;
  const { aboveDeckTable } = evaluation.requirements;
  return {
    id: 'edition-share',
    title: 'Share of R above the deck against the edition’s own totals',
    formula: 'r = R_table / R_ceiling',
    formulaTex: 'r = \\frac{R_{table}}{R_{ceiling}}',
    inputs: [
      valueIn('R_table', 'least above the deck', table.minimum_m2K_W, 'resistance'),
      valueIn('R_ceiling', 'ceiling of the edition', editionShare.total_m2K_W, 'resistance'),
      valueIn('r_table', 'share that the two stand for', editionShare.tableShare_pct, 'share'),
    ],
    result: valueIn('r', 'share of this roof', editionShare.share_pct, 'share'),
    limit: {
      value: editionShare.tableShare_pct,
      kind: 'share',
      meaning: 'share that table and ceiling of the edition stand for',
      meets: editionShare.meets,
    },
    source: aboveDeckTable.source,
    clause: aboveDeckTable.clause,
    known: aboveDeckTable.known,
  };
}

function limitWorkings({ moisture, layers }: Candidate): Working[] {
  return moisture.planes.map((plane, index) => ({
    id: `condensate-limit-${index + 1}`,
    title: `Condensate at the plane outside: ${layers.find(({ id }) => id === plane.after)?.name ?? plane.after}`,
    formula: 'M = max Σ g · t',
    formulaTex: 'M = \\max \\sum g\\,t',
    inputs: plane.monthly_kg_m2.map((water, month) =>
      valueIn(`M_${month + 1}`, `gained or lost in ${monthNames[month] ?? ''}`, water, 'waterPerArea'),
    ),
    result: valueIn('M', 'most at the end of a month', plane.peak_kg_m2, 'waterPerArea'),
    limit: {
      value: plane.limit_kg_m2,
      kind: 'waterPerArea' as const,
      meaning: plane.limitReason,
      meets: plane.meetsLimit,
    },
    source: plane.source,
    clause: 'limits of condensate',
    known: 'seen-secondary',
    note: moisture.leavesOut.join(' '),
  }));
}

const gapWorking = (gap: GapFlow): Working => ({
  id: 'gap-flow',
  title: 'Moving air under the covering as a permeance',
  formula: 'ρ g L sin α ΔT / T = 12 μ L v / h² + ζ ρ v² / 2; P = n h c / (3600 R_v T)',
  formulaTex:
    '\\frac{\\rho g L \\sin\\alpha\\,\\Delta T}{T} = \\frac{12 \\mu L v}{h^2} + \\frac{\\zeta \\rho v^2}{2},\\quad P = \\frac{n h c}{3600 R_v T}',
  inputs: [
    valueIn('ΔT', 'warmer than outdoors', gap.excess_K, 'temperatureDifference'),
    valueIn('ζ', 'local losses', gap.lossCoefficient, 'ratio'),
    valueIn('v', 'mean velocity', gap.velocity_m_s, 'speed'),
    valueIn('n', 'air changes an hour', gap.airChanges_1_h, 'count'),
  ],
  result: valueIn('P', 'equivalent permeance to the outdoor air', gap.equivalentPermeance_ng, 'permeance'),
  source: 'OUR-JUDGEMENT',
  clause: 'excess temperature and losses of the table of dimensions',
  known: 'our judgement',
  note: gap.basis,
});

const placeName: Readonly<Record<DryingPlace['place'], string>> = {
  deck: 'in the deck',
  'insulation-joint': 'in the outermost joint between boards',
  'under-underlayment': 'under the underlayment',
};

const dryingWorking = (place: DryingPlace, layers: Candidate['layers']): Working => ({
  id: `drying-${place.place}`,
  title: `Drying of water put ${placeName[place.place]}`,
  formula: 'M(t + 1) = M(t) + g · t until M = 0',
  formulaTex: 'M_{t+1} = M_t + g\\,t \\quad\\text{until}\\quad M = 0',
  inputs: [
    valueIn(
      'M₀',
      `put in at the start of ${monthNames[place.startMonth - 1] ?? ''}`,
      place.initial_kg_m2,
      'waterPerArea',
    ),
    valueIn('M₁', 'left there after one month', place.remaining_kg_m2[0] ?? 0, 'waterPerArea'),
    valueIn('M_end', 'left there at the end', place.remaining_kg_m2.at(-1) ?? 0, 'waterPerArea'),
    valueIn('M_else', 'sits elsewhere at the end', place.left_kg_m2, 'waterPerArea'),
  ],
  result: valueIn(
    't',
    place.monthsToDry === null ? 'not dry after' : 'dry after',
    place.monthsToDry ?? place.limit_months,
    'months',
  ),
  source: 'ISO-13788-2012',
  clause: 'clause 7',
  known: 'memory',
  note:
    place.leftAfter === null
      ? 'Nothing sits elsewhere at the end.'
      : `Most of what sits elsewhere lies outside: ${layers.find(({ id }) => id === place.leftAfter)?.name ?? place.leftAfter}.`,
});

function leakWorkings(leak: AirLeakage): Working[] {
  const cited = { source: leak.source, clause: 'stated hole, pressure and rate', known: leak.known };
  return [
    {
      id: 'leak-flow',
      title: 'Air through the stated hole',
      formula: 'Q = C_d · A · √(2 Δp / ρ)',
      formulaTex: 'Q = C_d A \\sqrt{\\frac{2 \\Delta p}{\\rho}}',
      inputs: [
        valueIn('A', 'the hole', leak.hole_m2, 'hole'),
        valueIn('Δp', 'pressure at the ceiling', leak.pressure_Pa, 'vaporPressure'),
      ],
      result: valueIn('Q', 'flow', leak.flow_m3_s, 'airflow'),
      ...cited,
    },
    ...surfaceWorkings(leak, leak.deck, "the deck's underside"),
    ...surfaceWorkings(leak, leak.coldSide, 'the cold side of the board, past the deck'),
  ];
}

/** Water at one surface by air and by diffusion. */
function surfaceWorkings(leak: AirLeakage, surface: LeakSurface, where: string): Working[] {
  const days = DAYS_OF_MONTHS.reduce((sum, each) => sum + each, 0);
  return [
    {
      id: `leak-water-${surface.id}`,
      title: `Water that this air leaves on ${where} in a year`,
      formula: 'm = Σ Q · ρ · (W_in − W_sat(T)) · t',
      formulaTex: 'm = \\sum Q\\,\\rho\\,(W_{in} - W_{sat}(T))\\,t',
      inputs: [
        valueIn('Q', 'flow', leak.flow_m3_s, 'airflow'),
        valueIn('t', 'days of the year', days, 'days'),
        valueIn(
          'm_rate',
          'at the stated leakage rate of the whole roof',
          surface.seasonRate_kg_m2,
          'waterPerArea',
        ),
      ],
      result: valueIn('m', 'through the hole', surface.seasonLeak_kg, 'water'),
      source: leak.source,
      clause: 'stated hole, pressure and rate',
      known: leak.known,
      note: 'An upper estimate: all of the air cools to the surface, and no water leaves again. Months with the surface above the dew point add nothing.',
    },
    {
      id: `leak-diffusion-${surface.id}`,
      title: `Water by diffusion to ${where} through one sheet`,
      formula: 'm = Σ P · A · (p_in − p_sat(T)) · t',
      formulaTex: 'm = \\sum P\\,A\\,(p_{in} - p_{sat}(T))\\,t',
      inputs: [valueIn('A', 'sheet', leak.sheet_m2, 'area')],
      result: valueIn('m', 'in a year', surface.seasonDiffusion_kg, 'water'),
      source: 'ASTM-E96',
      clause: 'definition of permeance',
      known: 'memory',
    },
  ];
}

export function moistureWorkings(evaluation: Evaluation, candidate: Candidate): Working[] {
  const { drying, moisture, layers } = candidate;
  const inside_C = evaluation.case.indoor?.temperature_C ?? evaluation.requirements.temperatureRule.indoor_C;
  return [
    ...monthWorking(candidate, inside_C),
    editionWorking(candidate, evaluation),
    ...limitWorkings(candidate),
    ...(drying.gap === null ? [] : [gapWorking(drying.gap)]),
    ...drying.places.map((place) => dryingWorking(place, layers)),
    ...(moisture.airLeakage === null ? [] : leakWorkings(moisture.airLeakage)),
  ];
}
