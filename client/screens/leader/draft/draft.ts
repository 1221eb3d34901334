import type { Change } from '#domain/tasks/change.ts';

/** The changes with one more, in their order: what it replaces goes, and a link added and taken out again leaves nothing. */
export function withChange(changes: readonly Change[], change: Change): readonly Change[] {
  switch (change.kind) {
    case 'task': {
      const before = changes.find((one) => one.kind === 'task' && one.task === change.task);
      return [...changes.filter((one) => one !== before), { ...before, ...change }];
    }
    case 'crew':
      return [
        ...changes.filter((one) => one.kind !== 'crew' || one.crew.id !== change.crew.id),
        change,
      ];
    case 'load':
      return [...changes.filter((one) => one.kind !== 'load' || one.load !== change.load), change];
    case 'link-add':
      return [...changes, change];
    case 'link-remove': {
      const others = changes.filter(
        (one) =>
          one.kind !== 'link-add' || one.link.from !== change.from || one.link.to !== change.to,
      );
      return others.length < changes.length ? others : [...changes, change];
    }
  }
}
