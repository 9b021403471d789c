/** The one-page summary: what is recommended, its section, four figures, three reasons, three worries. */
import type { Candidate } from '../../evaluation/evaluation.ts';
import type { Block, Inline, KeyFigure, Section } from '../document.ts';
import { paragraph } from '../document.ts';
import { criterionName } from '../../catalog/criterionNames.ts';
import { measureWords } from '../compareTable.ts';
import { points } from '../figures.ts';
import { capital, spaced } from '../names.ts';
import type { Context } from './context.ts';
import { citationOf, givenSource, section } from './context.ts';
import { pictureBlocks } from './drawings.ts';

const more = (size: string, isMet: boolean, over = 'above the limit', under = 'below the limit'): string =>
  `${size} ${isMet ? over : under}`;

function aboveDeckFigure(context: Context, best: Candidate): KeyFigure {
  const { table } = best.condensationControl;
  return {
    id: 'above-deck',
    label: 'R above the deck',
    value: context.say('resistance', table.provided_m2K_W),
    limit: `at least ${context.say('resistance', table.minimum_m2K_W)}`,
    margin: more(context.say('resistance', Math.abs(table.margin_m2K_W)), table.margin_m2K_W >= 0),
    verdict: table.meets ? 'meets' : 'misses',
    source: citationOf(context.evaluation.requirements.aboveDeckTable),
  };
}

function deckFigure(context: Context, best: Candidate): KeyFigure {
  const { temperature } = best.condensationControl;
  return {
    id: 'deck-temperature',
    label: 'Deck in the three coldest months',
    value: context.say('temperature', temperature.deck_C),
    limit: `at least ${context.say('temperature', temperature.limit_C)}`,
    margin: more(
      context.say('temperatureDifference', Math.abs(temperature.margin_K)),
      temperature.margin_K >= 0,
    ),
    verdict: temperature.meets ? 'meets' : 'misses',
    source: citationOf(context.evaluation.requirements.temperatureRule),
  };
}

/** The energy code asks for the R or for the U: the figure shows the path that the roof takes. */
function heatFigure(context: Context, best: Candidate): KeyFigure {
  const { ceiling } = context.evaluation.requirements;
  const { thermal } = best;
  if (!thermal.meetsTransmittance && thermal.meetsCeilingResistance) {
    return {
      id: 'total-resistance',
      label: 'R of all layers together',
      value: context.say('resistance', thermal.total_m2K_W),
      limit: `at least ${context.say('resistance', ceiling.resistance_m2K_W)}`,
      margin: more(context.say('resistance', Math.abs(thermal.ceilingMargin_m2K_W)), true),
      verdict: 'meets',
      source: citationOf(ceiling),
    };
  }
  return {
    id: 'transmittance',
    label: 'Heat loss of the whole roof',
    value: context.say('transmittance', thermal.transmittance_W_m2K),
    limit: `at most ${context.say('transmittance', ceiling.transmittance_W_m2K)}`,
    margin: more(
      context.say('transmittance', Math.abs(thermal.transmittanceMargin_W_m2K)),
      thermal.meetsTransmittance,
      'below the limit',
      'above the limit',
    ),
    verdict: thermal.meetsTransmittance ? 'meets' : 'misses',
    source: citationOf(ceiling),
  };
}

