/**
 * A camera before a sheet of paper: perspective, a lens that bulges, paper that
 * curls. Written from the geometry of a pinhole; lengths are in widths of a
 * cell, places on the sheet from the chart's top left corner.
 */

export interface Pose {
  readonly width: number;
  readonly height: number;
  /** Degrees: turned in the picture, tipped back, swung sideways. */
  readonly roll: number;
  readonly tilt: number;
  readonly pan: number;
  /** How far it stands before the sheet, in the larger of its two sides. */
  readonly distance: number;
  /** Share of the picture that the chart with its margin about fills. */
  readonly fill: number;
  /** How far the picture's edge bulges, as a share of its half diagonal. */
  readonly barrel: number;
  /** How far the sheet's left and right edges stand up from its middle, as a share of its width. */
  readonly curl: number;
}

export interface Place {
  x: number;
  y: number;
}

export interface View {
  /** Where a place of the sheet is in the picture. */
  toPicture(x: number, y: number): Place;
  /** Writes the place of the sheet that is seen at a place of the picture. */
  toSheet(x: number, y: number, place: Place): void;
}

type Three = readonly [number, number, number];

/** Rounds in which the place on curled paper is found; each takes nine tenths of what is left. */
const ROUNDS = 6;

export function viewOf(pose: Pose, chartWidth: number, chartHeight: number, margin: number): View {
  const [roll, tilt, pan] = [pose.roll, pose.tilt, pose.pan].map((degrees) => (degrees * Math.PI) / 180) as [
    number,
    number,
    number,
  ];
  const { width, height, barrel, curl } = pose;
  const [sheetWidth, sheetHeight] = [chartWidth + 2 * margin, chartHeight + 2 * margin];
  const distance = pose.distance * Math.max(sheetWidth, sheetHeight);
  const turned = (x: number, y: number, z: number): Three => {
    const rx = x * Math.cos(roll) - y * Math.sin(roll);
    const ry = x * Math.sin(roll) + y * Math.cos(roll);
    const ty = ry * Math.cos(tilt) - z * Math.sin(tilt);
    const tz = ry * Math.sin(tilt) + z * Math.cos(tilt);
    return [rx * Math.cos(pan) + tz * Math.sin(pan), ty, -rx * Math.sin(pan) + tz * Math.cos(pan)];
  };
  // Directions on the sheet: to the right, down, and away from the camera.
  const [e1, e2, e3] = [turned(1, 0, 0), turned(0, 1, 0), turned(0, 0, 1)];
  // Towards the camera is negative; the edges of curled paper come towards it.
  const risen = (x: number): number => -curl * sheetWidth * (x / (sheetWidth / 2)) ** 2;
  const at = (a: number, b: number): Three => {
    const z = risen(a);
    return [a * e1[0] + b * e2[0] + z * e3[0], a * e1[1] + b * e2[1] + z * e3[1], a * e1[2] + b * e2[2] + z * e3[2]];
  };
  const ends = [1, -1].flatMap((sx) => [1, -1].map((sy) => at((sx * sheetWidth) / 2, (sy * sheetHeight) / 2)));
  const reach = (axis: 0 | 1): number => Math.max(...ends.map((p) => Math.abs(p[axis]) / (distance + p[2])));
  const focal = Math.min((pose.fill * width) / 2 / reach(0), (pose.fill * height) / 2 / reach(1));
  const halfDiagonal = Math.hypot(width, height) / 2;
  const stretchAt = (x: number, y: number): number =>
    1 + (barrel * ((x - width / 2) ** 2 + (y - height / 2) ** 2)) / halfDiagonal ** 2;

  const toSheet = (x: number, y: number, place: Place): void => {
    const stretch = stretchAt(x, y);
    const px = ((x - width / 2) * stretch) / focal;
    const py = ((y - height / 2) * stretch) / focal;
    // The ray (px, py, 1)·t meets a·e1 + b·e2 + z·e3 + (0, 0, distance), by Cramer's rule.
    const a11 = e1[0] - px * e1[2];
    const a12 = e2[0] - px * e2[2];
    const a21 = e1[1] - py * e1[2];
    const a22 = e2[1] - py * e2[2];
    const determinant = a11 * a22 - a12 * a21;
    let a = 0;
    let b = 0;
    for (let round = 0; round < (curl === 0 ? 1 : ROUNDS); round++) {
      const z = risen(a);
      const r1 = px * (distance + z * e3[2]) - z * e3[0];
      const r2 = py * (distance + z * e3[2]) - z * e3[1];
      a = (r1 * a22 - r2 * a12) / determinant;
      b = (a11 * r2 - a21 * r1) / determinant;
    }
    place.x = a + chartWidth / 2;
    place.y = b + chartHeight / 2;
  };

  const toPicture = (x: number, y: number): Place => {
    const [px, py, pz] = at(x - chartWidth / 2, y - chartHeight / 2);
    const wanted = { x: (focal * px) / (distance + pz), y: (focal * py) / (distance + pz) };
    let seen = { x: wanted.x + width / 2, y: wanted.y + height / 2 };
    // The bulge is undone by repeating; each time a hundredth of the error is left.
    for (let i = 0; i < 12; i++) {
      const stretch = stretchAt(seen.x, seen.y);
      seen = { x: width / 2 + wanted.x / stretch, y: height / 2 + wanted.y / stretch };
    }
    return seen;
  };
  return { toPicture, toSheet };
}
