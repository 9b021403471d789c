/** What code and climate ask of the roof of a case, before any variant is chosen. */
import { aboveDeckMinimum, temperatureRule } from '../catalog/condensationTable.ts';
import { covering, iceBarrierLength_m, iceBarrierRules, underlaymentLayers } from '../catalog/coverings.ts';
import { ceilingRequirement } from '../catalog/energyCode.ts';
import { permeance } from '../catalog/vapor.ts';
import { vaporRetarderClass } from '../catalog/vaporRetarder.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Climate, Requirements } from '../evaluation/evaluation.ts';
import { aboveDeckForTemperature_m2K_W, requiredAboveDeckShare } from '../physics/condensationControl.ts';
import { fillResistance_m2K_W } from './assembly.ts';
import { angleOfPitch_deg } from './geometry.ts';
import { rsiFromR } from '../units.ts';

const PERCENT = 100;
/** [m²·K/W] R-49: the ceiling total against which the above-deck table was sized (trade press, seen-secondary). */
const SHARE_BASE_M2K_W = rsiFromR(49);
/** [m] width of a common roll of self-adhered ice barrier: 36 in (common practice). */
const ROLL_M = 0.9144;

function ceilingOf(given: CompleteCase, climate: Climate): Requirements['ceiling'] {
  const found = ceilingRequirement(given.codes.edition, climate.zone);
  if (found.kind === 'notCovered') throw new RangeError(found.reason);
  const local = given.codes.localCeiling_m2K_W;
  return {
    resistance_m2K_W: local ?? found.resistance_m2K_W,
    transmittance_W_m2K: found.transmittance_W_m2K,
    local: local !== undefined,
    source: local === undefined ? found.source : 'USER',
    clause: found.place,
    known: found.known,
    note: found.note,
  };
}

function aboveDeckOf(given: CompleteCase, climate: Climate): Requirements['aboveDeckTable'] {
  const found = aboveDeckMinimum(given.codes.edition, climate.zone, given.covering.kind);
  if (found.kind === 'notCovered') throw new RangeError(found.reason);
  const local = given.codes.localAboveDeck_m2K_W;
  return {
    resistance_m2K_W: local ?? found.resistance_m2K_W,
    local: local !== undefined,
    source: local === undefined ? found.source : 'USER',
    clause: found.place,
    known: found.known,
    note: found.note,
  };
}

/** What decides the R above the deck: the figure asked for, else the greatest of the three rules. */
function split(
  given: CompleteCase,
  table_m2K_W: number,
  temperature_m2K_W: number,
  ceiling_m2K_W: number,
): Requirements['split'] {
  const belowDeck_m2K_W = fillResistance_m2K_W(given);
  const { aboveDeckTarget_m2K_W, totalTarget_m2K_W } = given.insulation;
  const rules: [string, number][] =
    aboveDeckTarget_m2K_W !== undefined
      ? [['wanted', aboveDeckTarget_m2K_W]]
      : totalTarget_m2K_W !== undefined
        ? [['total-wanted', Math.max(0, totalTarget_m2K_W - belowDeck_m2K_W)]]
        : [
            ['table', table_m2K_W],
            ['temperature', temperature_m2K_W],
            ['ceiling', Math.max(0, ceiling_m2K_W - belowDeck_m2K_W)],
          ];
  const [governedBy, aboveDeck_m2K_W] = rules.reduce((most, rule) => (rule[1] > most[1] ? rule : most));
  const total = aboveDeck_m2K_W + belowDeck_m2K_W;
  return {
    belowDeck_m2K_W,
    aboveDeck_m2K_W,
    share_pct: total > 0 ? PERCENT * (aboveDeck_m2K_W / total) : PERCENT,
    governedBy,
  };
}

function slopeOf(given: CompleteCase): Requirements['slope'] {
  const row = covering(given.covering.kind);
  const pitch = given.roof.pitch_rise_per_12;
  const layers = underlaymentLayers(given.covering.kind, pitch);
  return {
    pitch_rise_per_12: pitch,
    angle_deg: angleOfPitch_deg(pitch),
    minimum_rise_per_12: row.minimumPitch_rise_per_12,
    meetsMinimum: layers !== 'not-allowed',
    doubleUnderlayment: layers === 'double',
    source: row.source,
    clause: row.place,
    known: row.known,
  };
}

function iceBarrierOf(given: CompleteCase): Requirements['iceBarrier'] {
  const [rule] = iceBarrierRules();
  const length_m = iceBarrierLength_m(
    given.overhang.eave_m + given.wall.thickness_m,
    given.roof.pitch_rise_per_12,
  );
  return {
    required: given.codes.iceBarrierRequired && covering(given.covering.kind).iceBarrierApplies,
    length_m,
    courses: Math.ceil(length_m / ROLL_M),
    source: rule?.source ?? 'IRC-2018-R905.1.2',
    clause: 'R905.1.2; measured from the eave edge of the finished roof, overhang and wall thickness in',
    known: rule?.known ?? 'seen-secondary',
  };
}

function retarderOf(given: CompleteCase): Requirements['interiorRetarder'] {
  const { interiorRetarder } = given.belowDeck;
  const found = interiorRetarder === 'none' ? null : permeance(interiorRetarder);
  const permeance_ng = found?.kind === 'permeance' ? found.dry_ng_Pasm2 : null;
  return {
    class: permeance_ng === null ? 'none' : vaporRetarderClass(permeance_ng),
    permeance_ng,
    source: 'IRC-2018-R202',
    clause: 'vapor retarder class, desiccant method',
    known: 'seen-secondary',
  };
}

/**
 * Everything asked of the roof by code and climate.
 *
 * table share = table R / R-49; R above the deck = the user's, else max(table, 45 °F rule, ceiling − below)
 *
 * @param given    [-] the complete case
 * @param climate  [°C] its climate
 * @returns        [m²·K/W, %, m] see the schema; local figures of the case go before the model code's
 * @throws         RangeError when no table covers the edition and zone
 * @source         IRC-2018-R806.5 table and item 5.1.4 (seen-secondary); IECC-2021 R402.1 (memory); the editions' own rows
 * @assumes        resistance below the deck is the cavity's alone; wall thickness is added to the overhang for the ice barrier
 */
export function requirementsOf(given: CompleteCase, climate: Climate): Requirements {
  const ceiling = ceilingOf(given, climate);
  const aboveDeckTable = aboveDeckOf(given, climate);
  const belowDeck = fillResistance_m2K_W(given);
  const temperature_m2K_W = aboveDeckForTemperature_m2K_W(belowDeck, climate.coldestMean_C);
  return {
    edition: given.codes.edition,
    ceiling,
    aboveDeckTable,
    tableShare_pct: (PERCENT * aboveDeckTable.resistance_m2K_W) / SHARE_BASE_M2K_W,
    temperatureRule: {
      limit_C: temperatureRule.deckLimit_C,
      indoor_C: temperatureRule.indoor_C,
      outdoorMean_C: climate.coldestMean_C,
      share_pct: PERCENT * requiredAboveDeckShare(climate.coldestMean_C),
      aboveDeck_m2K_W: temperature_m2K_W,
      source: temperatureRule.source,
      clause: temperatureRule.place,
      known: temperatureRule.known,
    },
    split: split(given, aboveDeckTable.resistance_m2K_W, temperature_m2K_W, ceiling.resistance_m2K_W),
    slope: slopeOf(given),
    iceBarrier: iceBarrierOf(given),
    interiorRetarder: retarderOf(given),
  };
}
