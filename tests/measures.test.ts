import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { measureKinds, read, show, unitOf } from '../src/measures.ts';
import type { MeasureKind, System } from '../src/measures.ts';

const systems: readonly System[] = ['IP', 'SI'];

describe('show writes a quantity with its unit', () => {
  // Exact by the definition 1 in = 25.4 mm, 1 ft = 304.8 mm (NIST SP 811, 2008, appendix B.8).
  it.each<[MeasureKind, number, System, string]>([
    ['length', 0.1397, 'IP', '5 1/2 in'],
    ['length', 0.1397, 'SI', '140 mm'],
    ['length', 0.4064, 'IP', '16 in'],
    ['length', 0.0015875, 'IP', '1/16 in'],
    ['length', -0.1397, 'IP', '−5 1/2 in'],
    ['span', 7.4676, 'IP', '24 ft 6 in'],
    ['span', 7.3152, 'IP', '24 ft'],
    ['span', 0.1524, 'IP', '6 in'],
    ['span', 7.4676, 'SI', '7.47 m'],
    ['resistance', 26.4 * 0.1761101838, 'IP', 'R-26.4'],
    ['resistance', 30 * 0.1761101838, 'IP', 'R-30'],
    ['resistance', 26.4 * 0.1761101838, 'SI', '4.65 m²·K/W'],
    ['temperature', 20, 'IP', '68 °F'],
    ['temperature', -40, 'IP', '−40 °F'],
    ['temperature', -3.24, 'SI', '−3.2 °C'],
    ['temperatureDifference', 5, 'IP', '9 °F'],
    ['load', 60 * 47.88026, 'IP', '60 psf'],
    ['load', 60 * 47.88026, 'SI', '2.87 kPa'],
    ['speed', 115 * 0.44704, 'IP', '115 mph'],
    ['speed', 115 * 0.44704, 'SI', '51.4 m/s'],
    ['permeance', 57.2135 * 0.06, 'IP', '0.06 perm'],
    ['permeance', 57.2135, 'SI', '57.2 ng/(Pa·s·m²)'],
    ['pitch', 7, 'IP', '7:12'],
    ['pitch', 7.5, 'SI', '7.5:12'],
    ['angle', 30.26, 'IP', '30.3°'],
    ['humidity', 35, 'IP', '35 %'],
    ['count', 3, 'SI', '3'],
    ['days', 1, 'IP', '1 day'],
    ['days', 12, 'IP', '12 days'],
    ['area', 1200 * 0.09290304, 'IP', '1200 ft²'],
    ['area', 12000 * 0.09290304, 'IP', '12,000 ft²'],
    ['costPerArea', 12.5 / 0.09290304, 'IP', '$12.5/ft²'],
  ])('%s %d in %s is %s', (kind, value, system, expected) => {
    expect(show(kind, value, system)).toBe(expected);
  });

  it('never writes a negative zero', () => {
    for (const kind of measureKinds) {
      for (const system of systems)
        expect(show(kind, -1e-12, system).replace(/^R-/, '')).not.toMatch(/[−-]\$?0(\.0*)?(?!\d|\.)/);
    }
    expect(show('length', -0.0001, 'IP')).toBe('0 in');
    expect(show('load', -0.1, 'IP', { fixed: true })).toBe('0.0 psf');
  });

  it('keeps trailing zeros and drops the unit when a column asks for it', () => {
    expect(show('temperature', 20, 'IP', { fixed: true })).toBe('68.0 °F');
    expect(show('length', 0.1397, 'IP', { digits: 2 })).toBe('5.5 in');
    expect(show('length', 0.1397, 'IP', { unit: false })).toBe('5 1/2');
    expect(show('resistance', 0.1761101838, 'IP', { unit: false })).toBe('1');
    expect(show('span', 7.4676, 'IP', { unit: false })).toBe('24\'-6"');
  });

  it('writes a dash where there is no number', () => {
    expect(show('length', Number.NaN, 'IP')).toBe('–');
  });

  it('names the unit of a bare number', () => {
    expect(unitOf('length', 'IP')).toBe('in');
    expect(unitOf('length', 'SI')).toBe('mm');
    expect(unitOf('resistance', 'SI')).toBe('m²·K/W');
    expect(unitOf('costPerArea', 'IP')).toBe('$/ft²');
    expect(unitOf('count', 'IP')).toBe('');
  });
});

