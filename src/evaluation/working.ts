/** One worked number: formula, inputs, result, limit, source. Built by judgement/workings.ts, shown by report and app. */
import type { MeasureKind } from '../measures.ts';

export interface WorkingInput {
  readonly symbol: string;
  readonly meaning: string;
  readonly value: number;
  readonly kind: MeasureKind;
}

export interface Working {
  /** Stable id, used as an anchor: `deck-temperature`. */
  readonly id: string;
  readonly title: string;
  /** The formula in symbols, plain text with Unicode: `T = T_out + (T_in − T_out) · R_out / (R_out + R_in)`. */
  readonly formula: string;
  /** The same in LaTeX, for typesetting. */
  readonly formulaTex: string;
  readonly inputs: readonly WorkingInput[];
  readonly result: WorkingInput;
  readonly limit?: {
    readonly value: number;
    readonly kind: MeasureKind;
    readonly meaning: string;
    readonly meets: boolean;
  };
  /** Id in content/tables/sources.json, with the clause. */
  readonly source: string;
  readonly clause: string;
  readonly known: string;
  /** The `calc` call that reproduces the number, when one exists. */
  readonly calculation?: { readonly name: string; readonly input: unknown };
  readonly note?: string;
}
