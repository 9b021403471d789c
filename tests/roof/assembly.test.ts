import { describe, expect, it } from 'vitest';
import {
  assemble,
  fillDepth_m,
  fillResistance_m2K_W,
  insulationLayers,
  layersAboveFraming,
} from '../../src/roof/assembly.ts';
import type { Variant } from '../../src/roof/variant.ts';
import { completed, layerOf, panel, variant, type Changes } from '../support/roofs.ts';

const stack = [
  { board: 'eps', thickness_m: 0.0762 },
  { board: 'eps', thickness_m: 0.0508 },
] as const;
const layers = (changes: Changes = {}, of: Partial<Variant> = {}) =>
  assemble(completed(changes), variant(of), stack);
const roles = (changes: Changes = {}, of: Partial<Variant> = {}) =>
  layers(changes, of).map(({ role }) => role);

const below = ['ceiling', 'interior-retarder', 'cavity', 'deck', 'air-barrier', 'insulation', 'insulation'];

describe('the layers of a build-up, inside to outside', () => {
  it('vented on furring: the gap lies under the second deck', () => {
    expect(roles()).toEqual([...below, 'vent-gap', 'upper-deck', 'underlayment', 'covering']);
  });

  it('unvented: the second deck lies on the board', () => {
    expect(roles({}, { ventilation: 'unvented' })).toEqual([
      ...below,
      'upper-deck',
      'underlayment',
      'covering',
    ]);
  });

  it('drainage mat: it lies between underlayment and covering', () => {
    expect(roles({}, { ventilation: 'drainage-mat' })).toEqual([
      ...below,
      'upper-deck',
      'underlayment',
      'drainage-mat',
      'covering',
    ]);
  });

  it('a panel brings its gap and its own top sheet', () => {
    const found = layers({}, panel);
    expect(found.map(({ role }) => role)).toEqual([
      ...below,
      'vent-gap',
      'upper-deck',
      'underlayment',
      'covering',
    ]);
    expect(layerOf(found, 'upper-deck').material).toBe('osb');
    expect(layerOf(found, 'vent-gap').thickness_m).toBe(0.0254);
    expect(layerOf(layers(), 'upper-deck').material).toBe('plywood');
  });

  it('lapped metal on furring needs no second deck but cross battens', () => {
    const metal = layers({ 'covering.kind': 'metal-panel' });
    expect(metal.map(({ role }) => role)).toEqual([...below, 'vent-gap', 'underlayment', 'covering']);
    expect(layerOf(metal, 'vent-gap').thickness_m).toBeCloseTo(0.0381 + 0.019, 9);
    expect(layerOf(layers(), 'vent-gap').thickness_m).toBe(0.0381);
    expect(roles({ 'covering.kind': 'metal-panel' }, panel)).toContain('upper-deck');
  });

  it('leaves out what is not there', () => {
    expect(
      roles({
        'belowDeck.ceiling': 'deck-in-view',
        'belowDeck.interiorRetarder': 'none',
        'belowDeck.fill': 'none',
      })[0],
    ).toBe('deck');
    expect(layerOf(layers({ 'belowDeck.ceiling': 'wood-boards' }), 'ceiling')).toMatchObject({
      material: 'wood-boards',
      thickness_m: 0.019,
    });
  });

  it('has ids that are unique and stable', () => {
    const ids = layers().map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(expect.arrayContaining(['deck', 'insulation-1', 'insulation-2', 'covering']));
  });

  it('puts a vapor-open membrane under fibrous board, a tight one under foam', () => {
    const membrane = (board: Variant['board']) => layerOf(layers({}, { board }), 'air-barrier').material;
    expect(membrane('stone-wool')).toBe('self-adhered-vapor-open');
    expect(membrane('wood-fiber')).toBe('self-adhered-vapor-open');
    expect(membrane('eps')).toBe('self-adhered-bitumen');
  });

  it('takes the underlayment of the variant', () => {
    const sheet = (underlayment: Variant['underlayment']) =>
      layerOf(layers({}, { underlayment }), 'underlayment').material;
    expect(sheet('vapor-open')).toBe('vapor-open-underlayment');
    expect(sheet('vapor-tight')).toBe('synthetic-underlayment');
  });

  it('counts nothing for air: no resistance, no mass, no obstacle to vapor', () => {
    expect(layerOf(layers(), 'vent-gap')).toMatchObject({
      material: null,
      resistance_m2K_W: 0,
      permeance_ng: null,
      mass_kg_m2: 0,
    });
  });

  it('weighs the covering by its weight in the table: 9 m/s² would be too light', () => {
    const { mass_kg_m2 } = layerOf(layers({ 'covering.kind': 'slate' }), 'covering');
    expect(mass_kg_m2).toBeGreaterThan(layerOf(layers(), 'covering').mass_kg_m2);
  });
});

describe('the fill of the cavity', () => {
  it('has the R that is given', () => {
    expect(fillResistance_m2K_W(completed())).toBe(3.3);
  });

  it('else depth over conductivity: 140 mm of glass fiber at 0.0400633', () => {
    const given = completed({ 'belowDeck.fillResistance_m2K_W': undefined });
    expect(fillDepth_m(given)).toBe(0.14);
    expect(fillResistance_m2K_W(given)).toBeCloseTo(0.14 / 0.0400633, 9);
  });

  it('may be less deep than the framing, or none', () => {
    const shallow = { 'belowDeck.fillResistance_m2K_W': undefined, 'belowDeck.fillDepth_m': 0.1 };
    expect(fillResistance_m2K_W(completed(shallow))).toBeCloseTo(0.1 / 0.0400633, 9);
    expect(fillResistance_m2K_W(completed({ ...shallow, 'belowDeck.fillDepth_m': 0 }))).toBe(0);
    const none = completed({ 'belowDeck.fill': 'none' });
    expect([fillDepth_m(none), fillResistance_m2K_W(none)]).toEqual([0, 0]);
  });
});

describe('parts of the layers', () => {
  it('above the framing lie the deck and all on it', () => {
    expect(layersAboveFraming(layers()).map(({ role }) => role)).toEqual(roles().slice(3));
  });

  it('the boards are the insulation', () => {
    expect(insulationLayers(layers()).map(({ thickness_m }) => thickness_m)).toEqual([0.0762, 0.0508]);
  });
});
