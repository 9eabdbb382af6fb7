const STAND_IN = new URL('./electron.ts', import.meta.url).href;

/** @type {import('node:module').ResolveHook} */
export function resolve(specifier, context, nextResolve) {
  return nextResolve(specifier === 'electron' ? STAND_IN : specifier, context);
}
