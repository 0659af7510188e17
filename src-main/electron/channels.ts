/** The two channels between the page and the main process. */
export const CALL_CHANNEL = 'walewright:call';
export const EVENT_CHANNEL = 'walewright:event';
