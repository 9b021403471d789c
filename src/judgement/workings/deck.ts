/** Workings of condensation control: the table, the deck temperature, the indoor humidity. */
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { Working, WorkingInput } from '../../evaluation/working.ts';
import { valueIn } from './value.ts';

export function deckWorkings(
  { requirements, case: given, climate }: Evaluation,
  candidate: Candidate,
): Working[] {
  const { temperatureRule, aboveDeckTable } = requirements;
  const { thermal, condensationControl } = candidate;
  const outdoor = valueIn(
    'T_out',
    'outdoor mean of the three coldest months',
    climate.coldestMean_C,
    'temperature',
  );
  const limit = valueIn(
    'T_lim',
    'least deck temperature of the rule',
    temperatureRule.limit_C,
    'temperature',
  );
  const indoor = valueIn('T_in', 'indoor air of the rule', temperatureRule.indoor_C, 'temperature');
  const above = valueIn(
    'R_above',
    'above the deck, at winter temperature',
    thermal.aboveDeckWinter_m2K_W,
    'resistance',
  );
  const below = valueIn('R_below', 'below the deck', thermal.belowDeck_m2K_W, 'resistance');
  const room_C = given.indoor?.temperature_C ?? temperatureRule.indoor_C;
  const boards = candidate.layers.filter((layer) => layer.role === 'insulation');
  const calculation = {
    name: 'condensation-control',
    input: {
      edition: requirements.edition,
      zone: climate.zone,
      ...(given.covering?.kind === undefined ? {} : { covering: given.covering.kind }),
      aboveDeck_m2K_W: thermal.aboveDeckWinter_m2K_W,
      belowDeck_m2K_W: thermal.belowDeck_m2K_W,
      outdoorMean_C: climate.coldestMean_C,
      indoorTemperature_C: room_C,
    },
  };
  const rule = {
    source: temperatureRule.source,
    clause: temperatureRule.clause,
    known: temperatureRule.known,
  };
  const list = (pick: (layer: Candidate['layers'][number]) => number): WorkingInput[] =>
    boards.map((layer, index) => valueIn(`R_${index + 1}`, layer.name, pick(layer), 'resistance'));
  const table = condensationControl.table;
  const temperature = condensationControl.temperature;
  const humidity = condensationControl.humidity;
  return [
    {
      id: 'above-deck-labeled',
      title: 'R above the deck, as labeled',
      formula: 'R = R₁ + R₂ + …',
      formulaTex: 'R = \\sum_i R_i',
      inputs: list((layer) => layer.resistance_m2K_W),
      result: valueIn('R', 'above the deck, labeled', thermal.aboveDeck_m2K_W, 'resistance'),
      limit: {
        value: table.minimum_m2K_W,
        kind: 'resistance',
        meaning: `least above the deck, zone ${climate.zone}`,
        meets: table.meets,
      },
      source: aboveDeckTable.source,
      clause: aboveDeckTable.clause,
      known: aboveDeckTable.known,
    },
    {
      id: 'above-deck-winter',
      title: 'R above the deck in the three coldest months',
      formula: 'R = Σ R(T_mean of each board)',
      formulaTex: 'R = \\sum_i R_i(T_{m,i})',
      inputs: list((layer) => layer.winterResistance_m2K_W),
      result: valueIn('R_above', 'above the deck, winter', thermal.aboveDeckWinter_m2K_W, 'resistance'),
      source: 'NRCA-MRCA-1987',
      clause: 'polyisocyanurate against its mean temperature; other boards keep their label',
      known: 'seen-secondary',
      note: 'The mean temperature of each layer is found by repeated substitution.',
    },
    {
      id: 'share-needed',
      title: 'Share of R that must lie above the deck',
      formula: 'r = (T_lim − T_out) / (T_in − T_out)',
      formulaTex: 'r = \\frac{T_{lim} - T_{out}}{T_{in} - T_{out}}',
      inputs: [limit, outdoor, indoor],
      result: valueIn('r', 'needed share', temperature.shareNeeded_pct, 'share'),
      ...rule,
      calculation,
    },
    {
      id: 'above-deck-needed',
      title: 'R above the deck for the 45 °F rule',
      formula: 'R_above ≥ R_below · (T_lim − T_out) / (T_in − T_lim)',
      formulaTex: 'R_{above} \\ge R_{below}\\,\\frac{T_{lim} - T_{out}}{T_{in} - T_{lim}}',
      inputs: [below, limit, outdoor, indoor],
      result: valueIn('R_above', 'needed above the deck', temperature.aboveDeckNeeded_m2K_W, 'resistance'),
      ...rule,
      calculation,
    },
    {
      id: 'deck-temperature',
      title: 'Temperature of the deck underside',
      formula: 'T = T_out + (T_in − T_out) · R_above / (R_above + R_below)',
      formulaTex: 'T = T_{out} + (T_{in} - T_{out})\\,\\frac{R_{above}}{R_{above} + R_{below}}',
      inputs: [outdoor, indoor, above, below],
      result: valueIn('T', 'deck underside', temperature.deck_C, 'temperature'),
      limit: {
        value: temperature.limit_C,
        kind: 'temperature',
        meaning: 'least deck temperature',
        meets: temperature.meets,
      },
      ...rule,
      calculation,
      note: 'Films, deck and covering are left out of R, on the safe side.',
    },
    {
      id: 'highest-humidity',
      title: 'Highest indoor humidity that keeps the deck dry',
      formula: 'φ = p_sat(T_deck) / p_sat(T_room)',
      formulaTex: '\\varphi = \\frac{p_{sat}(T_{deck})}{p_{sat}(T_{room})}',
      inputs: [valueIn('T_room', 'indoor air of this house', room_C, 'temperature'), outdoor, above, below],
      result: valueIn('φ', 'highest indoor relative humidity', humidity.maximumIndoor_pct, 'humidity'),
      limit: {
        value: humidity.indoor_pct,
        kind: 'humidity',
        meaning: 'indoor humidity given',
        meets: humidity.meets,
      },
      source: 'ASHRAE-HOF-2017-CH1',
      clause: 'equations 5 and 6',
      known: 'seen-secondary',
      calculation,
    },
    {
      id: 'condensate',
      title: 'Winter condensate by the monthly method',
      formula: 'g = δ₀ · [(p_b − p_c)/(s_b − s_c) − (p_c − p_a)/(s_c − s_a)]',
      formulaTex: 'g = \\delta_0\\left[\\frac{p_b - p_c}{s_b - s_c} - \\frac{p_c - p_a}{s_c - s_a}\\right]',
      inputs: [valueIn('φ_in', 'indoor humidity', humidity.indoor_pct, 'humidity')],
      result: valueIn('M', 'most at one plane in the year', candidate.moisture.peak_kg_m2, 'waterPerArea'),
      source: 'ISO-13788-2012',
      clause: 'clause 6',
      known: 'memory',
      note: candidate.moisture.method,
    },
  ];
}
