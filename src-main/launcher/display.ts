/** Whether a window can be opened here, and by whose leave. */

type Variables = Readonly<Record<string, string | undefined>>;

/** On Linux and its relatives a display is named in the environment; the others have one. */
export function hasDisplay(variables: Variables, platform: NodeJS.Platform): boolean {
  if (platform === 'darwin' || platform === 'win32') return true;
  return Boolean(variables['DISPLAY']) || Boolean(variables['WAYLAND_DISPLAY']);
}

/** Chromium, and so Electron, cannot sandbox what root runs on Linux, and refuses to start unless told so. */
export function sandboxFlags(platform: NodeJS.Platform, userId: number | null): readonly string[] {
  return platform === 'linux' && userId === 0 ? ['--no-sandbox'] : [];
}
