import { useMemo, useState } from 'react';
import type { Bridge } from '#domain/bridge/bridge.ts';
import { designBridge, type Wish } from '#domain/bridge/design.ts';
import type { Ground } from '#domain/bridge/ground.ts';
import type { Refusal } from '#domain/refusal.ts';
import type { Result } from '#domain/result.ts';
import { orderOfWork } from '#domain/tasks/fromKit/orderOfWork.ts';
import type { Work } from '#domain/tasks/work.ts';
import type { Api } from '../../../data/api.ts';
import { designFacts, noFacts } from './designFacts.ts';
import {
  changed,
  emptyForm,
  formOf,
  type GroundChange,
  type GroundForm,
  groundFaults,
  groundIn,
} from './groundForm.ts';
import { useChoiceTimes } from './useChoiceTimes.ts';
import { useKits } from './useKits.ts';
import { useSettled } from './useSettled.ts';
import { noWish, type TypedWish, wishIn } from './wish.ts';

type About = {
  readonly api: Api;
  /** Under this name the kits are kept. */
  readonly key: string;
  readonly name: string;
  readonly zone: string;
  /** What was measured and chosen before. */
  readonly ground: Ground | null;
  readonly kit: string | null;
  /** When work begins, for the daylight; null where nobody has said. */
  readonly start: string | null;
};

/** Milliseconds without a key until what takes long is worked out. */
const pause = 350;

/** A ground while it is typed, and the bridge that answers it, designed here as by the server. */
export function useDesign({ api, key, name, zone, ground: before, kit: kitBefore, start }: About) {
  const [form, setForm] = useState<GroundForm>(() => (before ? formOf(before) : emptyForm));
  const [kitName, setKitName] = useState(kitBefore);
  const [typedWish, setTypedWish] = useState<TypedWish>(noWish);
  const kits = useKits(api, key, kitName);
  const { kit, listed } = kits;

  const faults = useMemo(() => groundFaults(form), [form]);
  const ground = useMemo(() => groundIn(form, name, zone, before), [form, name, zone, before]);
  // The banks are drawn from the gap on, also before anybody has said what must cross.
  const site = useMemo(
    () => ground ?? groundIn(changed(form, { values: { loadClass: '1' } }), name, zone, before),
    [ground, form, name, zone, before],
  );
  const wish = useMemo((): Result<Wish, keyof TypedWish> => wishIn(typedWish), [typedWish]);
  const design = useMemo((): Result<Bridge, Refusal[]> | null => {
    if (!ground || !kit || !listed || !wish.ok) return null;
    return designBridge(ground, kit, listed.hash, wish.value);
  }, [ground, kit, listed, wish]);
  const work = useMemo((): Work | null => {
    const ordered = design?.ok && kit ? orderOfWork(design.value, kit) : null;
    return ordered?.ok ? ordered.value : null;
  }, [design, kit]);
  // Tenths of a second on a desk, more on a phone: not between two keys.
  const later = useSettled(ground, pause);
  const laterWish = useSettled(wish, pause);
  const facts = useMemo(
    () =>
      later && kit && listed && laterWish.ok
        ? designFacts(later, kit, listed.hash, laterWish.value)
        : noFacts,
    [later, kit, listed, laterWish],
  );
  const fits = facts.choice !== null && facts.choice.fitting.length > 0;
  const times = useChoiceTimes(
    api,
    later && listed && fits
      ? { ground: later, kit: listed.name, ...(start !== null && { start }) }
      : null,
  );

  return {
    form,
    change: (change: GroundChange) => setForm((before) => changed(before, change)),
    faults,
    ground,
    site,
    design,
    work,
    facts,
    times,
    /** Start and place are known, so that the times count the dark. */
    daylight: start !== null && ground?.place != null,
    kits,
    chooseKit: setKitName,
    typedWish,
    wish,
    setWish: setTypedWish,
    /** What is to be sent once everything is right; null before. */
    request:
      faults.size === 0 && ground && listed && wish.ok && design?.ok
        ? { ground, kit: listed.name, wish: wish.value }
        : null,
  };
}

export type Design = ReturnType<typeof useDesign>;
