import type { BuildState } from '#domain/progress/state.ts';
import type { Crew } from '#domain/tasks/work.ts';

/**
 * How many of a crew are fit, and how many it was to have. The work of a plan made for the weaker crew has the fit ones
 * for all: the people it was to have are those that stand beside what was told.
 */
export function crewStrength(
  { crews }: Pick<BuildState, 'crews'>,
  crew: Crew,
): { readonly fit: number; readonly planned: number } {
  const standing = crews[crew.id];
  return {
    fit: standing?.fit ?? crew.people,
    planned: standing?.planned.people ?? crew.people,
  };
}