describe('read takes what people type', () => {
  it.each<[MeasureKind, string, System, number]>([
    ['length', '16', 'IP', 0.4064],
    ['length', '406', 'SI', 0.406],
    ['length', '16"', 'SI', 0.4064],
    ['length', '16”', 'SI', 0.4064],
    ['length', '1\'-4"', 'IP', 0.4064],
    ['length', "1' 4", 'IP', 0.4064],
    ['length', '1 ft 4 in', 'IP', 0.4064],
    ['length', '1 ft. 4 in.', 'IP', 0.4064],
    ['length', '406 mm', 'IP', 0.406],
    ['length', '40.6 cm', 'IP', 0.406],
    ['length', '0.4 m', 'IP', 0.4],
    ['length', '0,4 m', 'IP', 0.4],
    ['length', '1 m 20 cm', 'IP', 1.2],
    ['length', '5 1/2 in', 'IP', 0.1397],
    ['length', '5-1/2"', 'IP', 0.1397],
    ['length', '5½', 'IP', 0.1397],
    ['length', '½ in', 'IP', 0.0127],
    ['length', '1\'-4 1/2"', 'IP', 0.4191],
    ['length', '1,250 mm', 'IP', 1.25],
    ['span', '24', 'IP', 7.3152],
    ['span', '24\' 6"', 'SI', 7.4676],
    ['span', '7,4', 'SI', 7.4],
    ['elevation', '-50 ft', 'SI', -15.24],
    ['resistance', 'R-26', 'SI', 26 * 0.1761101838],
    ['resistance', 'r26', 'SI', 26 * 0.1761101838],
    ['resistance', '26', 'IP', 26 * 0.1761101838],
    ['resistance', 'RSI 4.6', 'IP', 4.6],
    ['resistance', '4.6 m²·K/W', 'IP', 4.6],
    ['resistance', '26 h·ft²·°F/Btu', 'SI', 26 * 0.1761101838],
    ['load', '60 psf', 'SI', 60 * 47.88026],
    ['load', '2.9 kPa', 'IP', 2900],
    ['speed', '115 mph', 'SI', 115 * 0.44704],
    ['temperature', '68 F', 'SI', 20],
    ['temperature', '68 °F', 'SI', 20],
    ['temperature', '20 °C', 'IP', 20],
    ['temperature', '-40', 'IP', -40],
    ['temperature', '−40 °F', 'SI', -40],
    ['temperature', '+20', 'SI', 20],
    ['humidity', '35 %', 'IP', 35],
    ['humidity', '35%', 'IP', 35],
    ['humidity', '35', 'SI', 35],
    ['permeance', '0.1 perm', 'SI', 5.72135],
    ['pitch', '7:12', 'IP', 7],
    ['pitch', '7/12', 'IP', 7],
    ['pitch', '7 in 12', 'IP', 7],
    ['pitch', '7', 'SI', 7],
    ['pitch', '45°', 'SI', 12],
    ['area', '1,200 sq ft', 'SI', 111.483648],
    ['area', '12 squares', 'SI', 111.483648],
    ['count', '6', 'IP', 6],
    ['days', '12 days', 'IP', 12],
    ['costPerArea', '$12.50/ft²', 'SI', 12.5 / 0.09290304],
    ['transmittance', 'U-0.026', 'IP', 0.026 / 0.1761101838],
  ])('%s "%s" (%s) is %d', (kind, text, system, expected) => {
    const reading = read(kind, text, system);
    expect(reading).toMatchObject({ ok: true });
    if (reading.ok) expect(reading.value).toBeCloseTo(expected, 9);
  });

  it('says what it understood in both systems', () => {
    expect(read('length', "1'-4", 'IP')).toMatchObject({ understood: '16 in (406 mm)' });
    expect(read('resistance', 'RSI 4.65', 'SI')).toMatchObject({ understood: '4.65 m²·K/W (R-26.4)' });
    expect(read('humidity', '35', 'IP')).toMatchObject({ understood: '35 %' });
  });

  it.each<[MeasureKind, string]>([
    ['length', ''],
    ['length', '   '],
    ['length', 'about a foot'],
    ['length', '16 psf'],
    ['length', '5 1/0 in'],
    ['length', '4 in 1 ft'],
    ['length', '16 in 4 in'],
    ['length', '1..5'],
    ['length', '1e9'],
    ['length', 'Infinity'],
    ['length', 'NaN'],
    ['length', '0x10'],
    ['length', '-16'],
    ['length', '9'.repeat(59)],
    ['length', '1'.repeat(100_000)],
    ['length', '<script>alert(1)</script>'],
    ['length', '16; drop table'],
    ['resistance', 'U-26'],
    ['resistance', '$26'],
    ['temperature', '20 bananas'],
    ['pitch', '7:0'],
    ['pitch', '90°'],
    ['count', '2.5'],
    ['count', '-1'],
  ])('%s "%s" is refused with an example of what is allowed', (kind, text) => {
    const reading = read(kind, text, 'IP');
    expect(reading.ok).toBe(false);
    if (!reading.ok) {
      expect(reading.message).toContain('write for example');
      expect(reading.message.length).toBeLessThan(200);
    }
  });

  it('answers any text at all, within a fixed form (any string, any kind)', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary', maxLength: 80 }),
          fc.stringMatching(/^[-+0-9.,/'" a-z°%]{0,30}$/),
        ),
        fc.constantFrom(...measureKinds),
        fc.constantFrom(...systems),
        (text, kind, system) => {
          const reading = read(kind, text, system);
          if (reading.ok) {
            expect(Number.isFinite(reading.value)).toBe(true);
            expect(reading.understood).not.toBe('');
          } else {
            expect(reading.message).toContain('write for example');
          }
        },
      ),
    );
  });
});

