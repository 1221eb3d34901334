import type { CommandBody, CommandKind } from '#domain/progress/command.ts';
import type { FirstPlan } from './firstPlan.ts';

/** Something that happened beside the tasks: a hand hurt, water rising, a truck late. */
export type Aside = {
  readonly minutes: number;
  readonly kind: CommandKind;
  readonly body: unknown;
  /** Whose chief told it; the leader when absent. */
  readonly crew?: string;
};

/** All that the played demo build rests on. */
export type Story = FirstPlan & {
  readonly opening: CommandBody<'open-build'>;
  /** Loads that have not come. */
  readonly missing: ReadonlySet<string>;
  readonly storesCrew: string;
  readonly inspector: string;
  readonly lookouts: Record<'near' | 'far', { readonly name: string; readonly people: number }>;
  readonly asides: readonly Aside[];
};
