import { type FormEvent, useMemo, useRef, useState } from 'react';
import { designBridge } from '#domain/bridge/design.ts';
import { emptyBuild } from '#domain/progress/state.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { SpanFigure } from '../../../drawing/SpanFigure.tsx';
import { Button } from '../../../parts/Button.tsx';
import { SaidLine } from '../../../parts/SaidLine.tsx';
import { useSay } from '../../../parts/useSay.ts';
import { words } from '../../../words/words.ts';
import { BridgeAnswer } from './BridgeAnswer.tsx';
import { GroundFields } from './GroundFields.tsx';
import { emptyForm, formOf, groundFaults, groundIn } from './groundForm.ts';
import { KitChoice } from './KitChoice.tsx';
import { useKits } from './useKits.ts';
import { noWish, wishIn } from './wish.ts';

/** Measuring the ground and choosing a bridge: the design is made here as numbers are typed, and again by the server. */
export function GroundDesk() {
  const { state, api, linkKey } = useBuild();
  const { said, busy, say } = useSay();
  const [form, setForm] = useState(() => (state.ground ? formOf(state.ground) : emptyForm));
  const [kitName, setKitName] = useState(state.bridge?.kit.name ?? null);
  const [typedWish, setTypedWish] = useState(noWish);
  const [tried, setTried] = useState(false);
  const element = useRef<HTMLFormElement>(null);
  const { kits, listed, kit, unreachable, again } = useKits(api, linkKey, kitName);

  const faults = useMemo(() => groundFaults(form), [form]);
  const ground = useMemo(
    () => groundIn(form, state.name, state.zone),
    [form, state.name, state.zone],
  );
  const wish = useMemo(() => wishIn(typedWish), [typedWish]);
  const design = useMemo(
    () =>
      ground && kit && listed && wish.ok
        ? designBridge(ground, kit, listed.hash, wish.value)
        : null,
    [ground, kit, listed, wish],
  );
  const preview = useMemo(() => {
    if (!design?.ok || !kit) return null;
    const work = orderOfWork(design.value, kit);
    return {
      ...emptyBuild,
      name: state.name,
      ground,
      bridge: design.value,
      ...(work.ok && { work: work.value }),
    };
  }, [design, kit, ground, state.name]);
  const texts = words.ground;

  function choose(event: FormEvent): void {
    event.preventDefault();
    setTried(true);
    if (faults.size > 0 || !ground || !listed || !wish.ok) {
      requestAnimationFrame(() =>
        element.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus(),
      );
      return;
    }
    void say('choose-bridge', { ground, kit: listed.name, wish: wish.value });
  }

  return (
    <form ref={element} className="ground-desk" onSubmit={choose} noValidate>
      <div className="ground-form">
        <p className="second reading">{texts.lead}</p>
        <KitChoice
          kits={kits}
          chosen={listed?.name ?? ''}
          onChoose={setKitName}
          unreachable={unreachable}
          again={again}
          wish={typedWish}
          wishFault={wish.ok ? null : wish.reason}
          onWish={setTypedWish}
        />
        <GroundFields
          form={form}
          faults={faults}
          strict={tried}
          onChange={(change) => setForm({ ...form, ...change })}
        />
      </div>
      <div className="ground-answer stack-wide">
        {preview ? <SpanFigure state={preview} /> : null}
        <div aria-live="polite" className="stack-wide">
          {design === null ? <p className="lead">{texts.fillFirst}</p> : null}
          {design && !design.ok ? (
            <section className="notice strong stack">
              <h2>{texts.refused}</h2>
              <ul className="listed">
                {design.reason.map(({ sentence }) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            </section>
          ) : null}
          {design?.ok && ground ? (
            <BridgeAnswer
              bridge={design.value}
              wanted={ground.loadClass}
              roomBehind={ground.roomBehind}
            />
          ) : null}
        </div>
        <div className="stack">
          {state.plan ? <p className="second">{texts.chooseMore}</p> : null}
          <p>
            <Button type="submit" look="solid" disabled={busy || !design?.ok}>
              {texts.choose}
            </Button>
          </p>
          {tried && faults.size > 0 ? (
            <p className="warn" role="alert">
              {texts.checkFirst(faults.size)}
            </p>
          ) : null}
          <SaidLine said={said} />
        </div>
      </div>
    </form>
  );
}