describe('what is shown can be read back', () => {
  // Half a step of the last figure shown: 1/32 in, 1/2 in, 0.5 mm, 0.05 and so on, in the unit shown.
  const halfStep: Partial<Record<`${MeasureKind} ${System}`, number>> = {
    'length IP': 0.0254 / 32,
    'span IP': 0.0254 / 2,
    'length SI': 0.0005,
    'span SI': 0.005,
    'resistance IP': 0.05 * 0.1761101838,
    'resistance SI': 0.005,
    'temperature IP': 0.05 / 1.8,
    'temperature SI': 0.05,
    'load IP': 0.05 * 47.88026,
    'load SI': 5,
    'speed IP': 0.5 * 0.44704,
    'speed SI': 0.05,
    'pitch IP': 0.005,
    'humidity IP': 0.05,
    'elevation IP': 0.1524,
    'elevation SI': 0.5,
  };
  const positive = fc.double({ min: 0, max: 5000, noNaN: true });
  it.each(Object.entries(halfStep))('%s within half a step (values 0 to 5000)', (name, step) => {
    const [kind, system] = name.split(' ') as [MeasureKind, System];
    fc.assert(
      fc.property(positive, (value) => {
        const reading = read(kind, show(kind, value, system), system);
        expect(reading.ok).toBe(true);
        if (reading.ok) expect(Math.abs(reading.value - value)).toBeLessThanOrEqual(step * 1.000001 + 1e-9);
      }),
    );
  });

  it('every kind reads its own text, in both systems (values 0.5 to 90)', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...measureKinds),
        fc.constantFrom(...systems),
        fc.double({ min: 0.5, max: 90, noNaN: true }),
        (kind, system, value) => {
          const text = show(kind, value, system);
          expect(read(kind, text, system), `${kind} ${system} ${text}`).toMatchObject({ ok: true });
        },
      ),
    );
  });

  it('negative temperatures come back (values -60 to 0 °C)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 0, noNaN: true }),
        fc.constantFrom(...systems),
        (value, system) => {
          const reading = read('temperature', show('temperature', value, system), system);
          expect(reading.ok && Math.abs(reading.value - value) <= 0.0501).toBe(true);
        },
      ),
    );
  });

  it('a bare number means the unit that unitOf names', () => {
    for (const system of systems) {
      for (const kind of measureKinds) {
        const bare = read(kind, '7', system);
        expect(bare.ok, kind).toBe(true);
        if (bare.ok) expect(read(kind, show(kind, bare.value, system), system)).toMatchObject({ ok: true });
      }
    }
  });
});
