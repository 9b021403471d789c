/** Fields of a question as inputs: ids, choices, and what an empty one stands for. */
import type { QuestionField } from '../../catalog/wordSchemas.ts';
import { show, type MeasureKind, type System } from '../../measures.ts';
import type { WeatherFile } from '../../case/case.ts';
import { monthNames } from './months.ts';
import { weatherFileInWords } from './weather.ts';

interface ShownChoice {
  readonly value: string;
  readonly label: string;
  readonly note?: string | undefined;
}

/** `roof.pitch_rise_per_12` -> an id for the input. */
export const fieldId = (path: string): string => `answer-${path.replaceAll('.', '-')}`;

const notSure = (assumed: string | null): ShownChoice => ({
  value: '',
  label: 'Not sure',
  note: assumed === null ? undefined : `Used then: ${assumed}`,
});

export function choicesOf(field: QuestionField, assumed: string | null): readonly ShownChoice[] {
  const options = (field.options ?? []).map(({ value, label, help }) => ({ value, label, note: help }));
  return [...options, notSure(assumed)];
}

export const yesNo = {
  choices: (assumed: string | null): readonly ShownChoice[] => [
    { value: 'yes', label: 'Yes' },
    { value: 'no', label: 'No' },
    notSure(assumed),
  ],
  text: (value: unknown): string => (value === undefined ? '' : value === true ? 'yes' : 'no'),
  value: (text: string): boolean | undefined => (text === '' ? undefined : text === 'yes'),
};

export function hintWithDefault(field: QuestionField, assumed: string | null): string | undefined {
  const empty = assumed === null ? undefined : `Empty means not sure: ${assumed}`;
  return [field.hint, empty].filter(Boolean).join(' ') || undefined;
}

/** An answer in words and units, as the review and the hints show it. */
export function answerInWords(field: QuestionField, value: unknown, system: System): string {
  if (value === undefined || value === null) return 'not sure';
  const named = (each: unknown): string =>
    field.options?.find((option) => option.value === each)?.label ?? String(each);
  switch (field.kind) {
    case 'choice':
    case 'text':
    case 'place':
      return named(value);
    case 'choices':
      return Array.isArray(value) && value.length > 0 ? value.map(named).join(', ') : 'none';
    case 'yes-no':
      return value === true ? 'Yes' : 'No';
    case 'months':
      return (value as number[])
        .map(
          (each, index) => `${monthNames[index] ?? ''} ${show(field.measure ?? 'temperature', each, system)}`,
        )
        .join(', ');
    case 'weather':
      return weatherFileInWords(value as WeatherFile);
    case 'weights':
      return Object.entries(value as Record<string, number>)
        .map(([id, weight]) => `${id} ${weight}`)
        .join(', ');
    default:
      return typeof value === 'number' ? show(field.kind as MeasureKind, value, system) : String(value);
  }
}
