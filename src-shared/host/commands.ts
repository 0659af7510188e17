/**
 * Every command of the program by its id, with its shortcuts.
 *
 * The one table of them: buttons, the platform's menu, the list of commands,
 * tooltips and what the keyboard is heard for name a command of it, and a name
 * that is not in it does not compile. What a command is called stands in
 * `words/en/commands.ts`, what it does in the `actions.ts` of its bench; both
 * must have every one. A group is what one place of the program brings.
 */
type Letter =
  | ('A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G' | 'H' | 'I' | 'J' | 'K' | 'L' | 'M')
  | ('N' | 'O' | 'P' | 'Q' | 'R' | 'S' | 'T' | 'U' | 'V' | 'W' | 'X' | 'Y' | 'Z');
type Digit = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9';
/** As they are typed, with Shift or without, which differs from keyboard to keyboard. */
type Sign = '+' | '-' | '=' | '.' | ',' | '[' | ']' | '{' | '}' | '<' | '>';
type Named =
  | ('ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown' | 'PageUp' | 'PageDown')
  | ('Enter' | 'Escape' | 'Delete' | 'Backspace' | 'F1' | 'F2' | 'F8');

/** Keys that are pressed together; `Mod` is Ctrl, or ⌘ on a Mac. A letter alone is the key, whatever Shift would make of it. */
export type Shortcut = `${'' | 'Mod+'}${'' | 'Shift+'}${Letter | Named}` | Digit | Sign;

/** The first one is shown. */
type Shortcuts = readonly [Shortcut, ...Shortcut[]];

