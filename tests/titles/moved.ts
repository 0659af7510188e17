/** Tests that moved, are called something else or went since `titles.txt` was written, and why. */
import type { Moved } from './compare.ts';

export const MOVED: readonly Moved[] = [
  {
    old: 'unit/output/placement-sheet.test.ts › what the sheet says › names strands that are cut alike in the order of the steps, though one is longer by a hair',
    now: 'unit/output/winding.test.ts › what the sheet says of yarn to wind and strands to cut › names strands that are cut alike in the order of the steps, though one is longer by a hair',
    why: 'what is wound and cut has a file, since that of the sheet was long',
  },
  {
    old: 'unit/output/placement-sheet.test.ts › what the sheet says › says how much yarn to wind off: a tenth more than the piece takes',
    now: 'unit/output/winding.test.ts › what the sheet says of yarn to wind and strands to cut › says how much yarn to wind off: a tenth more than the piece takes',
    why: 'what is wound and cut has a file, since that of the sheet was long',
  },
  {
    old: 'unit/output/placement-sheet.test.ts › what the sheet says › says metres alone until a yarn has a count, then grams of that yarn',
    now: 'unit/output/winding.test.ts › what the sheet says of yarn to wind and strands to cut › says metres alone until a yarn has a count, then grams of that yarn',
    why: 'what is wound and cut has a file, since that of the sheet was long',
  },
  {
    old: 'unit/output/placement-sheet.test.ts › what the sheet says › says of each ball which group it is for, and the strands to cut by their numbers, the longest first',
    now: 'unit/output/winding.test.ts › what the sheet says of yarn to wind and strands to cut › says of each ball which group it is for, and the strands to cut by their numbers, the longest first',
    why: 'what is wound and cut has a file, since that of the sheet was long',
  },
  {
    old: 'unit/project/sizes.test.ts › rows of a section in each size › are those of all until one has others, and then each has its own',
    now: 'unit/project/section-rows-in-sizes.test.ts › rows of a section in each size › are those of all until one has others, and then each has its own',
    why: 'sizes have a file for rows of sections, since theirs was long',
  },
  {
    old: 'unit/project/sizes.test.ts › rows of a section in each size › given as lengths follow the gauge of the section, each size from its own',
    now: 'unit/project/section-rows-in-sizes.test.ts › rows of a section in each size › given as lengths follow the gauge of the section, each size from its own',
    why: 'sizes have a file for rows of sections, since theirs was long',
  },
  {
    old: 'unit/project/sizes.test.ts › rows of a section in each size › keep what stands a length from an edge there, each size by its own rows',
    now: 'unit/project/section-rows-in-sizes.test.ts › rows of a section in each size › keep what stands a length from an edge there, each size by its own rows',
    why: 'sizes have a file for rows of sections, since theirs was long',
  },
  {
    old: 'property/grid.test.ts › an edit of cells › lies in the smallest box around what it changes',
    now: 'unit/renderer-motif/cells.test.ts › what changed between two drawings › is the smallest rectangle around all cells that differ',
    why: 'the canvas finds the box that is drawn again from the drawings; nothing asked a patch for one',
  },
  {
    old: 'unit/project/file.test.ts › a project file › of version 1 opens, and is written as version 6',
    now: 'unit/project/file.test.ts › a project file › of version 1 opens, and is written as version 7',
    why: 'the file has its next version',
  },
  {
    old: 'unit/project/file.test.ts › a project file › of version 2 opens, and is written as version 6',
    now: 'unit/project/file.test.ts › a project file › of version 2 opens, and is written as version 7',
    why: 'the file has its next version',
  },
  {
    old: 'unit/project/file.test.ts › a project file › of version 3 opens, and is written as version 6',
    now: 'unit/project/file.test.ts › a project file › of version 3 opens, and is written as version 7',
    why: 'the file has its next version',
  },
  {
    old: 'unit/project/file.test.ts › a project file › of version 4 opens, and is written as version 6',
    now: 'unit/project/file.test.ts › a project file › of version 4 opens, and is written as version 7',
    why: 'the file has its next version',
  },
  {
    old: 'unit/project/file.test.ts › a project file › of version 5 opens, and is written as version 6',
    now: 'unit/project/file.test.ts › a project file › of version 5 opens, and is written as version 7',
    why: 'the file has its next version',
  },
  {
    old: 'unit/mutants/mutants.test.ts › the mutants › firstRowAt: first + left - rows → first + left - rows - 1 has its place',
    now: 'unit/mutants/mutants.test.ts › the mutants › lowestRowAt: first + left - rows → first + left - rows - 1 has its place',
    why: 'what bands and all-overs share of it has a name of its own',
  },
  {
    old: "unit/mutants/mutants.test.ts › the mutants › firstRowAt: oddRow === 'below' → oddRow === 'above' has its place",
    now: "unit/mutants/mutants.test.ts › the mutants › lowestRowAt: oddRow === 'below' → oddRow === 'above' has its place",
    why: 'what bands and all-overs share of it has a name of its own',
  },
  {
    old: 'unit/mutants/mutants.test.ts › the mutants › sectionsOf: isLined || part.isLined → isLined && part.isLined has its place',
    now: 'unit/mutants/mutants.test.ts › the mutants › sectionsOf: isLined || section.isLined → isLined && section.isLined has its place',
    why: 'parts of a piece are called sections',
  },
  {
    old: 'reference/photographs.test.ts › reads nothing out of a chart whose cells look alike as asked, instead of one yarn',
    now: 'reference/photographs.test.ts › reads nothing out of a sheet with nothing on it, instead of one yarn',
    why: 'a blank sheet is told by its contrast before anything is told apart',
  },
  {
    old: 'reference/photographs.test.ts › pencil scribbled › photograph 155: all but a few cells, and those that are wrong are marked',
    now: 'reference/photographs.test.ts › pencil scribbled › photograph 65: all but a few cells, and those that are wrong are marked',
    why: 'an outline is drawn over pencil on that one now, which hides more of it than a fair photo has hidden',
  },
  {
    old: 'reference/photographs.test.ts › symbols in black and white › photograph 116: all but a few cells, and those that are wrong are marked',
    now: 'reference/photographs.test.ts › symbols in black and white › photograph 98: all but a few cells, and those that are wrong are marked',
    why: 'signs that can hardly be told apart are marked, more than a fair photo has',
  },
  {
    old: 'reference/photographs.test.ts › symbols in black and white › photograph 44: all but a few cells, and those that are wrong are marked',
    now: 'reference/photographs.test.ts › symbols in black and white › photograph 26: all but a few cells, and those that are wrong are marked',
    why: 'signs that can hardly be told apart are marked, more than a fair photo has',
  },
  {
    old: 'unit/reading/cells.test.ts › cells of a chart › of a chart that nothing was drawn on are all ground, and sure',
    now: 'unit/reading/cells.test.ts › cells of a chart › of a chart that nothing was drawn on are asked about, and not called ground',
    why: 'one yarn alone is asked and never assumed',
  },
  {
    old: 'unit/reading/cells.test.ts › doubt › falls on cells between two yarns, and on those whose quarters disagree more than is usual',
    now: 'unit/reading/cells.test.ts › doubt › told by ink falls on cells between two yarns, and on no others',
    why: 'how sure a cell is is a probability that is measured',
  },
  {
    old: "unit/cli/read.test.ts › read › refuses 'no corners'",
    now: null,
    why: 'corners that are not given are found',
  },
  {
    old: "unit/host/electron-parts.test.ts › the platform's menu › asks for an action that the page has: 'New project'",
    now: "unit/host/electron-parts.test.ts › the platform's menu › asks for an action that the page has: 'New project…'",
    why: 'it asks what the project is for',
  },
  {
    old: 'unit/renderer-motif/lettering.test.ts › letters on the chart › float where they lie on the motif whole, if they fit',
    now: 'unit/lettering/place.test.ts › letters on a drawing › lie whole at the cursor over what is drawn where nothing is free, which is said',
    why: 'letters look for a free place first',
  },
  {
    old: 'unit/renderer-piece/drawing.test.ts › the line that the spaces are drawn on › lies on the row itself where no rows beside it are as wide',
    now: 'unit/renderer-piece/drawing.test.ts › the line that the spaces are drawn on › is the middle of the row that was measured, where alone they are true',
    why: 'it stands there on every piece',
  },
  {
    old: 'unit/renderer-piece/drawing.test.ts › the line that the spaces are drawn on › stands away from the band where the piece is as wide there',
    now: null,
    why: 'it stands on the row that was measured, since its numbers are true there alone',
  },
  {
    old: 'unit/renderer-piece/drawing.test.ts › the line that the spaces are drawn on › stands clear of other bands',
    now: null,
    why: 'it stands on the row that was measured, since its numbers are true there alone',
  },
  {
    old: 'unit/renderer-piece/drawing.test.ts › the line that the spaces are drawn on › stands where the piece has the width of the row',
    now: null,
    why: 'it stands on the row that was measured, since its numbers are true there alone',
  },
  {
    old: 'unit/words/words.test.ts › what is said of a problem › lettering-empty: what happened, where, and what to do',
    now: 'unit/lettering/set.test.ts › setting text in cells › sets the rest as if what it lacks were not there, and nothing where nothing is left',
    why: 'text without ink is no problem any more: nothing shows',
  },
  {
    old: 'unit/words/words.test.ts › what is said of a problem › letters-missing: what happened, where, and what to do',
    now: "unit/renderer-motif/lettering.test.ts › letters on the chart › that a typeface lacks are all named: 'Silkscreen has no tab.'",
    why: 'what a typeface lacks is named beside the rest, which is set',
  },
  {
    old: 'unit/mutants/mutants.test.ts › the mutants › layOut: margins[1] - seamAllowance.right → margins[1] - seamAllowance.left has its place',
    now: 'unit/mutants/mutants.test.ts › the mutants › clearOf: margins[1] - right → margins[1] - left has its place',
    why: 'what the seam takes is taken off by a function of its own, which cards and sentences share',
  },
  {
    old: 'e2e/reflow.spec.ts › zoomed in › each bench is whole, with its panel folded and open',
    now: 'e2e/reflow.spec.ts › zoomed in › the Motif bench is whole, with its panel folded and open',
    why: 'one test a bench, so that a busy machine has time for each',
  },
  {
    old: 'reference/running-order.test.ts › a running order followed by the simulated knitter › comes to what was designed for every size of 100 random projects (seed 13), but for the few that hands cannot knit',
    now: 'reference/running-order.test.ts › a running order followed by the simulated knitter › comes to every size of 50 random projects (seed 13), its yarns laid and measured as planned, but for the few that hands cannot knit',
    why: 'the yarns are measured too, and the projects stand in more seeds',
  },
  {
    old: 'reference/running-order.test.ts › a running order followed by the simulated knitter › comes to what was designed for every size of 100 random projects (seed 14), but for the few that hands cannot knit',
    now: 'reference/running-order.test.ts › a running order followed by the simulated knitter › comes to every size of 50 random projects (seed 14), its yarns laid and measured as planned, but for the few that hands cannot knit',
    why: 'the yarns are measured too, and the projects stand in more seeds',
  },
  {
    old: 'reference/running-order.test.ts › a running order followed by the simulated knitter › comes to what was designed for every size of 100 random projects (seed 15), but for the few that hands cannot knit',
    now: 'reference/running-order.test.ts › a running order followed by the simulated knitter › comes to every size of 50 random projects (seed 15), its yarns laid and measured as planned, but for the few that hands cannot knit',
    why: 'the yarns are measured too, and the projects stand in more seeds',
  },
  {
    old: 'unit/renderer-piece/lookahead-debounced.test.ts › of a small piece is there at once',
    now: 'unit/renderer-piece/lookahead-debounced.test.ts › of a small piece is there at once but for the remedies, which come finding by finding',
    why: 'remedies are worked out for each finding, in the worker',
  },
  {
    old: 'unit/renderer-piece/lookahead-debounced.test.ts › of a piece between them is there at once but for the remedies',
    now: 'unit/renderer-piece/lookahead-debounced.test.ts › of a small piece is there at once but for the remedies, which come finding by finding',
    why: 'remedies are worked out for each finding, in the worker',
  },
  {
    old: 'reference/photographs.test.ts › marks a corner full of strokes that could be a shadow: photograph 41005',
    now: 'reference/photographs.test.ts › reads a corner full of strokes that could be a shadow, or marks it: photograph 41005',
    why: 'cells are looked for nearer to their places, and all of the corner is read right',
  },
  {
    old: 'unit/mutants/mutants.test.ts › the mutants › copyOnNeedles: blankLeft: blank.right → blankLeft: blank.left has its place',
    now: 'unit/mutants/mutants.test.ts › the mutants › onNeedles: left: blank.right → left: blank.left has its place',
    why: 'copies are laid and knitted row by row, so that the rows of painted cells can be done again',
  },
  {
    old: 'unit/mutants/mutants.test.ts › the mutants › knitInto: origin + (at + 1) * width - 1 → origin + (at + 1) * width has its place',
    now: 'unit/mutants/mutants.test.ts › the mutants › rowKnitter: origin + (out + 1) * copy.width - 1 → origin + (out + 1) * copy.width has its place',
    why: 'copies are laid and knitted row by row, so that the rows of painted cells can be done again',
  },
];
