/** A task given to a crew: who does it, with how many people, from when. */
export type Order = {
  readonly task: string;
  readonly crew: string;
  readonly people: number;
  readonly start: number;
};

/**
 * Orders that differ between two plans: tasks that a crew gets, loses or does with other people, and the fewest that
 * change their place in what a crew does one after the other. A task is one order, whoever it moves between.
 */
export function changedOrders(
  before: readonly Order[],
  after: readonly Order[],
): { readonly tasks: Set<string>; readonly crews: Set<string> } {
  const tasks = new Set<string>();
  const crews = new Set<string>();
  const old = new Map(before.map((order) => [`${order.crew} ${order.task}`, order]));
  const fresh = new Map(after.map((order) => [`${order.crew} ${order.task}`, order]));
  const note = ({ task, crew }: Order) => {
    tasks.add(task);
    crews.add(crew);
  };
  const kept = new Map<string, { was: number; is: number; order: Order }[]>();
  for (const [key, order] of old) {
    const now = fresh.get(key);
    if (now?.people !== order.people) {
      note(order);
      continue;
    }
    const row = kept.get(order.crew) ?? [];
    row.push({ was: order.start, is: now.start, order });
    kept.set(order.crew, row);
  }
  for (const [key, order] of fresh) {
    if (!old.has(key)) {
      note(order);
    }
  }
  for (const row of kept.values()) {
    for (const order of outOfTurn(row)) {
      note(order);
    }
  }
  return { tasks, crews };
}

/** The fewest orders without which all the others follow one another as before: all but a longest rising run. */
function outOfTurn(row: { was: number; is: number; order: Order }[]): Order[] {
  // Orders that now start together stand as they stood.
  const now = row.toSorted((one, other) => one.is - other.is || one.was - other.was);
  const length: number[] = [];
  const last: number[] = [];
  let end = -1;
  for (const [at, { was }] of now.entries()) {
    length[at] = 1;
    last[at] = -1;
    for (let earlier = 0; earlier < at; earlier += 1) {
      if (now[earlier]!.was <= was && length[earlier]! + 1 > length[at]!) {
        length[at] = length[earlier]! + 1;
        last[at] = earlier;
      }
    }
    end = end === -1 || length[at]! > length[end]! ? at : end;
  }
  const inTurn = new Set<Order>();
  for (; end !== -1; end = last[end]!) {
    inTurn.add(now[end]!.order);
  }
  return row.map(({ order }) => order).filter((order) => !inTurn.has(order));
}