export const commandGroups = {
  files: {
    new: ['Mod+Shift+N'],
    open: ['Mod+O'],
    'read-photo': ['Mod+Shift+G'],
    'open-sample': ['Mod+Shift+O'],
    'read-picture': ['Mod+Shift+P'],
    save: ['Mod+S'],
    'save-as': ['Mod+Shift+S'],
    'rename-project': ['F2'],
    print: ['Mod+P'],
  },
  steps: { undo: ['Mod+Z'], redo: ['Mod+Shift+Z', 'Mod+Y'] },
  benches: { 'bench-motif': ['1'], 'bench-piece': ['2'], 'bench-sheet': ['3'], 'bench-knit': ['4'] },
  window: {
    colourways: ['Mod+Shift+H'],
    tour: ['F1'],
    'length-unit': ['Mod+I'],
    'single-keys': ['Mod+Shift+K'],
    commands: ['Mod+K'],
  },
  themes: { 'theme-light': ['Mod+Shift+L'], 'theme-dark': ['Mod+Shift+D'], 'theme-system': ['Mod+Shift+Y'] },
  recovery: { 'kept-work': ['Mod+Shift+U'], 'save-copy': ['Mod+Shift+E'] },

  /** Of the chart and of the piece. */
  zoom: { 'zoom-in': ['+', '='], 'zoom-out': ['-'] },

  tools: {
    'tool-draw': ['D'],
    'tool-erase': ['E'],
    'tool-line': ['L'],
    'tool-rectangle': ['R'],
    'tool-ellipse': ['O'],
    'tool-fill': ['F'],
    'tool-pick': ['I'],
    'tool-select': ['S'],
    'tool-stamp': ['P'],
    'tool-trace': ['U'],
  },
  drawing: {
    'filled-shapes': ['Shift+R'],
    'fill-everywhere': ['Shift+F'],
    'takes-away': ['G'],
    'symmetry-next': ['Y'],
    'copies-follow': ['T'],
    lettering: ['A'],
    'yarn-next': [']'],
    'yarn-before': ['['],
    'yarn-add': ['Shift+Y'],
  },
  chart: { 'fit-motif': ['0'], neighbours: ['N'], 'fabric-next': ['V'], 'square-cells': ['Q'] },
  selection: {
    'select-all': ['Mod+A'],
    'select-colour': ['Shift+L'],
    lift: ['M'],
    copy: ['Mod+C'],
    cut: ['Mod+X'],
    paste: ['Mod+V'],
    'select-clear': ['Delete', 'Backspace'],
    // What is lifted goes with the arrow keys alone, too.
    'select-left': ['Shift+ArrowLeft'],
    'select-right': ['Shift+ArrowRight'],
    'select-up': ['Shift+ArrowUp'],
    'select-down': ['Shift+ArrowDown'],
    'select-lay': ['Enter'],
    'select-give-up': ['Escape'],
  },
  whole: {
    'mirror-across': ['Shift+H'],
    'mirror-up': ['Shift+V'],
    'quarter-turn': ['Shift+T'],
    'shift-left': ['Shift+A'],
    'shift-right': ['Shift+D'],
    'shift-up': ['Shift+W'],
    'shift-down': ['Shift+S'],
    'insert-column': ['Shift+C'],
    'delete-column': ['Shift+X'],
    'insert-row': ['Shift+G'],
    'delete-row': ['Shift+B'],
    'exchange-yarns': ['Shift+E'],
    invert: ['Shift+I'],
    outline: ['Shift+O'],
    'mend-slips': ['Shift+M'],
    'crop-blank-first': ['Shift+K'],
    'crop-blank-last': ['Shift+J'],
    'crop-at-cursor': ['K'],
    'trim-blank': ['Shift+U'],
  },
  motifs: {
    'motif-add': ['Shift+N'],
    'motif-duplicate': ['Shift+P'],
    'motif-delete': ['Shift+Delete'],
    'motif-next': ['.'],
    'motif-before': [','],
    collection: ['Mod+Shift+F'],
    'motif-keep': ['Mod+Shift+B'],
  },
  stamp: { 'stamp-next': ['B'], 'stamp-figure-only': ['Shift+Z'] },
  doubts: { 'doubt-next': ['J'], 'doubt-before': ['Mod+Shift+Enter'], 'doubt-as-read': ['Mod+Enter'] },
  slips: { 'slip-next': ['X'], 'slip-before': ['Z'], 'slip-keep': ['C'], 'slip-take': ['W'] },
  underlay: {
    'underlay-add': ['Shift+Q'],
    'underlay-remove': ['Shift+Backspace'],
    'underlay-shown': ['H'],
    'underlay-larger': ['}'],
    'underlay-smaller': ['{'],
    'underlay-stronger': ['>'],
    'underlay-fainter': ['<'],
  },

  piece: {
    floats: ['F'],
    wraps: ['W'],
    stitches: ['V'],
    turn: ['T'],
    closed: ['C'],
    'purl-side': ['B'],
    feeders: ['Y'],
    'add-section': ['J'],
    'fit-piece': ['0'],
  },
  findings: { 'finding-next': ['F8'], 'finding-before': ['Shift+F8'] },
  pieces: {
    'piece-add': ['Shift+N'],
    'piece-duplicate': ['Shift+P'],
    'piece-left': ['<'],
    'piece-right': ['>'],
    'piece-remove': ['Shift+Backspace'],
    'piece-next': ['N'],
    'piece-before': ['P'],
    'piece-knit-more': ['M'],
    'piece-knit-fewer': ['L'],
  },
  sizes: { sizes: ['S'], 'size-smaller': ['['], 'size-larger': [']'] },
  groups: {
    'group-next': ['.'],
    'group-before': [','],
    'group-left': ['Shift+ArrowLeft'],
    'group-right': ['Shift+ArrowRight'],
    'group-up': ['Shift+ArrowUp'],
    'group-down': ['Shift+ArrowDown'],
    'group-raise': ['Shift+PageUp'],
    'group-lower': ['Shift+PageDown'],
    'keep-needles': ['K'],
    'free-needles': ['Shift+K'],
  },
  anchors: { 'anchor-never': ['A'], 'anchor-always': ['Shift+A'] },
  'all-overs': {
    'all-over-add': ['Shift+F'],
    'all-over-replace': ['Shift+R'],
    'all-over-remove': ['Shift+Delete'],
    'all-over-left': ['{'],
    'all-over-right': ['}'],
  },

  exports: {
    'write-chart-png': ['I'],
    'write-chart-svg': ['D'],
    'write-sheet-pdf': ['P'],
    'write-rows-csv': ['R'],
    'write-all': ['Mod+E'],
  },

  /** Space and Enter end the row too: its button has the keyboard. */
  knitting: {
    'row-done': ['PageDown'],
    'row-back': ['PageUp'],
    'reading-other': ['R'],
    'rows-spoken': ['S'],
  },
} as const satisfies { readonly [Group in string]: { readonly [Id in string]: Shortcuts } };

export type CommandGroup = keyof typeof commandGroups;

/** The commands of a group, or of several. */
export type CommandOf<Group extends CommandGroup> = {
  [Each in Group]: keyof (typeof commandGroups)[Each];
}[Group];

export type CommandId = CommandOf<CommandGroup>;

/** Commands that are at hand whichever bench is up: those that the platform's menu may have. */
export type WindowCommand = CommandOf<'files' | 'steps' | 'benches' | 'window' | 'themes' | 'recovery'>;

const SHORTCUTS = Object.assign({}, ...Object.values(commandGroups)) as { readonly [Id in CommandId]: Shortcuts };

export const commandIds = Object.keys(SHORTCUTS) as readonly CommandId[];

/** The shortcuts of a command; the first one is shown. */
export function shortcutsOf(id: CommandId): Shortcuts {
  return SHORTCUTS[id];
}

/**
 * True for a letter, digit or sign alone or with Shift: what the chart, the
 * piece and the pages take, and what can be switched off (WCAG 2.2, 2.1.4).
 */
export function isSingleKey(keys: Shortcut): boolean {
  return !keys.startsWith('Mod+') && keys.replace('Shift+', '').length === 1;
}

/** True for a key that types nothing and moves nothing, and so is heard wherever the keyboard is, as those with Ctrl are. */
export function isFunctionKey(keys: Shortcut): boolean {
  return /^(Shift\+)?F\d$/.test(keys);
}
