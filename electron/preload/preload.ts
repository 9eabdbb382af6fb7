import { contextBridge, ipcRenderer, webUtils } from 'electron';
import type { Bridge, ChannelName, MenuCommand, Opened, OpenProgress } from '../contract.ts';

const call = (channel: ChannelName, request: unknown) => ipcRenderer.invoke(channel, request);

function listen<T>(channel: 'menu' | 'opened' | 'progress', listener: (value: T) => void): () => void {
  const received = (_event: unknown, value: T): void => listener(value);
  ipcRenderer.on(channel, received);
  return () => ipcRenderer.removeListener(channel, received);
}

/** Named functions only: the page can ask for these and nothing else. */
const bridge: Bridge = {
  kind: 'electron',
  open: () => call('open', {}),
  openDropped: (file) => call('openDropped', { path: webUtils.getPathForFile(file as File) }),
  openRecent: (request) => call('openRecent', request),
  cancelOpen: () => call('cancelOpen', {}),
  recents: () => call('recents', {}),
  forgetRecents: () => call('forgetRecents', {}),
  setAside: (request) => call('setAside', request),
  save: (request) => call('save', request),
  saveAs: (request) => call('saveAs', request),
  readBeside: (request) => call('readBeside', request),
  keepBeside: (request) => call('keepBeside', request),
  exportFile: (request) => call('exportFile', request),
  print: (request) => call('print', request),
  keepRecovery: (request) => call('keepRecovery', request),
  dropRecovery: (request) => call('dropRecovery', request),
  recoveries: () => call('recoveries', {}),
  openRecovery: (request) => call('openRecovery', request),
  discardRecovery: (request) => call('discardRecovery', request),
  setUnsaved: (request) => call('setUnsaved', request),
  newWindow: () => call('newWindow', {}),
  openExternal: (request) => call('openExternal', request),
  about: () => call('about', {}),
  showLog: () => call('showLog', {}),
  editText: (request) => call('editText', request),
  onMenu: (listener) => listen<MenuCommand>('menu', listener),
  onOpened: (listener) => listen<Opened>('opened', listener),
  onProgress: (listener) => listen<OpenProgress>('progress', listener),
};

contextBridge.exposeInMainWorld('backstayHost', bridge);
