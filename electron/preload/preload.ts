import { contextBridge, ipcRenderer } from 'electron';
import type { ChannelName, Host, MenuCommand, Opened } from '../contract.ts';

const call = (channel: ChannelName, request: unknown) => ipcRenderer.invoke(channel, request);

function listen<T>(channel: 'menu' | 'opened', listener: (value: T) => void): () => void {
  const received = (_event: unknown, value: T): void => listener(value);
  ipcRenderer.on(channel, received);
  return () => ipcRenderer.removeListener(channel, received);
}

/** Named functions only: the page can ask for these and nothing else. */
const bridge: Host = {
  kind: 'electron',
  open: () => call('open', null),
  save: (request) => call('save', request),
  saveAs: (request) => call('saveAs', request),
  exportFile: (request) => call('exportFile', request),
  setUnsaved: (request) => call('setUnsaved', request),
  onMenu: (listener) => listen<MenuCommand>('menu', listener),
  onOpened: (listener) => listen<Opened>('opened', listener),
};

contextBridge.exposeInMainWorld('backstayHost', bridge);
