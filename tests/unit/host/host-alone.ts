/** Run as a process of its own: a browser host. Says its address once it stands, and its peak of memory when asked. */
import { startBrowserHost } from '../../../src-main/browser-host/index.ts';
import { ownPeakMb } from '../own-peak.ts';

const [folder = ''] = process.argv.slice(2);
const host = await startBrowserHost({ pageFolder: `${folder}/page`, dataFolder: `${folder}/data`, homeFolder: folder });
process.on('message', () => process.send?.({ peakMb: ownPeakMb() }));
process.on('disconnect', () => void host.close());
process.send?.({ address: await host.newAddress() });
