import fc from 'fast-check';
import Value from 'typebox/value';
import { describe, expect, it } from 'vitest';
import {
  emptyForm,
  formOf,
  type GroundForm,
  groundFaults,
  groundIn,
  ranges,
} from '#client/screens/leader/ground/groundForm.ts';
import { wishIn } from '#client/screens/leader/ground/wish.ts';
import { Ground } from '#domain/bridge/ground.ts';

const filled: GroundForm = { ...emptyForm, gap: '31', loadClass: '30' };
const ground = (form = filled) => groundIn(form, 'Small Ford', 'UTC');

describe('a ground while it is typed', () => {
  it('is there as soon as gap and load class are, and what is not typed yet is unknown', () => {
    expect(ground(emptyForm)).toBeNull();
    expect(ground()).toMatchObject({
      gap: 31,
      loadClass: 30,
      near: { height: null, setback: 0, kind: 'made' },
      roomBehind: null,
      place: null,
    });
  });

  it('does not count as measured until it is typed or marked unknown', () => {
    expect(groundFaults(filled).get('roomBehind')).toContain('not measured');
    expect(groundFaults({ ...filled, roomBehind: null }).has('roomBehind')).toBe(false);
    expect(groundFaults(emptyForm).get('gap')).toContain('Measure');
  });

  it('takes the rise in centimetres an hour and keeps metres', () => {
    expect(ground({ ...filled, rise: '-4' })?.water.rise).toBeCloseTo(-0.04, 12);
  });

  it('needs both halves of a place', () => {
    expect([...groundFaults({ ...filled, latitude: '52.4', longitude: null }).keys()]).toContain(
      'longitude',
    );
    expect(ground({ ...filled, latitude: '52.4' })?.place).toBeNull();
  });

  for (const [field, value] of [
    ['gap', '0.5'],
    ['gap', '201'],
    ['gap', 'about 30'],
    ['loadClass', '30.5'],
    ['nearSetback', '-1'],
    ['latitude', '91'],
  ] as const) {
    it(`${field} cannot be ${value}`, () => {
      expect(groundFaults({ ...filled, [field]: value }).has(field)).toBe(true);
    });
  }

  it('is always one that the record takes, whatever is typed', () => {
    const text = fc.oneof(
      fc.constant(null),
      fc.constantFrom('', '31', '0', '-4', '1e9', '200', '60,5', 'x', '0.1'),
      fc.double({ min: -600, max: 600, noNaN: true }).map(String),
    );
    const form = fc.record(
      Object.fromEntries(Object.keys(ranges).map((field) => [field, text])) as Record<
        keyof typeof ranges,
        typeof text
      >,
    );
    fc.assert(
      fc.property(form, (typed) => {
        const read = ground({ ...filled, ...typed });
        if (read) expect(Value.Check(Ground, read)).toBe(true);
      }),
    );
  });

  it('comes back as it was when a measured ground is opened again', () => {
    const measured = {
      ...filled,
      nearHeight: '5.4',
      roomBehind: '40',
      rise: '4',
      depth: '2.2',
      farHeight: null,
    };
    const read = ground(measured)!;
    expect(ground(formOf(read))).toEqual(read);
    expect(groundFaults(formOf(read)).size).toBe(0);
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
