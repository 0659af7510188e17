/** A small project, and its file as each version wrote it. */
import { gridFromText } from '@shared/grid/index.ts';
import { projectAround, START_YARNS, type Project } from '@shared/project/index.ts';

export const small: Project = {
  ...projectAround('two gulls', 'gull', gridFromText(['X.X', '.X.'], '.X'), 0, 'worn', START_YARNS),
};

/** The text of a small project as version 1 wrote it: files out there hold it, so it never changes. */
export const TEXT_OF_VERSION_1 = `{
  "format": "walewright",
  "version": 1,
  "name": "two gulls",
  "yarns": [
    {
      "name": "slate",
      "colour": "#5d7591",
      "tex": 278
    },
    {
      "name": "chalk",
      "colour": "#fbf7ea",
      "tex": 278
    }
  ],
  "motifs": [
    {
      "id": "motif-1",
      "name": "gull",
      "ground": 0,
      "shows": "worn",
      "rows": [
        "X.X",
        ".X."
      ]
    }
  ],
  "piece": {
    "name": "piece",
    "shape": {
      "kind": "rectangle",
      "stitches": 120,
      "rows": 100
    },
    "oddStitch": "right",
    "offset": 0,
    "hemRows": 0,
    "gauge": {
      "stitches": 28,
      "rows": 40
    },
    "bed": {
      "needles": 200,
      "pitchMm": 4.5
    },
    "seamAllowance": {
      "left": 0,
      "right": 0
    },
    "finishedFace": "knit",
    "isInfant": false,
    "isLined": false,
    "startSide": "right",
    "endNeedleSelection": false,
    "floatLimit": {
      "stitches": 5,
      "mm": 25
    }
  },
  "bands": [
    {
      "groups": [
        {
          "motif": "motif-1",
          "across": 1,
          "up": 1
        }
      ],
      "unit": "repeat",
      "rule": {
        "kind": "seam"
      },
      "judge": "figure",
      "choice": 0,
      "position": {
        "kind": "centred",
        "oddRow": "below"
      },
      "ownBalls": false
    }
  ]
}
`;

const SECTIONS_TEXT = `    "hem": {
      "hasTurningRow": false,
      "gauge": null
    },
    "parts": [],
`;

/** The same project as version 2 wrote it. */
export const TEXT_OF_VERSION_2 = TEXT_OF_VERSION_1.replace('"version": 1', '"version": 2')
  .replace('      "shows": "worn",\n', '      "shows": "worn",\n      "isLettering": false,\n      "underlay": null,\n')
  .replace('    "hemRows": 0,\n', `    "hemRows": 0,\n${SECTIONS_TEXT}`)
  .replace('        "kind": "centred",\n', '        "kind": "centred",\n        "section": "shown",\n')
  .replace('  "bands"', '  "sizes": {\n    "name": "1",\n    "smaller": [],\n    "larger": []\n  },\n  "bands"')
  .replace('      "ownBalls": false', '      "cutCopies": "kept"')
  .replace(
    '          "up": 1\n',
    '          "up": 1,\n          "isMirrored": false,\n          "rise": 0,\n          "hasOwnBall": false\n',
  )
  .replace(/\]\n}\n$/, '],\n  "fills": []\n}\n');

/** The same project as it is written now. A change here needs a new file version. */
export const SMALL_TEXT = TEXT_OF_VERSION_2.replace('"version": 2', '"version": 3').replaceAll(
  '"tex": 278',
  '"tex": null',
);
