import fc from 'fast-check';
import Value from 'typebox/value';
import { describe, expect, it } from 'vitest';
import {
  aboutField,
  changed,
  emptyForm,
  formFields,
  formOf,
  type GroundForm,
  groundFaults,
  groundIn,
  leftOpen,
  withoutMeasure,
} from '#client/screens/leader/ground/groundForm.ts';
import { wishIn } from '#client/screens/leader/ground/wish.ts';
import { Ground } from '#domain/bridge/ground.ts';
import { groundFields } from '#domain/bridge/groundFields.ts';

const typed = (values: Partial<GroundForm['values']>, form = emptyForm) =>
  changed(form, { values });
const filled = typed({ gap: '31', loadClass: '30' });
const ground = (form = filled) => groundIn(form, 'Small Ford', 'UTC');

describe('a ground while it is typed', () => {
  it('asks for every number that a ground file has', () => {
    expect(formFields.map(({ field }) => field)).toEqual(groundFields.map(({ field }) => field));
  });

  it('is there as soon as gap and load class are, and what is not typed yet is unknown', () => {
    expect(ground(emptyForm)).toBeNull();
    expect(ground()).toMatchObject({
      gap: 31,
      loadClass: 30,
      near: { height: null, setback: 0, kind: 'made', slope: null, soil: null },
      roomBehind: null,
      wind: null,
      place: null,
    });
  });

  it('does not count as measured until it is typed or marked unknown', () => {
    expect(groundFaults(filled).get('roomBehind')).toContain('not measured');
    expect(groundFaults(typed({ roomBehind: null }, filled)).has('roomBehind')).toBe(false);
    expect(groundFaults(emptyForm).get('gap')).toContain('Measure');
  });

  it('is marked as not measured in one go where nobody measured, and keeps every number that was typed', () => {
    const part = typed({ roomBehind: '40' }, filled);
    expect(leftOpen(part)).toContain('water.depth');
    expect(leftOpen(part)).not.toContain('roomBehind');
    const marked = withoutMeasure(part);
    expect(leftOpen(marked)).toEqual([]);
    expect(groundFaults(marked).size).toBe(0);
    expect(marked.values.roomBehind).toBe('40');
    expect(marked.values.gap).toBe('31');
    // What must be measured is not waved through.
    expect(groundFaults(withoutMeasure(emptyForm)).has('gap')).toBe(true);
  });

  it('takes the rise in centimetres an hour and falls in per cent, and keeps the units of the file', () => {
    const read = ground(typed({ 'water.rise': '-4', 'near.crossFall': '3.3' }, filled));
    expect(read?.water.rise).toBeCloseTo(-0.04, 12);
    expect(read?.near.crossFall).toBeCloseTo(0.033, 12);
  });

  it('needs both halves of a place', () => {
    const half = typed({ 'place.latitude': '52.4' }, filled);
    expect([...groundFaults(half).keys()]).toContain('place.longitude');
    expect(ground(half)?.place).toBeNull();
  });

  for (const [field, value] of [
    ['gap', '0.5'],
    ['gap', '201'],
    ['gap', 'about 30'],
    ['loadClass', '30.5'],
    ['near.setback', '-1'],
    ['near.slope', '91'],
    ['rollerFall', '21'],
    ['place.latitude', '91'],
  ] as const) {
    it(`${field} cannot be ${value}`, () => {
      expect(groundFaults(typed({ [field]: value }, filled)).has(field)).toBe(true);
    });
  }

  it('is always one that the record takes, whatever is typed', () => {
    const text = fc.oneof(
      fc.constant(null),
      fc.constantFrom('', '31', '0', '-4', '1e9', '200', '60,5', 'x', '0.1'),
      fc.double({ min: -600, max: 600, noNaN: true }).map(String),
    );
    const values = fc.record(
      Object.fromEntries(formFields.map(({ field }) => [field, text])) as Record<
        keyof GroundForm['values'],
        typeof text
      >,
    );
    fc.assert(
      fc.property(values, (some) => {
        const read = ground(typed(some, filled));
        if (read) expect(Value.Check(Ground, read)).toBe(true);
      }),
    );
  });

  it('comes back as it was when a measured ground is opened again', () => {
    const measured = changed(filled, {
      values: {
        'near.height': '5.4',
        'near.slope': '40',
        'far.height': null,
        'far.approach.slope': '7.5',
        roomBehind: '40',
        'water.rise': '4',
        'water.depth': '2.2',
        'water.level': '1.2',
        'water.limit': '1.7',
      },
      far: { kind: 'natural', soil: 'soft' },
    });
    const read = ground(measured)!;
    expect(ground(formOf(read))).toEqual(read);
    expect(groundFaults(formOf(read)).size).toBe(0);
  });

  it('says of each number its range, its unit and why it is asked for', () => {
    for (const field of formFields) {
      const { least, most, reason } = aboutField(field);
      expect(least).toBeLessThan(most);
      expect(reason).toMatch(/\.$/);
    }
    const rise = formFields.find(({ field }) => field === 'water.rise')!;
    expect(aboutField(rise)).toMatchObject({ least: -500, most: 500, unit: 'cm an hour' });
  });
});

describe('what the form does not show', () => {
  it('stays as it was measured', () => {
    const before = { ...ground()!, near: { ...ground()!.near, noted: 'by hand' } };
    expect(groundIn(formOf(before), 'Small Ford', 'UTC', before)).toEqual(before);
  });
});

describe('a wish', () => {
  it('is nothing where nothing is typed, and whole numbers only', () => {
    expect(wishIn({ bays: '', nose: ' ' })).toEqual({ ok: true, value: {} });
    expect(wishIn({ bays: '12', nose: '0' })).toEqual({ ok: true, value: { bays: 12, nose: 0 } });
    expect(wishIn({ bays: '12', nose: '1.5' })).toEqual({ ok: false, reason: 'nose' });
  });
});
