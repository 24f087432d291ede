import { intersection } from "../../../../geometry/boolean.js";
import { areaOfRegion } from "../../../../geometry/measure.js";
import { offsetProfile } from "../../../../geometry/offset.js";
import type { Profile } from "../../../../geometry/profile.js";
import { circle, polygon } from "../../../../geometry/shapes.js";
import { tolerance } from "../../../../geometry/tolerance.js";
import { below, type Finding, type FindingDef, mm, raise, text } from "../../../../input/finding.js";
import { partId } from "../../../../model/ids.js";
import type { Around } from "../../../../model/piece.js";
import { rules } from "../../../../shop/rules.js";
import type { Draft } from "../../../common/part.js";
import { behind } from "../../chambers/behind.js";
import { offSheet, onSheet } from "../../form/face.js";
import { beyond, offAir } from "../../mounting/room.js";
import { terminalDrafts } from "../../mounting/terminal.js";
import { mouthDraft, mouthOn } from "../../ports/mouth.js";
import { holeDraft } from "../../ports/roundHole.js";
import type { EnclosureSpec } from "../../schema.js";
import type { Shape } from "../../shape.js";
import { hatchBolt } from "../bolts.js";
import { type Bar, type Holed, hatchCutOut, inTheWay } from "../inTheWay.js";
import { clampedOf } from "../keys.js";
import { roomOf } from "../seated.js";
import * as say from "./findings.js";
import { type Hatch, openingDraft } from "./hatch.js";

/** What is wrong with a hatch, and how far it stands out. */
export function hatchFindings(
  hatch: Hatch,
  fitted: Holed,
  spec: EnclosureSpec,
  shape: Shape,
  around: Around,
): readonly Finding[] {
  const { face, from, cover, overlap, least } = hatch;
  const about = (def: FindingDef, facts: Finding["facts"], ...path: readonly string[]) =>
    raise(def, {
      at: [below(from, ...path)],
      on: [partId(around.id, face.name)],
      facts: { face: text(face.name), ...facts },
    });
  const tight = tooRound(hatch);
  if (tight !== undefined) return [about(say.hatchRoundTooLarge, tight, "round")];
  const air = behind(face, hatch.at, shape)?.air;
  const off = beyond(cover, face.outline);
  const row = air && rowRoom(hatch).map((corner) => ({ ...corner, ...onSheet(face, air, corner) }));
  const over = row === undefined ? 0 : beyond(row, air!.outline);
  const short = overlap < least - tolerance.samePoint;
  const stands = clampedOf(hatch.spec.gasket) + hatch.board.thickness;
  return [
    ...hatchBolt(hatch, around).findings,
    ...(off > tolerance.samePoint ? [about(say.hatchOffFace, { out: mm(off) })] : []),
    ...(short ? [about(say.hatchOverlapShort, { overlap: mm(overlap), least: mm(least) }, "overlap")] : []),
    ...(off <= tolerance.samePoint && over > tolerance.samePoint ? [about(say.hatchOverJoint, { out: mm(over) })] : []),
    ...offAir("hatch opening", face, air, openingDraft(hatch, face.panel), from, around),
    ...othersOn(hatch, fitted, spec, shape, around)
      .filter(({ outline }) => meets(cover, outline))
      .map(({ name }) => about(say.hatchMeets, { other: text(name) })),
    ...inTheWay(bracesAsBars(shape), [hatchCutOut(hatch)], around),
    about(say.hatchStandsOut, { out: mm(stands) }),
  ];
}

function tooRound({ spec }: Hatch): Finding["facts"] | undefined {
  const { round = rules.openingCorner.value, size } = spec;
  const [wide, high] = size;
  const most = Math.min(wide, high) / 2;
  return round <= most ? undefined : { round: mm(round), wide: mm(wide), high: mm(high), most: mm(most) };
}

/** What the inserts take of the face: their row, and their room round it. */
function rowRoom({ bolts, insert }: Hatch): Profile {
  const row = polygon(bolts, "row");
  return offsetProfile(row, roomOf(insert), { corners: "sharp" })[0] ?? row;
}

type Other = { readonly name: string; readonly outline: Profile };

/** What else has a place on the face, in the face's axes. */
function othersOn(
  { face }: Hatch,
  { seats, rounds }: Holed,
  spec: EnclosureSpec,
  { fitOut }: Shape,
  around: Around,
): readonly Other[] {
  const cutOut = (name: string, drafts: readonly Draft[]): readonly Other[] =>
    drafts.flatMap(({ cut }) => {
      if (cut.kind !== "opening" && cut.kind !== "pocket") return [];
      const outline = cut.region.outer.map((corner) => ({ ...corner, ...offSheet(face, face.panel, corner) }));
      return [{ name, outline }];
    });
  return [
    ...seats
      .filter((seat) => seat.face === face)
      .map(({ is, at, driver, cutOut: across }) => {
        return { name: `driver ${is}`, outline: circle(at, Math.max(driver.frame ?? 0, across) / 2, is) };
      }),
    ...rounds
      .filter((port) => port.face === face)
      .flatMap((port) => cutOut("a round port", [holeDraft(port, face.panel)])),
    ...fitOut.slots
      .filter((slot) => slot.face === face)
      .flatMap(({ role, mouth, chamber, boards }) => {
        const place = mouthOn(face, mouth, chamber.air);
        return cutOut("the mouth of a slot port", [mouthDraft(role, face, face.panel, place, boards[0]!.from)]);
      }),
    ...cutOut("the terminal", terminalDrafts(spec, face, face.panel, around)),
  ];
}

function meets(one: Profile, other: Profile): boolean {
  const shared = intersection({ outer: one, holes: [] }, { outer: other, holes: [] });
  return shared.reduce((sum, region) => sum + areaOfRegion(region), 0) > tolerance.overlapVolume;
}

/** What stands behind the face of a hatch: braces. */
function bracesAsBars({ fitOut }: Shape): readonly Bar[] {
  return fitOut.braces.map(({ board: { role, sheet, from } }) => ({ role, sheet, from }));
}
