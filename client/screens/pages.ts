import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import type { Role } from '#domain/progress/command.ts';

/** The page of each role, each fetched when it is opened: a chief's phone never loads the leader's. */
export const pages: Partial<Record<Role, LazyExoticComponent<ComponentType>>> = {
  commander: lazy(() => import('./commander/CommanderPage.tsx')),
  leader: lazy(() => import('./leader/LeaderPage.tsx')),
  log: lazy(() => import('./log/LogPage.tsx')),
  inspector: lazy(() => import('./inspector/InspectorPage.tsx')),
  chief: lazy(() => import('./chief/ChiefPage.tsx')),
};

/** The one page that a commander has below the first. */
export const CommanderForecast = lazy(() => import('./forecast/CommanderForecast.tsx'));
