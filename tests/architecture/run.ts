/** `npm run figures`: how large the sources are and how they hang together; `-- --json` for a program to read. */
import { root } from '../runner/programs.ts';
import { figuresOf, SMALL_FILE, type FolderFigures } from './figures.ts';
import { sourceTree } from './imports.ts';

const figures = figuresOf(sourceTree(root));

function table(): string {
  const columns = ['', 'lines', 'files', `≤ ${SMALL_FILE} lines`, 'one importer', 'longest file'];
  const cells = (name: string, { lines, files, small, oneImporter, longest }: FolderFigures): string[] => {
    const file = longest.file.startsWith(`${name}/`) ? longest.file.slice(name.length + 1) : longest.file;
    return [name, ...[lines, files, small, oneImporter].map(String), `${file} (${longest.lines})`];
  };
  const rows = [
    columns,
    ...Object.entries(figures.folders).map(([name, own]) => cells(name, own)),
    cells('all', figures.all),
  ];
  const widths = columns.map((_, at) => Math.max(...rows.map((row) => (row[at] as string).length)));
  const padded = (cell: string, at: number): string =>
    at === 0 || at === columns.length - 1 ? cell.padEnd(widths[at] as number) : cell.padStart(widths[at] as number);
  return rows.map((row) => row.map(padded).join('  ').trimEnd()).join('\n');
}

if (process.argv.includes('--json')) {
  console.log(JSON.stringify(figures, null, 2));
} else {
  console.log(table());
  console.log(`\nThe longest files:\n${figures.longest.map(({ file, lines }) => `  ${lines}  ${file}`).join('\n')}`);
  const { onCircles } = figures;
  console.log(`\nImports between folders that lie on a circle: ${onCircles.length}`);
  for (const arrow of onCircles) console.log(`  ${arrow}`);
}
