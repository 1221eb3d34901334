import { describe, expect, it } from 'vitest';
import { changesBetween, switched, withEvent } from '#client/screens/forecast/doubtDraft.ts';
import { figuresOf } from '#client/screens/forecast/doubtFigures.ts';
import { usualDoubt } from '#domain/forecast/doubt/usualDoubt.ts';
import { state } from '../fixtures/larchFord.ts';

const doubt = usualDoubt(state.work);

describe('a doubt that is being changed', () => {
  it('is no change until a source stands otherwise', () => {
    expect(changesBetween(doubt, doubt)).toBe(0);
    expect(changesBetween(doubt, switched(doubt, { part: 'day' }, doubt.day.on))).toBe(0);
  });

  it('has each source switched by itself, and switched back it is the old one', () => {
    for (const part of ['own', 'day', 'crews', 'learning', 'light', 'heat', 'weather'] as const) {
      const on = part === 'own' ? doubt.own : doubt[part].on;
      const other = switched(doubt, { part }, !on);
      expect(changesBetween(doubt, other)).toBe(1);
      expect(switched(other, { part }, on)).toEqual(doubt);
    }
  });

  it('counts each event as a source of its own', () => {
    const [first, second] = doubt.events;
    const other = switched(doubt, { part: 'event', id: first!.id }, !first!.on);
    expect(changesBetween(doubt, other)).toBe(1);
    const both = withEvent(other, second!.id, (event) => ({ ...event, chance: 0.5 }));
    expect(changesBetween(doubt, both)).toBe(2);
    expect(both.events.map(({ id }) => id)).toEqual(doubt.events.map(({ id }) => id));
  });
});

describe('the figures of a source', () => {
  it('are said to be the leader’s own once they are changed', () => {
    const [factor] = figuresOf(doubt, { part: 'weather' });
    const changed = factor!.set(1.6);
    expect(changed.weather).toMatchObject({ factor: 1.6, source: 'set by the leader' });
    expect(changed.weather.on).toBe(doubt.weather.on);
  });

  it('leave the table of heat its name: only the temperature is the leader’s', () => {
    const [wbgt] = figuresOf(doubt, { part: 'heat' });
    expect(wbgt!.set(31).heat).toEqual({ ...doubt.heat, wbgt: 31 });
  });

  it('give chances per cent', () => {
    const truck = { part: 'event', id: 'late-truck' } as const;
    const [chance] = figuresOf(doubt, truck);
    expect(chance!.value).toBe(15);
    expect(chance!.set(40).events.find(({ id }) => id === 'late-truck')?.chance).toBeCloseTo(0.4);
  });

  it('never let quick, likely and slow cross: the others give way', () => {
    const truck = { part: 'event', id: 'late-truck' } as const;
    const delay = (name: string, value: number) => {
      const figure = figuresOf(doubt, truck).find((one) => one.name === name)!;
      const event = figure.set(value).events.find(({ id }) => id === 'late-truck');
      return event?.kind === 'late-load' ? event.delay : null;
    };
    expect(delay('quick', 20)).toEqual({ quick: 20, likely: 20, slow: 40 });
    expect(delay('likely', 50)).toEqual({ quick: 5, likely: 50, slow: 50 });
    expect(delay('slow', 3)).toEqual({ quick: 3, likely: 3, slow: 3 });
  });

  it('are none for an event that is not there, nor for the tasks’ own minutes', () => {
    expect(figuresOf(doubt, { part: 'event', id: 'nothing' })).toEqual([]);
    expect(figuresOf(doubt, { part: 'own' })).toEqual([]);
  });
});
