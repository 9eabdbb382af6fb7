import { createContext, useContext } from 'react';
import type { Host } from '../../electron/contract.ts';

export const HostContext = createContext<Host | null>(null);

/** The machine this page runs on. */
export function useHost(): Host {
  const host = useContext(HostContext);
  if (!host) throw new Error('HostContext is missing above this component');
  return host;
}