/** The edge against the limit that was given, or the humidity that the deck bears when none was. */
function fourthFigure(context: Context, best: Candidate): KeyFigure {
  const { edge, condensationControl } = best;
  if (edge.fasciaLimit_m !== null && edge.fasciaMargin_m !== null) {
    const isMet = edge.fasciaMargin_m >= 0;
    return {
      id: 'fascia',
      label: 'Height of the fascia',
      value: context.say('length', edge.fascia_m),
      limit: `at most ${context.say('length', edge.fasciaLimit_m)}`,
      margin: more(
        context.say('length', Math.abs(edge.fasciaMargin_m)),
        isMet,
        'below the limit',
        'above the limit',
      ),
      verdict: isMet ? 'meets' : 'misses',
      source: { source: givenSource, clause: 'limit of the fascia', known: 'as answered' },
    };
  }
  const { humidity } = condensationControl;
  return {
    id: 'humidity',
    label: 'Winter humidity indoors',
    value: context.say('humidity', humidity.indoor_pct),
    limit: `at most ${context.say('humidity', humidity.maximumIndoor_pct)}`,
    margin: `${context.say('humidity', Math.abs(humidity.margin_pct))} of humidity ${humidity.meets ? 'below' : 'above'} the limit`,
    verdict: humidity.meets ? 'meets' : 'misses',
    source: {
      source: 'ASHRAE-HOF-2017-CH1',
      clause: 'equations 5 and 6, saturation at the deck',
      known: 'seen-secondary',
    },
  };
}

/** `+1.3 points`, `−0.8 points`. */
const signedPoints = (share: number): string => `${share > 0 ? '+' : ''}${points(share)} points`;

function because(context: Context): Block[] {
  const { reasons, worries, runnerUp } = context.evaluation.ranking.confidence;
  const against = context.evaluation.candidates.find((one) => one.id === runnerUp);
  const lines = (items: typeof reasons): Inline[] =>
    items.slice(0, 3).map((item) => {
      const name = criterionName(item.criterion);
      const own = item.text.startsWith(`${name}:`) ? item.text.slice(name.length + 1).trim() : item.text;
      const said = `${own.replace(/\.$/, '')} ${measureWords(item.criterion)}`.trim();
      return [
        { text: `${name}: `, strong: true as const },
        { text: `${said}; ${signedPoints(item.difference)}` },
      ];
    });
  const sides = [
    { title: 'Three reasons for it', items: lines(reasons) },
    { title: 'Three worries about it', items: lines(worries) },
  ].filter((side) => side.items.length > 0);
  // Reasons and worries follow as lists; the whole rationale opens the chapter on the other strategies.
  const said = context.evaluation.rationale[context.role];
  const ends = said.filter((_, index) => index === 0 || index === said.length - 1);
  const lead = [
    ...(ends.length === 0 ? [] : [paragraph(ends.join(' '))]),
    ...(against === undefined
      ? []
      : [
          paragraph(
            'The figures below stand against the best of each other strategy, even where a rule excludes it.',
          ),
        ]),
  ];
  return [...lead, ...(sides.length === 0 ? [] : [{ kind: 'sides' as const, sides }])];
}

/** The cautions that nobody may overlook, by name, with a link to the full text. */
function warnings(context: Context): Block[] {
  const heavy = context.evaluation.cautions.filter((one) => one.level === 'stop' || one.level === 'strong');
  const names = heavy.map((one) => context.words.cautions[one.id]?.title ?? capital(spaced(one.id)));
  const unique = [...new Set(names)];
  return [
    paragraph([
      { text: 'This record approves nothing. ', strong: true },
      { text: 'Structure, permit and workmanship are settled by the people named under ' },
      { text: 'what others decide', href: '#deferrals' },
      { text: '.' },
      ...(unique.length === 0
        ? []
        : [
            { text: ` Read the ${unique.length === 1 ? 'strong caution' : 'strong cautions'} first: ` },
            { text: unique.join('; '), strong: true as const, href: '#cautions' },
            { text: '.' },
          ]),
    ]),
  ];
}

export function summarySection(context: Context, best: Candidate): Section {
  const figures: Block = {
    kind: 'keyFigures',
    items: [
      aboveDeckFigure(context, best),
      deckFigure(context, best),
      heatFigure(context, best),
      fourthFigure(context, best),
    ],
  };
  const made = section(context, 'summary', [
    figures,
    ...pictureBlocks(context, best, 'summary-eave'),
    ...because(context),
    ...warnings(context),
  ]);
  const [lead, ...rest] = made.blocks;
  return {
    ...made,
    blocks: [...(lead?.kind === 'paragraph' ? [{ ...lead, tone: 'lead' as const }] : []), ...rest],
  };
}
