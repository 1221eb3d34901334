import { Decoder, type Effort, GIVEN_UP } from './decoder.ts';
import { orderByKey, Scratch } from './orders.ts';
import { headsAndTails, mirror, type Problem } from './problem.ts';
import { Random } from './random.ts';

export type X = Record<string, number>;

/** experimental */
export function populationSearch(
  problem: Problem,
  seed: number,
  budget: number,
  opt: X,
  lower: number,
  stop: () => boolean,
): { starts: Int32Array; makespan: number; schedules: number } {
  const n = problem.tasks;
  const effort: Effort = { placements: 0 };
  const limitP = budget * n;
  const sides = [problem, mirror(problem)];
  const decoders = sides.map((p) => new Decoder(p, effort));
  const ht = sides.map(headsAndTails);
  const rnd = new Random(seed);
  const scratch = new Scratch(n);
  const keys = new Int32Array(n);
  const order = new Int32Array(n);
  let best = 0x3fffffff;
  let bestStarts = new Int32Array(n);
  type Ind = { side: number; starts: Int32Array; length: number; hash: number };
  const note = (ind: Ind) => {
    if (ind.length < best) {
      best = ind.length;
      bestStarts = ind.starts.slice();
      if (ind.side === 1)
        for (let t = 0; t < n; t++)
          bestStarts[t] = ind.length - ind.starts[n - 1 - t]! - problem.durations[t]!;
    }
  };
  const done = () => best <= lower || effort.placements >= limitP || stop();
  const hashOf = (s: Int32Array) => {
    let h = 0;
    for (let i = 0; i < n; i++) h = (Math.imul(h, 31) + s[i]!) | 0;
    return h;
  };
  const turn = (ind: Ind, limit: number): Ind | null => {
    const p = sides[ind.side]!;
    for (let t = 0; t < n; t++) keys[n - 1 - t] = ind.length - ind.starts[t]! - p.durations[t]!;
    orderByKey(keys, order, scratch);
    const starts = new Int32Array(n);
    const length = decoders[1 - ind.side]!.decode(order, starts, limit);
    if (length === GIVEN_UP) return null;
    const out = { side: 1 - ind.side, starts, length, hash: hashOf(starts) };
    note(out);
    return out;
  };
  const seedOrder = (side: number): void => {
    // biased random sampling over latest starts, regret based
    const { tails } = ht[side]!;
    const p = sides[side]!;
    const need = new Int32Array(n);
    for (let t = 0; t < n; t++) need[t] = p.before.first[t + 1]! - p.before.first[t]!;
    const elig: number[] = [];
    for (let t = 0; t < n; t++) if (need[t] === 0) elig.push(t);
    const w: number[] = [];
    for (let at = 0; at < n; at++) {
      let minTail = 1e9;
      for (const t of elig) if (tails[t]! < minTail) minTail = tails[t]!;
      let sum = 0;
      for (let k = 0; k < elig.length; k++) {
        const v = (tails[elig[k]!]! - minTail + 1) ** (opt.alpha ?? 2);
        w[k] = v;
        sum += v;
      }
      let r = rnd.unit() * sum;
      let k = 0;
      while (k < elig.length - 1 && (r -= w[k]!) > 0) k++;
      const t = elig[k]!;
      elig[k] = elig[elig.length - 1]!;
      elig.pop();
      order[at] = t;
      for (let a = p.after.first[t]!; a < p.after.first[t + 1]!; a++)
        if (--need[p.after.task[a]!] === 0) elig.push(p.after.task[a]!);
    }
  };
  const sample = (): Ind => {
    const side = opt.bothSides ? rnd.below(2) : 0;
    seedOrder(side);
    const starts = new Int32Array(n);
    const length = decoders[side]!.decode(order, starts);
    const ind = { side, starts, length, hash: 0 };
    note(ind);
    return ind;
  };
  // resource use per unit time of each task
  const dens = new Float64Array(n);
  for (let t = 0; t < n; t++)
    for (let r = 0; r < problem.resources; r++)
      dens[t]! += problem.demands[t * problem.resources + r]! / problem.capacities[r]!;
  const load = new Float64Array(4096);
  const window = (ind: Ind): [number, number] => {
    const p = sides[ind.side]!;
    const T = ind.length;
    const len = Math.max(1, Math.floor(T * ((opt.wlo ?? 0.25) + rnd.unit() * (opt.whi ?? 0.5))));
    if (rnd.unit() < (opt.randWin ?? 0)) {
      const a = rnd.below(T - len + 1);
      return [a, a + len];
    }
    load.fill(0, 0, T + 1);
    for (let t = 0; t < n; t++) {
      const d = ind.side ? dens[n - 1 - t]! : dens[t]!;
      for (let m = ind.starts[t]!; m < ind.starts[t]! + p.durations[t]!; m++) load[m + 1]! += d;
    }
    for (let m = 1; m <= T; m++) load[m]! += load[m - 1]!;
    let bestA = 0,
      bestV = -1;
    const tries = opt.winTries ?? 1e9;
    if (tries < 1e6) {
      for (let q = 0; q < tries; q++) {
        const a = rnd.below(T - len + 1);
        const v = load[a + len]! - load[a]!;
        if (v > bestV) {
          bestV = v;
          bestA = a;
        }
      }
    } else
      for (let a = 0; a + len <= T; a++) {
        const v = load[a + len]! - load[a]!;
        if (v > bestV) {
          bestV = v;
          bestA = a;
        }
      }
    return [bestA, bestA + len];
  };
  const crossOrder = (f: Ind, m: Ind): void => {
    const p = sides[f.side]!;
    const [t1, t2] = window(f);
    const off = 4 * (f.length + m.length);
    const scale = opt.scale ? m.length / f.length : 1;
    for (let t = 0; t < n; t++) {
      const s = f.starts[t]!;
      if (s >= t1 && s < t2) keys[t] = off + s;
      else {
        const ms = m.starts[t]!;
        if (opt.byF ? s < t1 : ms < t1 * scale) keys[t] = ms;
        else keys[t] = 2 * off + ms;
      }
    }
    // repair
    for (let t = n - 1; t >= 0; t--) {
      const inW = f.starts[t]! >= t1 && f.starts[t]! < t2;
      if (inW) continue;
      for (let a = p.after.first[t]!; a < p.after.first[t + 1]!; a++) {
        const k = keys[p.after.task[a]!]!;
        if (k < keys[t]!) keys[t] = k;
      }
    }
    for (let t = 0; t < n; t++)
      for (let a = p.before.first[t]!; a < p.before.first[t + 1]!; a++) {
        const k = keys[p.before.task[a]!]!;
        if (k > keys[t]!) keys[t] = k;
      }
    orderByKey(keys, order, scratch);
    // mutation: adjacent swaps
    const pm = opt.pm ?? 0.05;
    const minD = opt.maxShift ?? 1;
    for (let i = 0; i + 1 < n; i++)
      if (rnd.unit() < pm) {
        for (let q = 0; q < minD && i + q + 1 < n; q++) {
          const a = order[i + q]!,
            b = order[i + q + 1]!;
          let ok = true;
          for (let e = p.after.first[a]!; e < p.after.first[a + 1]!; e++)
            if (p.after.task[e] === b) {
              ok = false;
              break;
            }
          if (!ok) break;
          order[i + q] = b;
          order[i + q + 1] = a;
        }
      }
  };
  // init
  const P = Math.max(6, Math.round(opt.pop ?? 40));
  const pops: Ind[][] = [[], []];
  const initN = Math.round((opt.init ?? 1) * P);
  const all: Ind[] = [];
  for (let i = 0; i < initN && !done(); i++) {
    let ind = sample();
    for (let k = 0; k < (opt.initTurns ?? 2); k++) ind = turn(ind, 0x3fffffff)!;
    if (ind.side !== 0) ind = turn(ind, 0x3fffffff)!;
    all.push(ind);
  }
  const add = (pop: Ind[], ind: Ind, cap: number): boolean => {
    for (const o of pop) if (o.hash === ind.hash && o.length === ind.length) return false;
    if (pop.length < cap) {
      pop.push(ind);
      return true;
    }
    // replace the worst
    let worst = 0;
    for (let i = 1; i < pop.length; i++) if (pop[i]!.length > pop[worst]!.length) worst = i;
    if (pop[worst]!.length < ind.length) return false;
    // among the worst, random
    pop[worst] = ind;
    return true;
  };
  for (const i of all) add(pops[0]!, i, P);
  const pick = (pop: Ind[]): Ind => {
    let b = pop[rnd.below(pop.length)]!;
    for (let k = 1; k < (opt.tour ?? 2); k++) {
      const c = pop[rnd.below(pop.length)]!;
      if (c.length < b.length) b = c;
    }
    return b;
  };
  const worstOf = (pop: Ind[]) => {
    let w = 0;
    for (const i of pop) if (i.length > w) w = i.length;
    return w;
  };
  if (opt.mode === 0 || opt.mode === undefined) {
    // steady state, one side, child: decode, DJ
    const pop = pops[0]!;
    while (!done() && pop.length > 1) {
      const f = pick(pop);
      let m = pick(pop);
      if (m === f) m = pop[rnd.below(pop.length)]!;
      crossOrder(f, m);
      const starts = new Int32Array(n);
      const length = decoders[0]!.decode(order, starts);
      let ind: Ind = { side: 0, starts, length, hash: hashOf(starts) };
      note(ind);
      const b = turn(ind, 0x3fffffff)!;
      const w = worstOf(pop);
      const c = turn(b, w);
      if (c) ind = c;
      else if (ind.length > w) continue;
      add(pop, ind, P);
    }
  } else if (opt.mode === 1) {
    // bi-population generational: children of one side decode on the other
    let cur = pops[0]!;
    let side = 0;
    while (!done() && cur.length > 1) {
      const next: Ind[] = [];
      const other = pops[1 - side]!;
      for (const f of cur.slice()) {
        if (done()) break;
        let bestChild: Ind | null = null;
        for (let k = 0; k < (opt.kids ?? 2) && !done(); k++) {
          const m = pick(cur);
          if (m !== f) crossOrder(f, m);
          else {
            for (let t = 0; t < n; t++) keys[t] = f.starts[t]!;
            orderByKey(keys, order, scratch);
          }
          // the child order is forward on this side: on the other side reversed
          // keys by finish on this side for non-mixed parents
          order.reverse();
          for (let i = 0; i < n; i++) order[i] = n - 1 - order[i]!;
          const starts = new Int32Array(n);
          const length = decoders[1 - side]!.decode(
            order,
            starts,
            bestChild ? bestChild.length : 0x3fffffff,
          );
          if (length === GIVEN_UP) continue;
          const ind: Ind = { side: 1 - side, starts, length, hash: hashOf(starts) };
          note(ind);
          if (!bestChild || length < bestChild.length) bestChild = ind;
        }
        if (bestChild) next.push(bestChild);
      }
      void other;
      pops[1 - side] = next;
      cur = next;
      side = 1 - side;
    }
  } else if (opt.mode === 2) {
    // steady-state, child decoded on the other side first, then turned back: 2 schedules per child
    const pop = pops[0]!;
    while (!done() && pop.length > 1) {
      const f = pick(pop);
      let m = pick(pop);
      if (m === f) m = pop[rnd.below(pop.length)]!;
      crossOrder(f, m);
      order.reverse();
      for (let i = 0; i < n; i++) order[i] = n - 1 - order[i]!;
      const starts = new Int32Array(n);
      const length = decoders[1]!.decode(order, starts);
      const ind: Ind = { side: 1, starts, length, hash: hashOf(starts) };
      note(ind);
      const c = turn(ind, worstOf(pop));
      if (c) add(pop, c, P);
    }
  } else {
    // steady-state on two pops, one schedule per child, then child turned
    while (!done()) {
      const side = rnd.below(2);
      const pop = pops[side]!.length > 3 ? pops[side]! : pops[1 - side]!;
      const s = pop[0]!.side;
      const f = pick(pop);
      let m = pick(pop);
      if (m === f) m = pop[rnd.below(pop.length)]!;
      crossOrder(f, m);
      order.reverse();
      for (let i = 0; i < n; i++) order[i] = n - 1 - order[i]!;
      const starts = new Int32Array(n);
      const tgt = pops[1 - s]!;
      const length = decoders[1 - s]!.decode(
        order,
        starts,
        tgt.length >= P ? worstOf(tgt) : 0x3fffffff,
      );
      if (length === GIVEN_UP) continue;
      const ind: Ind = { side: 1 - s, starts, length, hash: hashOf(starts) };
      note(ind);
      add(tgt, ind, P);
    }
  }
  return { starts: bestStarts, makespan: best, schedules: effort.placements / n };
}
