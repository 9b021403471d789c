/** Reading a quantity as people type it, saying what was understood or what is allowed. */
import { measures } from './scales.ts';
import type { Measure, MeasureKind, System } from './scales.ts';
import { show } from './show.ts';

export type Reading =
  | { readonly ok: true; readonly value: number; readonly understood: string }
  | { readonly ok: false; readonly message: string };

const LONGEST_TEXT = 60;
const LONGEST_QUOTE = 24;
/** No quantity of a roof is larger than this in any accepted unit. */
const GREATEST = 1e9;
const RISE_BASE = 12;
const DEGREES_PER_HALF_TURN = 180;
const lengthKinds: readonly MeasureKind[] = ['length', 'span', 'elevation', 'equivalentAirLayer'];

/** The fraction signs of Unicode's number forms that a keyboard or a phone may offer. */
const fractionSigns: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** One spelling for every sign that has several. */
function plain(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅛⅜⅝⅞]/g, (sign) => ` ${fractionSigns[sign] ?? ''}`)
    .replace(/\u2044/g, '/')
    .replace(/[\u2212\u2010-\u2015]/g, '-')
    .replace(/[\u2018\u2019\u2032]/g, "'")
    .replace(/[\u201C\u201D\u2033]/g, '"')
    .replace(/[\s\u00A0\u202F]+/g, ' ')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/₂/g, '2')
    .trim()
    .toLowerCase();
}

/** `1,240` and `1.240,5` have thousands marks; `1,5` and `0,250` a decimal comma; anything else is no number. */
function decimal(text: string): number | undefined {
  if (/^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(text)) return Number(text.replaceAll(',', ''));
  if (/^[1-9]\d{0,2}(\.\d{3})+,\d+$/.test(text)) return Number(text.replaceAll('.', '').replace(',', '.'));
  if (/^(\d+([.,]\d*)?|[.,]\d+)$/.test(text)) return Number(text.replace(',', '.'));
  return undefined;
}

const NUMBER = String.raw`[\d,]*\d[ -]+\d+\/\d+|\d+\/\d+|[\d.,]*\d[.,]?`;

function amountOf(text: string): number | undefined {
  const mixed = /^(?:([\d,]+)[ -]+)?(\d+)\/(\d+)$/.exec(text);
  if (mixed === null) return decimal(text);
  const whole = decimal(mixed[1] ?? '0');
  const below = Number(mixed[3]);
  return below === 0 || whole === undefined ? undefined : whole + Number(mixed[2]) / below;
}

/** `m²·K/W`, `Btu/(h·ft²·°F)`, `in.` in the spelling of the table of accepted units. */
function unitName(text: string): string {
  return text
    .replace(/°(?=\s*[fck])/g, '')
    .replace(/°/g, 'deg')
    .replace(/[·*()\s^]/g, '')
    .replace(/\.(?=$|[a-z/])/g, '');
}

/** The unit that follows a bare number after feet or meters: `1' 4` means inches, `1 m 20` centimeters. */
const smaller: Readonly<Record<string, string>> = { ft: 'in', foot: 'in', feet: 'in', "'": 'in', m: 'cm' };

/** One or two numbers with length units: `16"`, `1'-4 1/2"`, `1 ft 4 in`, `1 m 20 cm`. */
function lengthOf(text: string, measure: Measure, system: System): number | undefined {
  const unit = String.raw`"|''|'|[a-z]+`;
  const whole = new RegExp(
    `^(${NUMBER}) ?(?:(${unit})\\.?(?:[ ,-]*(${NUMBER}) ?(?:(${unit})\\.?)?)?)?$`,
  ).exec(text);
  if (whole === null) return undefined;
  const [, firstText = '', firstUnit, secondText, secondUnit] = whole;
  const first = amountOf(firstText);
  if (first === undefined) return undefined;
  if (firstUnit === undefined) return measure[system].inside(first);
  const firstSize = measure.accepted[firstUnit];
  if (firstSize === undefined) return undefined;
  if (secondText === undefined) return firstSize(first);
  const second = amountOf(secondText);
  const secondSize = measure.accepted[secondUnit ?? smaller[firstUnit] ?? ''];
  if (second === undefined || secondSize === undefined || secondSize(1) >= firstSize(1)) return undefined;
  return firstSize(first) + secondSize(second);
}

