import type { Extents, Point, Profile } from "../geometry/profile.js";
import type { RipPiece } from "../model/rip.js";
import type { RipStep } from "../nest/saw/ripSteps.js";
import { alongSide } from "./bevelView.js";
import type { Bend, Item, LineKind } from "./page.js";
import { becomesWords, type RipTalk } from "./ripWords.js";
import { boxAt, filledBox, lineThrough, rectangle } from "./shapes.js";
import { shorten, textWidth, write } from "./textBox.js";

/** Thickness of the bar that stands for fence or stop block, and its distance from the piece, mm of paper. */
const bar = { thick: 1.6, off: 1 };
const left = 0.88;
/** Along a bevelled side. */
const slope = 0.6;
/** Of a knot. */
const noGood = 0.62;

/**
 * One step as it is seen from above: the piece as it lay on its sheet, what comes off in white with its name, the rest in
 * grey, and at its reference edge the fence or the stop block as a dark bar, or the edge that is measured from. An edge that is
 * cut true is grey all along. Under an odd piece that is cut square to its true edge a paler bar is the sled's fence.
 */
export function ripPicture(step: RipStep, room: Extents, talk: RipTalk): readonly Item[] {
  const { piece } = step;
  const edge = bar.off + bar.thick;
  const scale = Math.min(
    (room.max.x - room.min.x - edge) / piece.length,
    (room.max.y - room.min.y - edge) / piece.width,
  );
  const x0 = room.min.x + edge;
  const y0 = room.min.y + edge + (room.max.y - room.min.y - edge - piece.width * scale) / 2;
  const at = ({ x, y }: Point) => ({ x: x0 + (x - piece.x) * scale, y: y0 + (y - piece.y) * scale });
  const drawn = (loop: Profile): readonly Bend[] => loop.map((bend) => ({ bulge: bend.bulge, ...at(bend) }));
  const onPaper = (each: RipPiece): Laid => {
    const corner = at(each);
    const paths = each.shape?.flatMap(({ outer, holes }) => [outer, ...holes].map(drawn));
    return { box: boxAt(corner.x, corner.y, each.length * scale, each.width * scale), ...(paths && { paths }) };
  };
  const whole = onPaper(piece);
  const off = step.off.map((each) => ({ each, laid: onPaper(each) }));
  return [
    filled(whole, left),
    ...off.flatMap(({ each, laid }) => (each.becomes === "left" ? [] : [filled(laid, 1)])),
    ...(piece.knots ?? []).map((knot): Item => ({ kind: "fill", paths: [drawn(knot)], grey: noGood })),
    ...off.flatMap(({ each, laid }) => offItems(laid, each, talk)),
    ...(step.rest ? nameIn(onPaper(step.rest).box, restName(step.rest, talk), step.rest.becomes === "part") : []),
    ...(piece.bevelled ?? []).map(({ side }) => filledBox(alongSide(whole.box, side), slope)),
    ...edgesOf(whole, "visible"),
    ...guideItems(whole.box, step),
  ];
}

/** A piece on paper: its extents, and its own edges where it is no rectangle. */
type Laid = { readonly box: Extents; readonly paths?: readonly (readonly Bend[])[] };

const filled = ({ box, paths }: Laid, grey: number): Item =>
  paths ? { kind: "fill", paths, grey } : filledBox(box, grey);

const edgesOf = ({ box, paths }: Laid, line: LineKind): readonly Item[] =>
  paths ? paths.map((path): Item => ({ kind: "stroke", path, closed: true, line })) : [rectangle(box, line)];

function offItems(laid: Laid, piece: RipPiece, talk: RipTalk): readonly Item[] {
  return [
    ...edgesOf(laid, "narrow"),
    ...nameIn(laid.box, becomesWords(piece, talk).replace(/^part /, ""), piece.becomes === "part"),
  ];
}

const restName = (rest: RipPiece, talk: RipTalk) => becomesWords(rest, talk).replace(/^part /, "");

/** A name in the middle of its box, upright where the box is narrow; none where it has no room. */
function nameIn({ min, max }: Extents, name: string, bold: boolean): readonly Item[] {
  const width = max.x - min.x - 1;
  const height = max.y - min.y - 1;
  const at = { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2 };
  const size = Math.min(3, Math.max(width, height) < 8 ? 2 : 3);
  const level = textWidth(name, size, bold) <= width && size <= height;
  const upright = textWidth(name, size, bold) <= height && size <= width;
  if (level) return [write({ x: at.x, y: at.y - size / 2 }, name, { height: size, anchor: "middle", bold })];
  if (upright)
    return [write({ x: at.x + size / 2, y: at.y }, name, { height: size, anchor: "middle", turn: Math.PI / 2, bold })];
  return width > height && height >= size
    ? [
        write({ x: at.x, y: at.y - size / 2 }, shorten(name, width, size, bold), {
          height: size,
          anchor: "middle",
          bold,
        }),
      ]
    : [];
}

/** At a table saw the fence lies along the reference edge, a stop block at a corner of it; at the track the edge is marked. */
function guideItems(box: Extents, step: RipStep): readonly Item[] {
  const { min, max } = box;
  const { saw, way, along, edge } = step;
  const { thick, off } = bar;
  if (edge !== undefined && !along && saw === "table" && way !== "rip")
    return [filledBox(boxAt(min.x, min.y - off - thick, max.x - min.x, thick), 0.6), ...stopItems(box, step)];
  if (edge !== undefined && !along && saw === "track")
    return [
      lineThrough(
        [
          { x: min.x, y: min.y - off },
          { x: max.x, y: min.y - off },
        ],
        "centre",
      ),
    ];
  if (way === "true edge")
    return [
      filledBox(along ? boxAt(min.x, min.y, max.x - min.x, thick) : boxAt(min.x, min.y, thick, max.y - min.y), 0.5),
    ];
  if (saw === "track")
    return along
      ? [
          lineThrough(
            [
              { x: min.x, y: min.y - off },
              { x: max.x, y: min.y - off },
            ],
            "centre",
          ),
        ]
      : [
          lineThrough(
            [
              { x: min.x - off, y: min.y },
              { x: min.x - off, y: max.y },
            ],
            "centre",
          ),
        ];
  return stopItems(box, step);
}

/** The fence, or the stop block; where the end is only made square there is none. */
function stopItems({ min, max }: Extents, { way, along }: RipStep): readonly Item[] {
  if (way === "true edge") return [];
  const { thick, off } = bar;
  const reach = way === "rip" ? 1 : 0;
  const stop = 4;
  const box = along
    ? boxAt(min.x, min.y - off - thick, reach ? max.x - min.x : Math.min(stop, max.x - min.x), thick)
    : boxAt(min.x - off - thick, min.y, thick, reach ? max.y - min.y : Math.min(stop, max.y - min.y));
  return [filledBox(box, 0.25)];
}
