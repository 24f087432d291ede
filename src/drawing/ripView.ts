import type { Extents } from "../geometry/profile.js";
import type { RipPiece } from "../model/rip.js";
import type { RipStep } from "../nest/saw/ripSteps.js";
import type { Item } from "./page.js";
import { becomesWords, type RipTalk } from "./ripWords.js";
import { boxAt, filledBox, lineThrough, rectangle } from "./shapes.js";
import { shorten, textWidth, write } from "./textBox.js";

/** Thickness of the bar that stands for fence or stop block, and its distance from the piece, mm of paper. */
const bar = { thick: 1.6, off: 1 };
const left = 0.88;

/**
 * One step as it is seen from above: the piece as it lay on its sheet, what comes off in white with its name, the rest in
 * grey, and at its reference edge the fence or the stop block as a dark bar, or the edge that is measured from. An edge that is
 * cut true is grey all along.
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
  const onPaper = ({ x, y, length, width }: RipPiece) =>
    boxAt(x0 + (x - piece.x) * scale, y0 + (y - piece.y) * scale, length * scale, width * scale);
  const whole = onPaper(piece);
  return [
    filledBox(whole, left),
    ...step.off.flatMap((each) => offItems(onPaper(each), each, talk)),
    ...(step.rest ? nameIn(onPaper(step.rest), restName(step.rest, talk), step.rest.becomes === "part") : []),
    rectangle(whole, "visible"),
    ...guideItems(whole, step),
  ];
}

function offItems(box: Extents, piece: RipPiece, talk: RipTalk): readonly Item[] {
  return [
    ...(piece.becomes === "left" ? [] : [filledBox(box, 1)]),
    rectangle(box, "narrow"),
    ...nameIn(box, becomesWords(piece, talk).replace(/^part /, ""), piece.becomes === "part"),
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
function guideItems({ min, max }: Extents, { saw, way, along }: RipStep): readonly Item[] {
  const { thick, off } = bar;
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
  const reach = way === "rip" ? 1 : 0;
  const stop = 4;
  const box = along
    ? boxAt(min.x, min.y - off - thick, reach ? max.x - min.x : Math.min(stop, max.x - min.x), thick)
    : boxAt(min.x - off - thick, min.y, thick, reach ? max.y - min.y : Math.min(stop, max.y - min.y));
  return [filledBox(box, 0.25)];
}
