import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { ChoiceFigure, choiceReach } from '#client/drawing/ChoiceFigure.tsx';
import { designBridge } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import type { Kit } from '#domain/kit/kit.ts';
import { bridgeOver, granted, heron, larchFord } from '#tests/domain/kit/heronKit.ts';

const drawn = (bridge = bridgeOver(31), ground: Ground = larchFord, kit: Kit = heron) => {
  const launching = { bridge, kit, ground };
  return renderToStaticMarkup(
    <ChoiceFigure launching={launching} reach={choiceReach([launching])} label="one of them" />,
  );
};

describe('one bridge of a choice', () => {
  it('is drawn with the room it needs and the room that was measured', () => {
    const text = drawn();
    expect(text).toContain('aria-label="one of them"');
    expect(text).toContain('needs 36.0 m behind');
    expect(text).toContain('40.0 m measured');
  });

  it('says nothing of room that nobody measured', () => {
    expect(drawn(bridgeOver(31), { ...larchFord, roomBehind: null })).not.toContain('measured');
  });

  it('is drawn where it will lie when it is floated out', () => {
    const { launch: _, nose: __, ...rest } = heron;
    const floated: Kit = { ...rest, manner: 'floated', boom: { lot: 2, room: 8 } };
    const bridge = granted(designBridge(larchFord, floated, ''));
    expect(drawn(bridge, larchFord, floated).match(/d-to-come/g)).toHaveLength(bridge.bays);
  });
});