/** `7:12`, `7/12`, `7 in 12`, `7`, `30°`. */
function pitchOf(text: string): number | undefined {
  const pair = /^([\d.,]+) ?(?::|\/|in|on) ?(\d+)$/.exec(text);
  if (pair !== null) {
    const rise = decimal(pair[1] ?? '');
    const run = Number(pair[2]);
    return rise === undefined || run === 0 ? undefined : (rise * RISE_BASE) / run;
  }
  const single = /^([\d.,]+) ?(°|deg|degrees)?$/.exec(text);
  const number = decimal(single?.[1] ?? '');
  if (single === null || number === undefined) return undefined;
  if (single[2] === undefined) return number;
  return number < DEGREES_PER_HALF_TURN / 2
    ? RISE_BASE * Math.tan((number * Math.PI) / DEGREES_PER_HALF_TURN)
    : undefined;
}

/** `R-26`, `RSI 4.6`, `60 psf`, `$12/ft²`, `35 %`: letters before, a number, a unit after, either may be absent. */
function plainOf(text: string, measure: Measure, system: System): number | undefined {
  const parts = new RegExp(`^(?:(rsi|r|u|\\$)[ :=-]*)?(${NUMBER}) ?(.*)$`).exec(text);
  if (parts === null) return undefined;
  const [, before, numberText = '', after = ''] = parts;
  const number = amountOf(numberText);
  if (number === undefined) return undefined;
  const leading = before === 'r' || before === 'rsi' ? before : undefined;
  if (before !== undefined && !fits(before, measure)) return undefined;
  const unit = unitName(after);
  if (unit === '') {
    const inside = leading === undefined ? measure[system].inside : measure.accepted[leading];
    return inside?.(number);
  }
  return measure.accepted[unit]?.(number);
}

/** Whether letters before the number belong to this kind: R and RSI to resistances, U to U-factors, $ to costs. */
function fits(before: string, measure: Measure): boolean {
  if (before === '$') return measure.IP.style === 'dollars';
  if (before === 'u') return measure.accepted['w/m2k'] !== undefined;
  return measure.accepted[before] !== undefined;
}

function quoted(text: string): string {
  const clean = text.replace(/[^\p{L}\p{N}\p{P}\p{S} ]+/gu, ' ').trim();
  return clean.length > LONGEST_QUOTE ? `“${clean.slice(0, LONGEST_QUOTE)}…”` : `“${clean}”`;
}

function fault(text: string, measure: Measure): Reading {
  const example = `write for example ${measure.examples}`;
  if (text.trim() === '') return { ok: false, message: `Nothing is written here; ${example}.` };
  return { ok: false, message: `${quoted(text)} is not ${measure.name}; ${example}.` };
}

/**
 * What a person meant, as the SI value inside, and in words (`16 in (406 mm)`); or what is allowed instead.
 * A bare number is taken in the unit of `unitOf(kind, system)`. Ranges are the case schema's business.
 */
export function read(kind: MeasureKind, text: string, system: System): Reading {
  const measure: Measure = measures[kind];
  if (text.length > LONGEST_TEXT) return fault(text, measure);
  const cleaned = plain(text);
  const sign = /^[+-] ?/.exec(cleaned)?.[0] ?? '';
  const body = cleaned.slice(sign.length);
  const negative = sign.startsWith('-');
  const signIfNeeded = (typed: number | undefined): number | undefined =>
    negative && typed !== undefined ? -typed : typed;

  let value: number | undefined;
  if (kind === 'pitch') value = signIfNeeded(pitchOf(body));
  else if (lengthKinds.includes(kind)) value = signIfNeeded(lengthOf(body, measure, system));
  else value = plainOf(body, negative ? negated(measure) : measure, system);

  if (value === undefined || !Number.isFinite(value)) return fault(text, measure);
  if (Object.is(value, -0)) value = 0;
  if (value < 0 && !measure.mayBeNegative) {
    return { ok: false, message: `${quoted(text)} is below zero; write for example ${measure.examples}.` };
  }
  if (Math.abs(value) > GREATEST) return fault(text, measure);
  if (kind === 'count' && !Number.isInteger(value)) {
    return {
      ok: false,
      message: `${quoted(text)} is not a whole number; write for example ${measure.examples}.`,
    };
  }
  return { ok: true, value, understood: bothWays(kind, value, system) };
}

/** The same measure for a typed negative number: -10 °F must be negated before it is converted. */
function negated(measure: Measure): Measure {
  const flip = (inside: (typed: number) => number) => (typed: number) => inside(-typed);
  return {
    ...measure,
    IP: { ...measure.IP, inside: flip(measure.IP.inside) },
    SI: { ...measure.SI, inside: flip(measure.SI.inside) },
    accepted: Object.fromEntries(
      Object.entries(measure.accepted).map(([name, inside]) => [name, flip(inside)]),
    ),
  };
}

function bothWays(kind: MeasureKind, value: number, system: System): string {
  const first = show(kind, value, system);
  const second = show(kind, value, system === 'IP' ? 'SI' : 'IP');
  return first === second ? first : `${first} (${second})`;
}
