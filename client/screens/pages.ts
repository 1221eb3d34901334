import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import type { Role } from '#domain/progress/command.ts';
import { onceMore } from '../data/onceMore.ts';

/** The page of each role, each fetched when it is opened: a chief's phone never loads the leader's. */
export const pages: Partial<Record<Role, LazyExoticComponent<ComponentType>>> = {
  commander: lazy(onceMore(() => import('./commander/CommanderPage.tsx'))),
  leader: lazy(onceMore(() => import('./leader/LeaderPage.tsx'))),
  log: lazy(onceMore(() => import('./log/LogPage.tsx'))),
  inspector: lazy(onceMore(() => import('./inspector/InspectorPage.tsx'))),
  chief: lazy(onceMore(() => import('./chief/ChiefPage.tsx'))),
};

/** The one page that a commander has below the first. */
export const CommanderForecast = lazy(onceMore(() => import('./forecast/CommanderForecast.tsx')));
