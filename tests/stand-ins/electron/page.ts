/** Name of the one global the stand-in needs in the page; the real runtime has none. */
export const PAGE_SIDE = '__electronStandIn';

/**
 * The script that runs before the page's own, as the preload does: `contextBridge`, `ipcRenderer` and `webUtils` for the
 * built preload. Both share the page's world here, which the real runtime keeps apart.
 */
export function pageScript(preload: string): string {
  return `(() => {
  if (globalThis.top !== globalThis) return;
  const listeners = new Map();
  const paths = new Map();
  const pack = (value) => JSON.stringify(value, (_key, part) => {
    if (!(part instanceof Uint8Array)) return part;
    let text = '';
    for (let i = 0; i < part.length; i += 32768) text += String.fromCharCode(...part.subarray(i, i + 32768));
    return { $bytes: btoa(text) };
  });
  const unpack = (text) => JSON.parse(text, (_key, part) =>
    typeof part?.$bytes === 'string' ? Uint8Array.from(atob(part.$bytes), (letter) => letter.charCodeAt(0)) : part);
  const invoke = globalThis.${PAGE_SIDE}Invoke;
  const electron = {
    contextBridge: {
      exposeInMainWorld: (name, api) =>
        Object.defineProperty(globalThis, name, { value: Object.freeze({ ...api }), enumerable: true }),
    },
    ipcRenderer: {
      invoke: async (channel, ...sent) => unpack(await invoke(channel, pack(sent))),
      on: (channel, listener) => listeners.set(channel, [...(listeners.get(channel) ?? []), listener]),
      removeListener: (channel, listener) =>
        listeners.set(channel, (listeners.get(channel) ?? []).filter((known) => known !== listener)),
    },
    webUtils: { getPathForFile: (file) => paths.get(file.name) ?? '' },
  };
  Object.defineProperty(globalThis, '${PAGE_SIDE}', {
    value: {
      emit: (channel, values) => { for (const listener of listeners.get(channel) ?? []) listener({}, ...values); },
      invoke: electron.ipcRenderer.invoke,
      namePath: (name, path) => paths.set(name, path),
    },
  });
  const module = { exports: {} };
  ((require, module, exports) => {
${preload}
  })((name) => { if (name !== 'electron') throw new Error('module not found: ' + name); return electron; }, module, module.exports);
})();`;
}
