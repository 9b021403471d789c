/** Heat lost through the recommended roof: two methods side by side, parts of the roof, one heating season. */
import type { Candidate } from '../../evaluation/evaluation.ts';
import type { Block, Cell, Section, Table } from '../document.ts';
import { cell, paragraph } from '../document.ts';
import { capital } from '../names.ts';
import type { Context } from './context.ts';
import { cited, section } from './context.ts';
import { plotBlocks } from './plots.ts';

const combinedMethod = { source: 'ISO-6946-2017', clause: 'combined method', known: 'memory' };

function methodsTable(context: Context, best: Candidate): Table {
  const { say } = context;
  const { thermal } = best;
  const { combined, season } = thermal;
  const rows: readonly (readonly [string, string, string | Cell])[] = [
    [
      'Whole roof, parallel path',
      `U ${say('transmittance', thermal.transmittance_W_m2K)}`,
      capital(thermal.transmittanceSummary),
    ],
    [
      'R effective',
      say('resistance', thermal.effectiveResistance_m2K_W),
      'One over the U of the whole roof: what a roof without any bridge would need',
    ],
    [
      'Field, parallel path',
      `U ${say('transmittance', thermal.fieldTransmittance_W_m2K)}`,
      'Away from eaves and rakes, screws left out',
    ],
    [
      'Field, combined method',
      `U ${say('transmittance', combined.transmittance_W_m2K)}, ${say('resistance', combined.resistance_m2K_W)}`,
      cell([{ text: 'Mean of the two limits below. ' }, cited(combinedMethod)]),
    ],
    [
      'Its upper and lower limit of R',
      `${say('resistance', combined.upperLimit_m2K_W)} and ${say('resistance', combined.lowerLimit_m2K_W)}`,
      `Greatest error of the method ${say('share', combined.error_pct)}`,
    ],
    [
      'Heat lost in a heating season',
      `${say('energy', season.whole_kWh)}, ${say('energyPerArea', season.perArea_kWh_m2)}`,
      season.basis,
    ],
    [
      'Heating degree days',
      say('degreeDays', season.heatingDegreeDays18_Cd),
      `To a base of ${say('temperature', DEGREE_DAY_BASE_C)}`,
    ],
  ];
  return {
    kind: 'table',
    id: 'heat-table',
    caption: 'Heat loss by both methods',
    columns: [
      { id: 'what', title: 'What', align: 'left', width: 2.4 },
      { id: 'value', title: 'Value', align: 'left', width: 2.8 },
      { id: 'how', title: 'How', align: 'left', width: 4 },
    ],
    rows: rows.map(([what, value, how]) => [
      cell(what),
      cell(value),
      typeof how === 'string' ? cell(how) : how,
    ]),
  };
}

/** [°C] Base of the degree days that the season counts (name of the field). */
const DEGREE_DAY_BASE_C = 18;

const zoneNames: Readonly<Record<Candidate['thermal']['zones'][number]['id'], string>> = {
  field: 'Field',
  'eave-band': 'Band along the eaves',
  'rake-band': 'Band along the rakes',
  'edge-nailers': 'Nailers at the edges',
};

function zonesTable(context: Context, best: Candidate): Table {
  const { say } = context;
  return {
    kind: 'table',
    id: 'zones-table',
    caption: 'Parts of the roof with their own members across the insulation',
    columns: [
      { id: 'zone', title: 'Part', align: 'left', width: 2 },
      { id: 'what', title: 'Wood across the board', align: 'left', width: 3.2 },
      { id: 'area', title: 'Area', align: 'right', width: 1.8 },
      { id: 'parallel', title: 'U, parallel path', align: 'right', width: 2 },
      { id: 'combined', title: 'U, combined', align: 'right', width: 2 },
    ],
    rows: best.thermal.zones.map((zone) => [
      cell(zoneNames[zone.id]),
      cell(
        zone.woodShare_pct > 0
          ? `${capital(zone.what)}: ${say('share', zone.woodShare_pct)} of the area, ${say('length', zone.woodDepth_m)} deep`
          : capital(zone.what),
      ),
      cell(`${say('area', zone.area_m2)}, ${say('share', zone.share_pct)}`),
      cell(say('transmittance', zone.transmittance_W_m2K)),
      cell(say('transmittance', zone.combined_W_m2K)),
    ]),
  };
}

export function heatSection(context: Context, best: Candidate): Section {
  const blocks: Block[] = [
    methodsTable(context, best),
    ...plotBlocks(context, best, 'heat-loss'),
    zonesTable(context, best),
  ];
  return section(context, 'heat-lost', blocks, { level: 2 });
}

/** The one sentence that a builder needs. */
export const heatSentence = (context: Context, best: Candidate): Block =>
  paragraph(
    `In a heating season about ${context.say('energy', best.thermal.season.whole_kWh)} of heat leave through the roof. With screws and wood counted, the roof keeps heat like ${context.say('resistance', best.thermal.effectiveResistance_m2K_W)} without any.`,
  );
