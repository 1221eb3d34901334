import Value from 'typebox/value';
import { describe, expect, it } from 'vitest';
import {
  buildFaults,
  emptyBuild,
  openRequest,
  type TypedBuild,
} from '#client/screens/newBuild/openForm.ts';
import { readTyped, tablesSource } from '#client/screens/newBuild/tables.ts';
import { OpenRequest } from '#shared/wireBuilds.ts';

const now = Date.parse('2026-11-25T12:33:00Z');
const id = 'a'.repeat(32);
const typed: TypedBuild = {
  name: 'Small Ford',
  unit: '',
  zone: 'Europe/Berlin',
  start: '14:00',
  asked: '19:30',
  confidence: 0.9,
};

describe('opening a build', () => {
  it('asks for what was typed, in the zone of the site', () => {
    const request = openRequest(typed, { kind: 'empty' }, id, now);
    expect(request).toMatchObject({
      name: 'Small Ford',
      start: '2026-11-25T13:00:00.000Z',
      askedFor: '2026-11-25T18:30:00.000Z',
      source: { kind: 'empty' },
    });
    expect(Value.Check(OpenRequest, request)).toBe(true);
  });

  it('begins with a start at the next quarter of an hour but a little, so that a name is enough', () => {
    const begun = { ...emptyBuild('Europe/Berlin', now), name: 'Small Ford' };
    expect(begun.start).toBe('14:00');
    expect(openRequest(begun, { kind: 'empty' }, id, now)?.start).toBe('2026-11-25T13:00:00.000Z');
    const late = { ...begun, ...emptyBuild('UTC', Date.parse('2026-11-25T23:50:00Z')), name: 'x' };
    expect(
      openRequest(late, { kind: 'empty' }, id, Date.parse('2026-11-25T23:50:00Z'))?.start,
    ).toBe('2026-11-26T00:15:00.000Z');
  });

  it('takes an opening before the start in the day as the next morning’s', () => {
    const night = openRequest(
      { ...typed, start: '22:00', asked: '04:00' },
      { kind: 'empty' },
      id,
      now,
    );
    expect(night?.askedFor).toBe('2026-11-26T03:00:00.000Z');
  });

  it('may start within the last hour, and need not be asked for', () => {
    const request = openRequest(
      { ...typed, start: '13:00', asked: '' },
      { kind: 'empty' },
      id,
      now,
    );
    expect(request).toMatchObject({ start: '2026-11-25T12:00:00.000Z', askedFor: null });
  });

  for (const [change, field] of [
    [{ name: ' ' }, 'name'],
    [{ zone: 'Atlantis' }, 'zone'],
    [{ start: '' }, 'start'],
    [{ start: 'soon' }, 'start'],
    [{ asked: 'soon' }, 'asked'],
    [{ asked: '241200' }, 'asked'],
  ] as const) {
    it(`with ${JSON.stringify(change)} has its fault at “${field}” and asks for nothing`, () => {
      expect(Object.keys(buildFaults({ ...typed, ...change }, now))).toEqual([field]);
      expect(openRequest({ ...typed, ...change }, { kind: 'empty' }, id, now)).toBeNull();
    });
  }
});

describe('tables', () => {
  it('say everything that is wrong at once, with table, row and column', () => {
    const read = readTyped({
      tasks: 'task,likely\na,x\nb,3\n',
      links: 'task,after,counts,wait\nb,zz,finish,0\n',
      crews: '',
    });
    expect(read.ok).toBe(false);
    const places = read.ok ? [] : read.reason.map(({ file, row, column }) => [file, row, column]);
    expect(places).toEqual([
      ['tasks', 2, 'likely'],
      ['links', 2, 'after'],
    ]);
  });

  it('that are left empty are not sent', () => {
    expect(tablesSource({ tasks: 'task,likely\na,3\n', links: ' ', crews: '' })).toEqual({
      kind: 'tables',
      tasks: 'task,likely\na,3\n',
    });
  });
});
