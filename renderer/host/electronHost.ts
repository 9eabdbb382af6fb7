import { CHANNELS, type ChannelName, type Host, openedSchema, type Response } from '../../electron/contract.ts';

/** The desktop host: the bridge the preload exposes, with every answer checked against the contract. */
export function electronHost(bridge: Host): Host {
  const checked = <C extends ChannelName>(channel: C, answer: Promise<unknown>): Promise<Response<C>> =>
    answer.then((value) => CHANNELS[channel].response.parse(value) as Response<C>);
  return {
    kind: 'electron',
    open: () => checked('open', bridge.open()),
    save: (request) => checked('save', bridge.save(request)),
    saveAs: (request) => checked('saveAs', bridge.saveAs(request)),
    exportFile: (request) => checked('exportFile', bridge.exportFile(request)),
    setUnsaved: (request) => checked('setUnsaved', bridge.setUnsaved(request)),
    onMenu: (listener) => bridge.onMenu(listener),
    onOpened: (listener) => bridge.onOpened((opened) => listener(openedSchema.parse(opened))),
  };
}
