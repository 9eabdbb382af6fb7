import type { Bridge, Host } from '../../electron/contract.ts';
import { browserHost } from './browserHost.ts';
import { electronHost } from './electronHost.ts';

/** The desktop bridge where the preload has put one, else the browser. */
export function createHost(page: Window & { readonly backstayHost?: Bridge }): Host {
  return page.backstayHost ? electronHost(page.backstayHost) : browserHost(page);
}
