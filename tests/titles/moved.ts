/** Tests that moved, are called something else or went since `titles.txt` was written, and why. */
import type { Moved } from './compare.ts';

export const MOVED: readonly Moved[] = [
  {
    old: 'unit/host/memory.test.ts › takes six files of 59 MB at once within its bound of memory',
    now: 'unit/host/memory.test.ts › takes four files of 59 MB at once within its bound of memory',
    why: 'four tell as well whether there is a bound, and end in time on a busy machine',
  },
  {
    old: 'unit/renderer-piece/carried-cells.test.ts',
    now: 'unit/renderer-piece/dragged-cells.test.ts',
    why: 'a group that the pointer moves is dragged; a carry is yarn',
  },
  {
    old: 'unit/renderer-motif/cursor-voice.test.ts',
    now: 'unit/renderer-session/announcer.test.ts',
    why: 'the stages of the piece announce in the same way',
  },
  {
    old: 'unit/placement/better.test.ts',
    now: 'unit/placement/suggestions.test.ts',
    why: 'what would fit better is a suggestion',
  },
  {
    old: 'unit/project/history.test.ts › a gesture › cannot go on as another kind of change',
    now: 'unit/project/history.test.ts › a gesture › may go on with another kind of change, and is one step all the same',
    why: 'a change is a list of edits, of whatever kinds',
  },
  {
    old: 'unit/renderer-shell/keeper.test.ts',
    now: 'unit/renderer-recovery/keeper.test.ts',
    why: 'the keeping of unsaved work has a folder of its own',
  },
  {
    old: 'unit/renderer-shell/keeping-place.test.ts',
    now: 'unit/renderer-recovery/keeping-place.test.ts',
    why: 'the keeping of unsaved work has a folder of its own',
  },
  {
    old: 'unit/renderer-shell/window-identity.test.ts',
    now: 'unit/renderer-recovery/window-identity.test.ts',
    why: 'the keeping of unsaved work has a folder of its own',
  },
  {
    old: 'unit/renderer-shell/leaving.test.ts',
    now: 'unit/renderer-files/leaving.test.ts',
    why: 'opening and saving have a folder of their own',
  },
  {
    old: 'unit/renderer-reading-in/decoding-limit.test.ts',
    now: 'unit/renderer-pictures/decoding-limit.test.ts',
    why: 'picture files are read in a folder of their own',
  },
  {
    old: "unit/layers.test.ts › the layers are held by lint › 'src-renderer/shell/x.ts' may not hold: 'import { a } from \\'../../src-main/se…'",
    now: "unit/layers.test.ts › the layers are held by lint › 'src-renderer/window/x.ts' may not hold: 'import { a } from \\'../../src-main/se…'",
    why: 'there is no folder of that name in the renderer any more',
  },
  {
    old: "unit/layers.test.ts › the layers are held by lint › 'src-renderer/shell/x.ts' may not hold: 'import { shell } from \\'electron\\';'",
    now: "unit/layers.test.ts › the layers are held by lint › 'src-renderer/window/x.ts' may not hold: 'import { shell } from \\'electron\\';'",
    why: 'there is no folder of that name in the renderer any more',
  },
  {
    old: 'unit/knitting/fabric.test.ts',
    now: 'unit/fabric/fabric.test.ts',
    why: 'where patterns lie is a folder of its own',
  },
  {
    old: 'unit/knitting/fills.test.ts',
    now: 'unit/fabric/all-overs.test.ts',
    why: 'where patterns lie is a folder of its own',
  },
  {
    old: 'unit/knitting/fills-round.test.ts',
    now: 'unit/fabric/all-overs-round.test.ts',
    why: 'where patterns lie is a folder of its own',
  },
  {
    old: 'unit/knitting/gaps-round.test.ts',
    now: 'unit/fabric/gaps-round.test.ts',
    why: 'where patterns lie is a folder of its own',
  },
  {
    old: 'unit/knitting/sizes-table.test.ts',
    now: 'unit/fabric/sizes-table.test.ts',
    why: 'where patterns lie is a folder of its own',
  },
  {
    old: 'unit/knitting/rows.test.ts',
    now: 'unit/plan/rows.test.ts',
    why: 'the rows are a folder of their own',
  },
  {
    old: 'unit/knitting/all-contrast.test.ts',
    now: 'unit/plan/all-contrast.test.ts',
    why: 'the rows are a folder of their own',
  },
  {
    old: 'unit/knitting/refused.test.ts',
    now: 'unit/plan/refused.test.ts',
    why: 'the rows are a folder of their own',
  },
  {
    old: 'unit/knitting/findings.test.ts',
    now: 'unit/check/findings.test.ts',
    why: 'what will go wrong is a folder of its own',
  },
  {
    old: 'unit/knitting/figure-in-seam.test.ts',
    now: 'unit/check/figure-in-seam.test.ts',
    why: 'what will go wrong is a folder of its own',
  },
  {
    old: 'unit/knitting/remedies.test.ts',
    now: 'unit/check/remedies.test.ts',
    why: 'what will go wrong is a folder of its own',
  },
  {
    old: 'unit/knitting/wide.test.ts',
    now: 'unit/check/wide.test.ts',
    why: 'what will go wrong is a folder of its own',
  },
  {
    old: 'unit/strands/stack.test.ts',
    now: 'unit/check/stack.test.ts',
    why: 'what will go wrong is a folder of its own',
  },
  {
    old: 'unit/knitting/words.test.ts',
    now: 'unit/words/plan.test.ts',
    why: 'it is about the words',
  },
  {
    old: 'unit/knitting/rowlist.test.ts',
    now: 'unit/output/row-list.test.ts',
    why: 'what is printed is a folder of its own',
  },
  {
    old: 'property/knitting.test.ts',
    now: 'property/plan.test.ts',
    why: 'it is about the plan',
  },
  {
    old: 'unit/sheet/chart-parts.test.ts',
    now: 'unit/output/chart-parts.test.ts',
    why: 'what is printed is a folder of its own',
  },
  {
    old: 'unit/sheet/stagger.test.ts',
    now: 'unit/output/stagger.test.ts',
    why: 'what is printed is a folder of its own',
  },
  {
    old: 'unit/sheet/text.test.ts',
    now: 'unit/output/text.test.ts',
    why: 'what is printed is a folder of its own',
  },
  {
    old: 'unit/sheet/pour.test.ts',
    now: 'unit/output/pour.test.ts',
    why: 'what is printed is a folder of its own',
  },
  {
    old: 'unit/sheet/placement-sheet.test.ts',
    now: 'unit/output/placement-sheet.test.ts',
    why: 'what is printed is a folder of its own',
  },
  {
    old: 'unit/sheet/export-names.test.ts',
    now: 'unit/output/export-names.test.ts',
    why: 'what is printed is a folder of its own',
  },
  {
    old: 'unit/knitting/remedies.test.ts › remedies for long floats › come with the change that takes them, and it does what they say',
    now: 'unit/check/remedies.test.ts › remedies for long floats › do what they say once they are taken',
    why: 'a remedy is an intent, of which the change is made when it is taken',
  },
  {
    old: 'unit/architecture.test.ts › imports between folders › lie on no circle but those that are known',
    now: 'unit/architecture.test.ts › imports between folders › lie on no circle',
    why: 'no circle is left that could be known',
  },
  {
    old: 'unit/architecture.test.ts › imports between folders › are no longer known once they are gone: delete their lines in tests/architecture/known-circles.ts',
    now: null,
    why: 'no circle is left that could be known',
  },
  {
    old: 'unit/mutants/mutants.test.ts › the mutants › cutCopiesOf: edges.first - 1 → edges.first has its place',
    now: 'unit/mutants/mutants.test.ts › the mutants › lossesIn: Math.ceil((run.first → Math.floor((run.first has its place',
    why: 'copies of groups and of all-overs are clipped by one path',
  },
  {
    old: 'unit/mutants/mutants.test.ts › the mutants › layBand: firstRow >= 2 → firstRow › 2 has its place',
    now: 'unit/mutants/mutants.test.ts › the mutants › setUpBefore: firstRow >= 2 → firstRow › 2 has its place',
    why: 'what was laid and what was placed are one',
  },
  {
    old: 'unit/project/part-changes.test.ts',
    now: 'unit/project/section-changes.test.ts',
    why: 'a section that a person names is called a section',
  },
  ...[
    ' 127.0.0.1:4000 WINDOW 1 here',
    '127.0.0.1:4000 w 1 here',
    '127.0.0.1:4000 WINDOW -1 here',
    '127.0.0.1:4000 WINDOW 0 here',
    '127.0.0.1:4000 WINDOW 01 here',
    '127.0.0.1:4000 WINDOW 1 ../here',
    '127.0.0.1:4000 WINDOW 1 here ',
    '127.0.0.1:4000 WINDOW 1 here\\n',
    '127.0.0.1:4000 WINDOW 1.5 here',
    '127.0.0.1:4000 WINDOW 1e3 here',
    '127.0.0.1:4000 WINDOW 99999999999999999 here',
  ].map((text) => {
    const title = `unit/host/sealing.test.ts › what stands over a call › is not "${text.replace('WINDOW', 'w'.repeat(43))}"`;
    return { old: title, now: title.replace('here', 'here 0a1b'), why: 'behind a head stands a proof of the key' };
  }),
  {
    old: 'unit/placement/why.test.ts › a later choice says what it costs › against the one before it, where the seam continues',
    now: 'unit/placement/why.test.ts › a later choice says what it costs › against the first, where the seam continues',
    why: 'a choice is compared with the best, not with the one before it',
  },
  {
    old: 'unit/placement/why.test.ts › a later choice says what it costs › against the one before it, with even spaces',
    now: 'unit/placement/why.test.ts › a later choice says what it costs › against the first, with even spaces',
    why: 'a choice is compared with the best, not with the one before it',
  },
  {
    old: 'unit/placement/why.test.ts › a later choice says what it costs › against the one before it, with fixed margins',
    now: 'unit/placement/why.test.ts › a later choice says what it costs › against the first, with fixed margins',
    why: 'a choice is compared with the best, not with the one before it',
  },
  {
    old: 'e2e/piece-fill.spec.ts › fills a sleeve, reads how it meets in the seam, and takes what makes it meet',
    now: 'e2e/piece-fill.spec.ts › fills a sleeve, reads how it meets in the seam, and takes what makes it match',
    why: 'edges that meet as mirror images do not match',
  },
  {
    old: 'reference/seam-matching.test.ts › by hand › is a mirror where both edges cut a figure alike',
    now: 'reference/seam-by-hand.test.ts › by hand › is a mirror where both edges cut a figure alike, which is no match',
    why: 'edges that meet as mirror images do not match',
  },
  {
    old: 'reference/seam-matching.test.ts › by hand › is judged on each row by its own period',
    now: 'reference/seam-by-hand.test.ts › by hand › asks a row that repeats sooner to go on together with the rows beside it',
    why: 'a row matches where it goes on together with its neighbours',
  },
  {
    old: 'reference/seam-matching.test.ts › the fabric rolled into a tube › meets on every row once a stitch count or a shift that is offered is taken, and at none that is nearer',
    now: 'reference/seam-matching.test.ts › the fabric rolled into a tube › matches on every row once a stitch count that is offered is taken, and at none that is nearer',
    why: 'no shift makes a pattern go on across the seam',
  },
  {
    old: 'unit/words/fill.test.ts › how a fill meets in the seam, in words › says which way a stitch count or a shift goes',
    now: 'unit/words/all-over.test.ts › how a fill meets in the seam, in words › says which way a stitch count goes',
    why: 'no shift makes a pattern go on across the seam',
  },
  {
    old: 'unit/project/file.test.ts › a project file › of version 1 opens, and is written as version 3',
    now: 'unit/project/file.test.ts › a project file › of version 1 opens, and is written as version 6',
    why: 'the file has a new version',
  },
  {
    old: 'unit/project/file.test.ts › a project file › of version 2 opens, and is written as version 3',
    now: 'unit/project/file.test.ts › a project file › of version 2 opens, and is written as version 6',
    why: 'the file has a new version',
  },
  {
    old: 'unit/project/file.test.ts › a project file › of version 1 with a wrong field is refused as one of version 3 is',
    now: 'unit/project/file.test.ts › a project file › of version 1 with a wrong field is refused as one of today is',
    why: 'the file has a new version',
  },
  {
    old: 'unit/piece/sections.test.ts › a folded hem › folds on row 50 and is joined on row 100, with a turning row: true',
    now: 'unit/piece/sections.test.ts › a folded hem › folds on row 50 and is joined on row 100, with a turning row: loose',
    why: 'a turning row is knitted looser or of eyelets',
  },
  {
    old: 'unit/piece/sections.test.ts › a folded hem › folds on row 50 and is joined on row 100, with a turning row: false',
    now: 'unit/piece/sections.test.ts › a folded hem › folds on row 50 and is joined on row 100, with a turning row: none',
    why: 'a turning row is knitted looser or of eyelets',
  },
  {
    old: 'unit/cli/export.test.ts › export › into a folder where files of these names are › replaces it after both were moved',
    now: null,
    why: 'export replaces nothing unless told to, whoever wrote it; no list of what it wrote is kept',
  },
  {
    old: 'unit/cli/export.test.ts › export › into a folder where files of these names are › replaces what it wrote for the same project, and says so',
    now: 'unit/cli/export.test.ts › export › into a folder where files of these names are › replaces them with --replace, and says which',
    why: 'export replaces nothing unless told to',
  },
  {
    old: 'unit/cli/export.test.ts › export › into a folder where files of these names are › writes nothing over a file that somebody has changed since',
    now: 'unit/cli/export.test.ts › export › into a folder where files of these names are › writes nothing, and lists them with what to do',
    why: 'export replaces nothing unless told to',
  },
  {
    old: 'unit/cli/export.test.ts › export › into a folder where files of these names are › writes nothing over any with --keep',
    now: 'unit/cli/export.test.ts › export › into a folder where files of these names are › writes nothing, and lists them with what to do',
    why: 'what --keep did is what is done without --replace',
  },
  {
    old: 'unit/cli/export.test.ts › export › into a folder where files of these names are › writes nothing over files whose list is gone or damaged',
    now: 'unit/cli/export.test.ts › demo › can be done again and again, over what it wrote itself, and no other file unless told to',
    why: 'of the commands that write a project out, demo alone keeps the list',
  },
  {
    old: 'unit/cli/export.test.ts › export › into a folder where files of these names are › writes nothing over what another project was turned into',
    now: 'unit/cli/export.test.ts › export › into a folder where files of these names are › writes nothing, and lists them with what to do',
    why: 'export replaces nothing unless told to',
  },
  {
    old: 'unit/cli/export.test.ts › demo › can be done again and again, and refuses with --keep',
    now: 'unit/cli/export.test.ts › demo › can be done again and again, over what it wrote itself, and no other file unless told to',
    why: '--keep is gone: what it did is what is done without --replace',
  },
  {
    old: 'unit/cli/read.test.ts › read › replaces what it read out of the same photo, and no other file',
    now: 'unit/cli/read.test.ts › read › replaces what it read out of the same photo, and another file only when told to',
    why: '--replace came',
  },
  {
    old: 'unit/strands/carries.test.ts › carries › lie at the edges of the piece with end-needle selection on',
    now: 'unit/strands/carries.test.ts › carries › lie at the edges of the piece where the edge needles knit the contrast',
    why: 'end needles are part of the fabric',
  },
  {
    old: 'unit/strands/floats.test.ts › floats of one row › carries the contrast to both edges with end-needle selection on',
    now: null,
    why: 'end needles are part of the fabric: the rows of the test above hold one that has them',
  },
  {
    old: 'unit/knitting/rowlist.test.ts › the row list › says for every row the carriage, the section, the needles of each contrast, the wraps and the notes',
    now: 'unit/output/row-list.test.ts › the row list › says for every row the carriage, the section, the needles, what is done before it and the wraps',
    why: 'what is done is told before the row that it is done before',
  },
  {
    old: 'unit/knitting/rowlist.test.ts › notes at a row › say what happens at the edges of a shaped piece',
    now: 'unit/output/row-list.test.ts › the row list › tells increases at the row that they are done before',
    why: 'the row list is made from the running order',
  },
  {
    old: 'unit/knitting/rowlist.test.ts › notes at a row › have no set-up row before row 1',
    now: 'unit/output/row-list.test.ts › the row list › has no acts for what cannot be knitted, and says why',
    why: 'a pattern on row 1 is refused',
  },
  {
    old: 'unit/sheet/placement-sheet.test.ts › what the sheet says › takes plain rows together but not over a row that must be told apart',
    now: 'unit/output/placement-sheet.test.ts › what the sheet says › takes plain rows together but not over a row before which there is something to do',
    why: 'the row list is made from the running order',
  },
  {
    old: 'unit/piece/sections.test.ts › a folded hem › says in the row list what to do at both',
    now: 'unit/output/row-list.test.ts › the row list › says for every row the carriage, the section, the needles, what is done before it and the wraps',
    why: 'the row list is made from the running order',
  },
  {
    old: 'unit/mutants/mutants.test.ts › the mutants › sectionsOf: Math.floor(hemRows / 2) → Math.ceil(hemRows / 2) has its place',
    now: 'unit/mutants/mutants.test.ts › the mutants › facingRows: Math.floor(hemRows / 2) → Math.ceil(hemRows / 2) has its place',
    why: 'where a hem folds has a function of its own, which the drawing asks too',
  },
  {
    old: 'unit/sheet/chart-parts.test.ts › a chart over pages › of 200 × 1000 takes 21',
    now: 'unit/output/chart-parts.test.ts › a chart over pages › of 200 × 1000 takes 84',
    why: 'cells are at least 3 mm, and pages repeat what they join',
  },
  {
    old: 'unit/sheet/chart-parts.test.ts › a chart over pages › of 1000 × 1 takes 15',
    now: 'unit/output/chart-parts.test.ts › a chart over pages › of 1000 × 1 takes 31',
    why: 'cells are at least 3 mm, and pages repeat what they join',
  },
  {
    old: 'unit/sheet/chart-parts.test.ts › a chart over pages › of 70 × 100 takes 1',
    now: 'unit/output/chart-parts.test.ts › a chart over pages › of 70 × 100 takes 4',
    why: 'cells of a chart are at least 3 mm',
  },
  {
    old: 'unit/services/dispatch.test.ts › a request › exports.write with {"project":"","folder":"/","kinds":[],"paper":"a4","replace":[]} is refused before any service is asked',
    now: 'unit/services/dispatch.test.ts › a request › exports.write with {"project":"","folder":"/","kinds":[],"paper":"a4","date":"2026-01-02","there":{"kind":"ask"}} is refused before any service is asked',
    why: 'a request to export has a date, and says what becomes of files that are there',
  },
  {
    old: 'unit/services/dispatch.test.ts › a request › exports.write with {"project":"","folder":"/","kinds":["exe"],"paper":"a4","replace":[]} is refused before any service is asked',
    now: 'unit/services/dispatch.test.ts › a request › exports.write with {"project":"","folder":"/","kinds":["exe"],"paper":"a4","date":"2026-01-02","there":{"kind":"ask"}} is refused before any service is asked',
    why: 'a request to export has a date, and says what becomes of files that are there',
  },
  {
    old: 'unit/words/words.test.ts › what is said of a problem › files-kept: what happened, where, and what to do',
    now: 'unit/words/words.test.ts › what is said of a problem › files-there: what happened, where, and what to do',
    why: '--keep is gone: what it did is what is done without --replace',
  },
  {
    old: 'unit/knitting/words.test.ts › a finding in words › {"code":"contrast-to-edges","rows":[5,9]}',
    now: 'unit/words/plan.test.ts › a finding in words › {"code":"contrast-to-edges","rows":[5,9],"canBeOff":true}',
    why: 'the finding knows whether the machine has a switch for it',
  },
  {
    old: 'unit/mutants/mutants.test.ts › the mutants › carriesOf: rows: index + 1 - before → rows: index - before has its place',
    now: 'unit/mutants/mutants.test.ts › the mutants › carriesOf: index + 1 - before : 0 → index - before : 0 has its place',
    why: 'rows are counted only where the strand is carried on, not cut',
  },
  ...[
    'changes row by row on a sleeve, which no stitch count can match',
    'goes on where the stitches seen are whole repeats',
    'is off by the stitches that are over, or missing where that is less',
    'is plain where the border ends short of the seam, by as much as is seen of it',
    'is plain where the copies at the edges are left out',
    'offers the nearest whole repeats',
    'shows nothing on rows of one yarn, which go with those below, or above at the bottom',
  ].map((title) => ({
    old: `reference/seam-matching.test.ts › by hand › ${title}`,
    now: `reference/seam-by-hand.test.ts › by hand › ${title}`,
    why: 'what is looked at by hand and what random pieces show stand in files of their own',
  })),
  {
    old: 'unit/knitting/fills.test.ts › a fill › from row 1 on has no set-up row',
    now: 'unit/fabric/all-overs.test.ts › a fill › from row 1 on has no set-up row, which blocks where no needle can be pushed by hand',
    why: 'above a closed cast-on the needles of row 1 are pushed forward by hand',
  },
  {
    old: 'unit/knitting/findings.test.ts › the order of findings › is warnings first, each from the bottom up',
    now: 'unit/check/findings.test.ts › the order of findings › is those that block first, then warnings, then notes, each from the bottom up',
    why: 'what keeps the piece from being knitted is read first',
  },
  {
    old: 'unit/knitting/words.test.ts › a finding in words › advises no ball for each group where none stand beside each other',
    now: 'unit/words/plan.test.ts › a finding in words › advises no ball for each group where it floats inside one',
    why: 'a remedy is named only where it helps: not for floats within a group either',
  },
  {
    old: 'unit/knitting/words.test.ts › a finding in words › {"code":"long-floats","rows":[61,91],"role":"contrast","yarn":1,"needles":{"first":-12,"last":10},"longest":23,"longestMm":82.14,"count":31}',
    now: 'unit/words/plan.test.ts › a finding in words › {"code":"long-floats","rows":[61,91],"role":"contrast","yarn":1,"needles":{"first":-12,"last":10},"longest":23,"longestMm":82.14,"count":31,"isBetweenGroups":true}',
    why: 'the finding knows whether yarn goes from group to group',
  },
  {
    old: 'unit/cli/sizes.test.ts › --size › plans the size of that name, and the one at hand if left out',
    now: 'unit/cli/sizes.test.ts › --size › plans the size of that name, and the current one if left out',
    why: 'a size is current; at hand is what lies ready',
  },
  {
    old: "unit/host/electron-parts.test.ts › the platform's menu › asks for an action that the page has: 'Appearance as the platform'",
    now: "unit/host/electron-parts.test.ts › the platform's menu › asks for an action that the page has: 'Appearance: follow the system'",
    why: 'the command is called so',
  },
  {
    old: 'unit/mutants/mutants.test.ts › the mutants › hemRowsOf: front.last + 1 → front.last has its place',
    now: 'unit/mutants/mutants.test.ts › the mutants › removeWaste: work.join.at + 1 → work.join.at has its place',
    why: 'what is done at a hem is told by the running order alone',
  },
  {
    old: "unit/mutants/mutants.test.ts › the mutants › rowNotes: add(firstRow - 1, { code: 'set-up' → add(firstRow, { code: 'set-up' has its place",
    now: 'unit/mutants/mutants.test.ts › the mutants › setChoices: setFor(work, row, row - 2 → setFor(work, row, row - 1 has its place',
    why: 'when a pattern is set is told by the running order alone',
  },
  {
    old: 'unit/piece/sections.test.ts › a folded hem › tells on its last row if the row after it is patterned: a band from row 101',
    now: null,
    why: 'the row that joins a hem cannot be in pattern, which is a finding',
  },
  {
    old: 'unit/piece/sections.test.ts › a folded hem › tells on its last row if the row after it is patterned: a band from row 102',
    now: null,
    why: 'the row that joins a hem cannot be in pattern, which is a finding',
  },
  {
    old: 'unit/renderer-piece/schedule.test.ts › shaping as a knitter reads it › says fewer where the piece narrows',
    now: 'unit/renderer-piece/schedule.test.ts › shaping as a knitter reads it › says decrease where the piece narrows',
    why: 'shaping is told as increase and decrease',
  },
  {
    old: 'unit/knitting/fills.test.ts › a fill › has its set-up row, and its first and last row, in the row list',
    now: 'unit/fabric/all-overs.test.ts › a fill › has its set-up row, and its first and last row, in the running order',
    why: 'rows are told by the running order',
  },
  {
    old: "unit/knitting/gaps-round.test.ts › the gaps round the closed piece › are told apart: 'the seam takes 2 of the figure'",
    now: "unit/fabric/gaps-round.test.ts › the gaps round the closed piece › are told apart: 'the seam allowance takes 2 of the fig…'",
    why: 'it is the seam allowance',
  },
  {
    old: 'unit/knitting/words.test.ts › the plan in words › is what the knitter must set: piece, first needles, set-up row, yarn',
    now: 'unit/words/plan.test.ts › the plan in words › is what is planned: piece, sections, groups and their first needles',
    why: 'what the knitter does is told by the running order',
  },
  {
    old: 'e2e/piece-sizes.spec.ts › compares a sleeve in two sizes by keyboard, takes one in hand and comes back by undo',
    now: 'e2e/piece-sizes.spec.ts › compares a sleeve in two sizes by keyboard, and undo shows the size that it changes',
    why: 'which size is looked at is no part of the project: going there is no change',
  },
  {
    old: 'property/sizes.test.ts › each size › is what it was when one has been to another and back',
    now: 'property/sizes.test.ts › each size › is looked at without a change of the project, in any order',
    why: 'which size is looked at is no part of the project: going there is no change',
  },
  {
    old: "unit/project/change.test.ts › a change › called 'go-to-size' is undone by its inverse and touches no other state",
    now: 'unit/renderer-session/looking.test.ts › looking at pieces and sizes, in any order › leaves the project the same object, saved, and nothing to undo',
    why: 'which size is looked at is no part of the project: going there is no change',
  },
  {
    old: 'unit/project/sizes.test.ts › the sizes of a project › gone to are a change that is undone by its inverse',
    now: 'unit/renderer-session/looking.test.ts › looking at pieces and sizes, in any order › leaves the project the same object, saved, and nothing to undo',
    why: 'which size is looked at is no part of the project: going there is no change',
  },
  {
    old: 'unit/project/sizes.test.ts › the sizes of a project › come like the one at hand, next to it, and are taken in hand',
    now: 'unit/project/sizes.test.ts › the sizes of a project › come at place 1 with the middle of those beside, or the last difference',
    why: 'a size is proposed from those beside it, and the one that is looked at stays the one',
  },
  {
    old: 'unit/project/sizes.test.ts › the sizes of a project › added smaller are a change that is undone by its inverse',
    now: 'unit/project/sizes.test.ts › the sizes of a project › added below the smallest are a change that is undone by its inverse',
    why: 'a size comes at a place among all sizes',
  },
  {
    old: 'unit/project/sizes.test.ts › the sizes of a project › added larger are a change that is undone by its inverse',
    now: 'unit/project/sizes.test.ts › the sizes of a project › added above the largest are a change that is undone by its inverse',
    why: 'a size comes at a place among all sizes',
  },
  {
    old: 'unit/project/sizes.test.ts › the sizes of a project › go one by one, and the next larger one comes to hand',
    now: 'unit/project/sizes.test.ts › the sizes of a project › go one by one, but for the last',
    why: 'which size is looked at is no part of the project: going there is no change',
  },
  {
    old: 'unit/project/sizes.test.ts › the sizes of a project › stand smallest first, whichever is at hand',
    now: 'unit/project/sizes.test.ts › the sizes of a project › stand smallest first, whichever is looked at',
    why: 'which size is looked at is no part of the project: going there is no change',
  },
  {
    old: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › (21 sizes on both sides) is refused and the field named',
    now: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › (21 sizes) is refused and the field named',
    why: 'sizes stand in one list',
  },
  {
    old: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › (a size of no rows) is refused and the field named',
    now: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › of version 4 (a size of no rows) is refused as one of today is, and the field named where it would stand',
    why: 'sizes stand in one list',
  },
  {
    old: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › (a group without copies in a size) is refused and the field named',
    now: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › (copies in a size that is not there) is refused and the field named',
    why: 'copies name the sizes by their ids',
  },
  {
    old: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › (needles found by hand before they were kept) is refused and the field named',
    now: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › (needles by hand as the rule) is refused and the field named',
    why: 'the rule is that of all sizes, and never by hand',
  },
  {
    old: 'unit/renderer-shell/keeper.test.ts › cells in hand › that are lifted and moved are kept where they are, and what was there before with them',
    now: 'unit/renderer-recovery/kept-in-hand.test.ts › cells in hand › that are lifted and moved are kept where they are, and what was there before with them',
    why: 'what keeps cells in hand has a file of its own',
  },
  {
    old: 'unit/renderer-shell/keeper.test.ts › cells in hand › that are pasted are kept, and no more once they are given up',
    now: 'unit/renderer-recovery/kept-in-hand.test.ts › cells in hand › that are pasted are kept, and no more once they are given up',
    why: 'what keeps cells in hand has a file of its own',
  },
  {
    old: 'unit/renderer-shell/keeper.test.ts › cells in hand › that do not fit what is kept with them are left out',
    now: 'unit/renderer-recovery/kept-in-hand.test.ts › cells in hand › that do not fit what is kept with them are left out',
    why: 'what keeps cells in hand has a file of its own',
  },
  {
    old: 'unit/services/recovery.test.ts › a file of kept work › has the format of version 2',
    now: 'unit/services/kept-file.test.ts › a file of kept work › has the format of version 2',
    why: 'the file of kept work has a test of its own',
  },
  {
    old: 'unit/services/recovery.test.ts › a file of kept work › has the format that was written before windows kept their own, and is read without a version to save over',
    now: 'unit/services/kept-file.test.ts › a file of kept work › has the format that was written before windows kept their own, and is read without a version to save over',
    why: 'the file of kept work has a test of its own',
  },
  {
    old: 'unit/services/recovery.test.ts › a file of kept work › keeps any text as it is',
    now: 'unit/services/kept-file.test.ts › a file of kept work › keeps any text as it is',
    why: 'the file of kept work has a test of its own',
  },
  {
    old: 'unit/services/recovery.test.ts › what cannot be read › is a file of kept work that breaks off anywhere, or in which any letter is another',
    now: 'unit/services/kept-file.test.ts › what cannot be read › is a file of kept work that breaks off anywhere, or in which any letter is another',
    why: 'the file of kept work has a test of its own',
  },
  {
    old: 'unit/services/recovery.test.ts › what cannot be read › is told of, stays as it was, and hides nothing that can be',
    now: 'unit/services/kept-file.test.ts › what cannot be read › is told of, stays as it was, and hides nothing that can be',
    why: 'the file of kept work has a test of its own',
  },
  {
    old: 'unit/host/sealed-connection.test.ts › the keys of the page › are kept for the session, and for no longer than the browser allows',
    now: 'unit/host/keys-of-the-page.test.ts › the keys of the page › are kept for the session, and for no longer than the browser allows',
    why: 'the keys of the page have a test of their own',
  },
  {
    old: 'unit/host/sealed-connection.test.ts › the keys of the page › are none in ""',
    now: 'unit/host/keys-of-the-page.test.ts › the keys of the page › are none in ""',
    why: 'the keys of the page have a test of their own',
  },
  {
    old: 'unit/host/sealed-connection.test.ts › the keys of the page › are none in "#"',
    now: 'unit/host/keys-of-the-page.test.ts › the keys of the page › are none in "#"',
    why: 'the keys of the page have a test of their own',
  },
  {
    old: 'unit/host/sealed-connection.test.ts › the keys of the page › are none in "#kkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkx"',
    now: 'unit/host/keys-of-the-page.test.ts › the keys of the page › are none in "#kkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkkx"',
    why: 'the keys of the page have a test of their own',
  },
  {
    old: 'unit/host/sealed-connection.test.ts › the keys of the page › are none in "#short"',
    now: 'unit/host/keys-of-the-page.test.ts › the keys of the page › are none in "#short"',
    why: 'the keys of the page have a test of their own',
  },
  {
    old: 'unit/host/sealed-connection.test.ts › the keys of the page › are taken out of the address at once',
    now: 'unit/host/keys-of-the-page.test.ts › the keys of the page › are taken out of the address at once',
    why: 'the keys of the page have a test of their own',
  },
  {
    old: 'unit/host/sealed-connection.test.ts › what is large › is sealed and opened beside the page, what is small in it',
    now: 'unit/host/sealing-beside-the-page.test.ts › what is large › is sealed and opened beside the page, what is small in it',
    why: 'sealing beside the page has a test of its own',
  },
  {
    old: 'unit/host/sealed-connection.test.ts › what is large › is sealed by the page itself where a helper cannot be had',
    now: 'unit/host/sealing-beside-the-page.test.ts › what is large › is sealed by the page itself where a helper cannot be had',
    why: 'sealing beside the page has a test of its own',
  },
  {
    old: 'unit/host/sealed-connection.test.ts › what is large › is sealed by the page itself where a helper fails',
    now: 'unit/host/sealing-beside-the-page.test.ts › what is large › is sealed by the page itself where a helper fails',
    why: 'sealing beside the page has a test of its own',
  },
  {
    old: "unit/knitting/findings.test.ts › copies cut by shaping › are 'kept' as asked, and said to be",
    now: "unit/check/cut-copies.test.ts › copies cut by shaping › are 'kept' as asked, and said to be",
    why: 'cut copies have a test of their own',
  },
  {
    old: "unit/knitting/findings.test.ts › copies cut by shaping › are 'kept-if-read' as asked, and said to be",
    now: "unit/check/cut-copies.test.ts › copies cut by shaping › are 'kept-if-read' as asked, and said to be",
    why: 'cut copies have a test of their own',
  },
  {
    old: "unit/knitting/findings.test.ts › copies cut by shaping › are 'left-out' as asked, and said to be",
    now: "unit/check/cut-copies.test.ts › copies cut by shaping › are 'left-out' as asked, and said to be",
    why: 'cut copies have a test of their own',
  },
  {
    old: 'unit/knitting/findings.test.ts › copies cut by shaping › are counted with the rows on which they lose figure',
    now: 'unit/check/cut-copies.test.ts › copies cut by shaping › are counted with the rows on which they lose figure',
    why: 'cut copies have a test of their own',
  },
  {
    old: 'unit/knitting/findings.test.ts › copies cut by shaping › are none where only blank columns are lost',
    now: 'unit/check/cut-copies.test.ts › copies cut by shaping › are none where only blank columns are lost',
    why: 'cut copies have a test of their own',
  },
  {
    old: 'unit/renderer-motif/measuring.test.ts › measuring beside the page › asks once for a drawing that two wait for',
    now: 'unit/renderer-motif/measured.test.ts › are asked for once where two wait for them',
    why: 'one client serves all that is worked out off the page',
  },
  {
    old: 'unit/renderer-motif/measuring.test.ts › measuring beside the page › gives up a drawing when a later one is asked for, and drops its answer',
    now: 'unit/renderer-worker/client.test.ts › a client of the worker › hears nothing more of a question once there is a later one, and ends a worker that does not let go',
    why: 'one client serves all that is worked out off the page',
  },
  {
    old: 'unit/renderer-motif/measuring.test.ts › measuring beside the page › gives what the worker measured, and keeps the worker for the next drawing',
    now: 'unit/renderer-worker/client.test.ts › a client of the worker › gives what the worker answers, and keeps the worker for the next question',
    why: 'one client serves all that is worked out off the page',
  },
  {
    old: 'unit/renderer-motif/measuring.test.ts › measuring beside the page › measures a drawing again for another ground',
    now: 'unit/renderer-motif/measured.test.ts › are given up for those of a later drawing, and for another ground',
    why: 'one client serves all that is worked out off the page',
  },
  {
    old: 'unit/renderer-motif/measuring.test.ts › measuring beside the page › measures on the page where a worker cannot be started',
    now: 'unit/renderer-worker/client.test.ts › a client without a worker › does the work in the window where one cannot be had, and asks a new one the next time',
    why: 'one client serves all that is worked out off the page',
  },
  {
    old: 'unit/renderer-motif/measuring.test.ts › measuring beside the page › measures on the page where a worker fails',
    now: 'unit/renderer-worker/client.test.ts › a client without a worker › does the work in the window where one dies before it answers, and asks a new one the next time',
    why: 'one client serves all that is worked out off the page',
  },
  {
    old: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › (a ground of no yarn) is refused and the field named',
    now: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › (a main yarn that is none) is refused and the field named',
    why: 'the ground is said once, as the main yarn of the project',
  },
  {
    old: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › (a fractional ground) is refused and the field named',
    now: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › (half a main yarn) is refused and the field named',
    why: 'the ground is said once, as the main yarn of the project',
  },
  {
    old: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › is refused where two motifs have one id, or two grounds',
    now: 'unit/project/file-refused.test.ts › a project with a field that cannot be right › is refused where two motifs have one id',
    why: 'the ground is said once, as the main yarn of the project',
  },
  {
    old: 'unit/mutants/mutants.test.ts › the mutants › clear: first + width - 1 → first + width has its place',
    now: 'unit/mutants/mutants.test.ts › the mutants › knitInto: origin + (at + 1) * width - 1 → origin + (at + 1) * width has its place',
    why: 'copies of groups and of all-overs are knitted by one path',
  },
  {
    old: 'unit/mutants/mutants.test.ts › the mutants › fillRun: edges.first + border.left → edges.first + border.right has its place',
    now: 'unit/mutants/mutants.test.ts › the mutants › runOn: edges.first + border.left → edges.first + border.right has its place',
    why: 'copies of groups have their needles by the same path',
  },
  {
    old: 'unit/renderer-piece/fill.test.ts',
    now: 'unit/renderer-piece/all-over.test.ts',
    why: 'a pattern all over is called so in the code too',
  },
  {
    old: 'unit/words/fill.test.ts',
    now: 'unit/words/all-over.test.ts',
    why: 'a pattern all over is called so in the code too',
  },
  {
    old: "unit/project/change.test.ts › a change › called 'add-fill' is undone by its inverse and touches no other state",
    now: "unit/project/change.test.ts › a change › called 'add-all-over' is undone by its inverse and touches no other state",
    why: 'a pattern all over is called so in the code too',
  },
  {
    old: "unit/project/change.test.ts › a change › called 'remove-fill' is undone by its inverse and touches no other state",
    now: "unit/project/change.test.ts › a change › called 'remove-all-over' is undone by its inverse and touches no other state",
    why: 'a pattern all over is called so in the code too',
  },
  {
    old: "unit/project/change.test.ts › a change › called 'fill-motif' is undone by its inverse and touches no other state",
    now: "unit/project/change.test.ts › a change › called 'all-over-motif' is undone by its inverse and touches no other state",
    why: 'a pattern all over is called so in the code too',
  },
  {
    old: "unit/project/change.test.ts › a change › called 'fill-rows' is undone by its inverse and touches no other state",
    now: "unit/project/change.test.ts › a change › called 'all-over-rows' is undone by its inverse and touches no other state",
    why: 'a pattern all over is called so in the code too',
  },
  {
    old: "unit/project/change.test.ts › a change › called 'fill-border' is undone by its inverse and touches no other state",
    now: "unit/project/change.test.ts › a change › called 'all-over-border' is undone by its inverse and touches no other state",
    why: 'a pattern all over is called so in the code too',
  },
  {
    old: "unit/project/change.test.ts › a change › called 'fill-lie' is undone by its inverse and touches no other state",
    now: "unit/project/change.test.ts › a change › called 'all-over-lie' is undone by its inverse and touches no other state",
    why: 'a pattern all over is called so in the code too',
  },
  {
    old: 'unit/knitting/words.test.ts › a finding in words › {"code":"fill-cut","rows":[20,90],"copies":12,"whole":48,"fill":0}',
    now: 'unit/words/plan.test.ts › a finding in words › {"code":"fill-cut","rows":[20,90],"copies":12,"whole":48,"allOver":0}',
    why: 'a pattern all over is called so in the code too',
  },
  {
    old: 'unit/knitting/words.test.ts › a finding in words › {"code":"fill-left-out","rows":[20,90],"copies":1,"whole":1,"fill":1}',
    now: 'unit/words/plan.test.ts › a finding in words › {"code":"fill-left-out","rows":[20,90],"copies":1,"whole":1,"allOver":1}',
    why: 'a pattern all over is called so in the code too',
  },
  {
    old: 'unit/knitting/words.test.ts › a finding in words › {"code":"mirrored-lettering-in-fill","rows":[2,90],"fill":0,"motif":"initials","isFillMirrored":true}',
    now: 'unit/words/plan.test.ts › a finding in words › {"code":"mirrored-lettering-in-fill","rows":[2,90],"allOver":0,"motif":"initials","isMirrored":true}',
    why: 'a pattern all over is called so in the code too',
  },
  {
    old: 'e2e/sheet.spec.ts › asks before it replaces files only when another question is answered',
    now: 'e2e/sheet-replacing.spec.ts › asks before it replaces files only when another question is answered',
    why: 'what is there already has a file of its own',
  },
  {
    old: 'e2e/sheet.spec.ts › shows what a folder holds already, and asks before it replaces any of it',
    now: 'e2e/sheet-replacing.spec.ts › shows what a folder holds already, and asks before it replaces any of it',
    why: 'what is there already has a file of its own',
  },
];
