import { useSyncExternalStore } from 'react';

/** Where in the bench one is: on the shelf, or at a stage of a design. It stands in the address after '#'. */
export type Route =
  | { readonly at: 'shelf' }
  | { readonly at: 'settings' }
  | { readonly at: 'example' }
  | { readonly at: 'recipes' }
  | { readonly at: 'design'; readonly id: string; readonly stage: string };

function parseRoute(hash: string): Route {
  const [, place, id, stage] = hash.replace(/^#/, '').split('/');
  if (place === 'settings' || place === 'example' || place === 'recipes') return { at: place };
  if (place === 'design' && id && /^[\w-]{1,64}$/.test(id)) return { at: 'design', id, stage: stage ?? '' };
  return { at: 'shelf' };
}

export function addressOf(route: Route): string {
  switch (route.at) {
    case 'shelf':
      return '#/';
    case 'settings':
    case 'example':
    case 'recipes':
      return `#/${route.at}`;
    case 'design':
      return `#/design/${route.id}/${route.stage}`;
  }
}

export const go = (route: Route): void => {
  location.hash = addressOf(route);
};

export function useRoute(): Route {
  const hash = useSyncExternalStore(
    (listener) => {
      addEventListener('hashchange', listener);
      return () => removeEventListener('hashchange', listener);
    },
    () => location.hash,
  );
  return parseRoute(hash);
}
