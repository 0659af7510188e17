/** The one download that a page of ours may make. */

/** True for a copy of the project that the page at `page` made itself; the person is then asked where it goes. */
export function isOwnCopy(page: string, address: string, fileName: string): boolean {
  return address.startsWith(`blob:${page}`) && fileName.endsWith('.walewright');
}
