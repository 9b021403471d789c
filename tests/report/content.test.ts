import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import recordJson from '../../content/tables/record.json' with { type: 'json' };
import sequenceJson from '../../content/tables/sequence.json' with { type: 'json' };
import { recordTable } from '../../src/catalog/record.ts';
import { sequenceTable } from '../../src/catalog/sequence.ts';
import { hasSource } from '../../src/catalog/sources.ts';

describe('the words of the record', () => {
  it('fit their schema and name each section once', () => {
    const table = v.parse(recordTable, recordJson);
    const ids = table.sections.map((section) => section.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(table.sources.filter((id) => !hasSource(id))).toEqual([]);
  });
});

describe('the construction sequence', () => {
  const table = v.parse(sequenceTable, sequenceJson);

  it('names hold points that exist, and every hold point is used', () => {
    const used = new Set(table.steps.flatMap((step) => step.hold ?? []));
    expect([...used].sort()).toEqual(table.holds.map((hold) => hold.id).sort());
  });

  it('cites sources that exist', () => {
    expect(table.holds.map((hold) => hold.source).filter((id) => !hasSource(id))).toEqual([]);
    expect(table.sources.filter((id) => !hasSource(id))).toEqual([]);
  });

  it('names each step once', () => {
    const ids = table.steps.map((step) => step.id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
