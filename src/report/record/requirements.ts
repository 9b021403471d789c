/** What is asked of the roof, what it provides, the margin and the clause. */
import { monthNames } from '../../catalog/months.ts';
import { placeNote } from '../../catalog/placeNotes.ts';
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { Block, Cell, Citation, Section, Table, Verdict } from '../document.ts';
import { cell, paragraph } from '../document.ts';
import { basisNames, capital, climateNoteLead, governedNames, spaced } from '../names.ts';
import type { Context } from './context.ts';
import { cautionLinks } from './closing.ts';
import { citationOf, cited, marginText, section } from './context.ts';

interface Line {
  readonly what: string;
  readonly asked: string;
  readonly provided: string;
  readonly margin: string;
  readonly verdict: Verdict;
  readonly source: Citation;
}

const verdictOf = (meets: boolean): Verdict => (meets ? 'meets' : 'misses');

function lines(context: Context, best: Candidate): Line[] {
  const { requirements } = context.evaluation;
  const { say } = context;
  const { thermal, condensationControl } = best;
  const { table, temperature, humidity } = condensationControl;
  const { ceiling, slope } = requirements;
  return [
    {
      what: 'R of all layers together (R path of the energy code)',
      asked: `at least ${say('resistance', ceiling.resistance_m2K_W)}`,
      provided: say('resistance', thermal.total_m2K_W),
      margin: marginText(context, 'resistance', thermal.ceilingMargin_m2K_W),
      verdict: verdictOf(thermal.meetsCeilingResistance),
      source: citationOf(ceiling),
    },
    {
      what: 'Heat loss of the whole roof (U path of the energy code)',
      asked: `at most ${say('transmittance', ceiling.transmittance_W_m2K)}`,
      provided: say('transmittance', thermal.transmittance_W_m2K),
      margin: marginText(context, 'transmittance', thermal.transmittanceMargin_W_m2K),
      verdict: verdictOf(thermal.meetsTransmittance),
      source: citationOf(ceiling),
    },
    {
      what: 'R above the deck, condensation-control table',
      asked: `at least ${say('resistance', table.minimum_m2K_W)}`,
      provided: say('resistance', table.provided_m2K_W),
      margin: marginText(context, 'resistance', table.margin_m2K_W),
      verdict: verdictOf(table.meets),
      source: citationOf(requirements.aboveDeckTable),
    },
    {
      what: 'Deck temperature, mean of the three coldest months',
      asked: `at least ${say('temperature', temperature.limit_C)}`,
      provided: say('temperature', temperature.deck_C),
      margin: marginText(context, 'temperatureDifference', temperature.margin_K),
      verdict: verdictOf(temperature.meets),
      source: citationOf(requirements.temperatureRule),
    },
    {
      what: 'Share of the R above the deck that this temperature needs',
      asked: `at least ${say('share', temperature.shareNeeded_pct)}`,
      provided: say('share', temperature.share_pct),
      margin: marginText(context, 'share', temperature.share_pct - temperature.shareNeeded_pct),
      verdict: verdictOf(temperature.share_pct >= temperature.shareNeeded_pct),
      source: citationOf(requirements.temperatureRule),
    },
    {
      what: 'Indoor winter humidity before the deck reaches its dew point',
      asked: `at most ${say('humidity', humidity.maximumIndoor_pct)}`,
      provided: say('humidity', humidity.indoor_pct),
      margin: marginText(context, 'humidity', humidity.margin_pct),
      verdict: verdictOf(humidity.meets),
      source: {
        source: 'ASHRAE-HOF-2017-CH1',
        clause: 'equations 5 and 6, saturation at the deck',
        known: 'seen-secondary',
      },
    },
    {
      what: 'Pitch for this covering',
      asked: `at least ${say('pitch', slope.minimum_rise_per_12)}`,
      provided: say('pitch', slope.pitch_rise_per_12),
      margin: marginText(context, 'pitch', slope.pitch_rise_per_12 - slope.minimum_rise_per_12),
      verdict: verdictOf(slope.meetsMinimum),
      source: citationOf(slope),
    },
  ];
}

export function requirementsTable(context: Context, best: Candidate): Table {
  return {
    kind: 'table',
    id: 'requirements-table',
    caption: 'Asked, provided, margin',
    columns: [
      { id: 'what', title: 'Requirement', align: 'left', width: 3.4 },
      { id: 'asked', title: 'Limit', align: 'left', width: 2.1 },
      { id: 'provided', title: 'Provided', align: 'left', width: 2 },
      { id: 'margin', title: 'Margin', align: 'left', width: 2 },
      { id: 'source', title: 'Source', align: 'left', width: 2.4 },
    ],
    rows: lines(context, best).map((line): Cell[] => [
      cell(line.what),
      cell(line.asked),
      cell(line.provided, line.verdict),
      cell(line.margin),
      cell([cited(line.source)]),
    ]),
    note: 'The energy code is met by the R path or by the U path; one of them is enough.',
  };
}

