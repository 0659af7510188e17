/**
 * The one bridge between the page and the main process.
 *
 * The page gets two functions and nothing of Electron: no `ipcRenderer`, no
 * event object. What it sends is checked on the other side.
 */
import { contextBridge, ipcRenderer, type IpcRendererEvent } from 'electron';
import type { HostEvent } from '@shared/host/index.ts';
import { CALL_CHANNEL, EVENT_CHANNEL } from './channels.ts';

contextBridge.exposeInMainWorld('walewrightBridge', {
  call: (method: string, params: unknown): Promise<unknown> => ipcRenderer.invoke(CALL_CHANNEL, method, params),

  listen(listener: (event: HostEvent) => void): () => void {
    const hear = (_event: IpcRendererEvent, event: HostEvent): void => listener(event);
    ipcRenderer.on(EVENT_CHANNEL, hear);
    return () => void ipcRenderer.off(EVENT_CHANNEL, hear);
  },
});