/** ` "denver.epw" (Denver Intl Ap, CO, USA; TMY3; years 1976 to 2005)`; nothing without a weather file. */
function fileInWords({ evaluation }: Context): string {
  const { weatherFile: file } = evaluation.case.place;
  if (evaluation.climate.basis !== 'weather-file' || file === undefined) return '';
  const { name, station, dataSet, firstYear, lastYear } = file;
  const years =
    firstYear === undefined ? [] : [`years ${firstYear}${lastYear === undefined ? '' : ` to ${lastYear}`}`];
  return ` “${name}” (${[station, ...(dataSet === undefined ? [] : [dataSet]), ...years].join('; ')})`;
}

/** Both conventions for the mean of a day where the hours are known. */
function degreeDaysInWords({ evaluation: { climate }, say }: Context): string {
  const counted = `${say('degreeDays', climate.heatingDegreeDays18_Cd)} (base 18 °C)`;
  const { heatingDegreeDays18Extremes_Cd: extremes_Cd } = climate;
  return extremes_Cd === null
    ? `${counted}, estimated from the monthly means`
    : `${counted} by the means of its hours, ${say('degreeDays', extremes_Cd)} by the mean of each day’s highest and lowest`;
}

function climateText(context: Context): Block[] {
  const { climate } = context.evaluation;
  const { say } = context;
  const months = climate.coldestMonths
    .map((month) => monthNames[month - 1] ?? '')
    .filter((name) => name !== '');
  const coldest = months.length === 0 ? 'the three coldest months' : months.join(', ');
  const notes = [...climate.notes.map(noteText), ...(climate.zoneDoubt === null ? [] : [climate.zoneDoubt])];
  const design =
    climate.designTemperature_C === null
      ? ''
      : ` Winter design temperature ${say('temperature', climate.designTemperature_C)}.`;
  return [
    paragraph(
      `${climate.placeName}, zone ${climate.zone} (${climate.zoneBasis}). Monthly climate from ${basisNames[climate.basis]}${fileInWords(context)}: mean of ${coldest} ${say('temperature', climate.coldestMean_C)}, heating degree-days ${degreeDaysInWords(context)}.${design}`,
    ),
    ...(notes.length === 0
      ? []
      : [
          {
            kind: 'list' as const,
            ordered: false,
            items: notes.map((note) => [{ text: climateNoteLead, emphasis: true as const }, { text: note }]),
          },
        ]),
  ];
}
/** The note of a code; a note written out by the evaluation stands for itself. */
const noteText = (id: string): string => placeNote(id)?.text ?? id;

function governed(requirements: Evaluation['requirements'], context: Context): Block[] {
  const { split, iceBarrier, interiorRetarder, slope } = requirements;
  const { say } = context;
  const ice = context.slots['iceBarrier'] ?? '';
  return [
    paragraph(
      `Asked for: ${say('resistance', split.aboveDeck_m2K_W)} above the deck and ${say('resistance', split.belowDeck_m2K_W)} below it, ${say('share', split.share_pct)} of the whole above. This was decided by ${governedNames[split.governedBy] ?? spaced(split.governedBy)}.`,
    ),
    {
      kind: 'list',
      ordered: false,
      items: [
        [{ text: 'Ice barrier: ', strong: true }, { text: `${ice} ` }, cited(citationOf(iceBarrier))],
        [
          { text: 'Vapor retarder inside: ', strong: true },
          {
            text: `${retarderName(interiorRetarder.class)}${
              interiorRetarder.permeance_ng === null
                ? ''
                : `, at most ${say('permeance', interiorRetarder.permeance_ng)}`
            }. `,
          },
          cited(citationOf(interiorRetarder)),
        ],
        ...(slope.doubleUnderlayment
          ? [
              [
                { text: 'Underlayment: ', strong: true as const },
                { text: 'laid double at this pitch. ' },
                cited(citationOf(slope)),
              ],
            ]
          : []),
      ],
    },
  ];
}

/** `III` and `class-iii` as `Class III`. */
const retarderName = (id: string): string =>
  /^(class-)?i+$/i.test(id) ? `Class ${id.replace(/^class-/i, '').toUpperCase()}` : capital(spaced(id));

export function requirementsSection(context: Context): Section {
  const { requirements } = context.evaluation;
  const questions = ['place', 'code', 'roof-shape', 'covering', 'indoor'];
  return section(context, 'requirements', [
    ...climateText(context),
    ...governed(requirements, context),
    ...(context.best === null ? [] : [requirementsTable(context, context.best)]),
    ...cautionLinks(context, questions),
  ]);
}
