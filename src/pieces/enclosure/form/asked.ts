import type { Around } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import { methodOf } from "../../common/method.js";
import { clampedOf } from "../removable/keys.js";
import type { EnclosureSpec } from "../schema.js";
import type { Asked } from "./box.js";
import { type Extrusion, faceNamesOf } from "./extrusion.js";
import { isBolted, type Skin } from "./face.js";
import { type Choice, type Corner, type JointForm, meetingsOf, usualLaps } from "./meeting.js";
import { extrusionOf, wayOf } from "./profile.js";

/** The box as the job describes it, at this free size. */
export function askedOf(spec: EnclosureSpec, size: number, around: Around): Asked {
  const extrusion = extrusionOf(spec, size);
  const skins = skinsOf(spec, extrusion, around);
  const laps = lapsOf(spec, extrusion);
  const meetings = meetingsOf(extrusion, laps, (corner) =>
    choiceOf(spec, skins(corner.over), skins(corner.into), corner),
  );
  return { extrusion, skins, laps, meetings, step: stepOfBox(spec, extrusion, skins, around) };
}

function skinsOf(spec: EnclosureSpec, extrusion: Extrusion, around: Around): (face: string) => Skin {
  const skins = new Map(
    faceNamesOf(extrusion).map((face): [string, Skin] => {
      const own = spec.panels?.[face];
      return [
        face,
        {
          board: around.board(own?.board ?? spec.board),
          lining: own?.double === undefined ? 0 : around.board(own.double).thickness,
          setIn: own?.["set in"] ?? 0,
          gasket: own?.bolted === undefined ? 0 : clampedOf(own.bolted.gasket),
          method: methodOf({ "cut by": own?.["cut by"] ?? spec["cut by"] }, around),
        },
      ];
    }),
  );
  return (face) => skins.get(face)!;
}

/** The order of the job; else the usual one, faces that are bolted on first, those that are set in last. */
export function lapsOf(spec: EnclosureSpec, extrusion: Extrusion): readonly string[] {
  if (spec.laps !== undefined) return spec.laps;
  const laps = usualLaps(extrusion, spec.ends ?? "over");
  const rank = (face: string) => {
    const own = spec.panels?.[face];
    return own?.["set in"] !== undefined ? 2 : own?.bolted !== undefined ? 0 : 1;
  };
  return [0, 1, 2].flatMap((wanted) => laps.filter((face) => rank(face) === wanted));
}

/** What the job says of the corner itself holds; what it says of all corners, where the corner takes it. */
function choiceOf(spec: EnclosureSpec, over: Skin, into: Skin, corner: Corner): Choice {
  const { form, deep, at } = spec.joints ?? {};
  const own = Object.entries(at ?? {}).find(([names]) => namesCorner(names, corner.over, corner.into))?.[1];
  if (isBolted(over) || isBolted(into)) {
    const usual = form === "square" ? form : undefined;
    return { form: own ?? usual, deep: 0, off: isBolted(into) ? rules.removableGap.value : 0 };
  }
  return { form: own ?? usualOf(form, into, corner), deep: deep ?? over.board.thickness / 2 };
}

function usualOf(form: JointForm | undefined, into: Skin, { letsIn }: Corner): JointForm | undefined {
  if (form === "rebate" && letsIn) return into.setIn > 0 ? "groove" : "rebate";
  if (form === "groove" && letsIn && into.setIn > 0) return "groove";
  return form === "rebate" || form === "groove" || (form === "mitre" && into.setIn > 0) ? undefined : form;
}

/** The two faces that a corner of `joints: at` names: "top + rake". */
export const cornerNames = (corner: string): readonly string[] => corner.split("+").map((face) => face.trim());

function namesCorner(corner: string, a: string, b: string): boolean {
  const faces = cornerNames(corner);
  return faces.length === 2 && faces.includes(a) && faces.includes(b);
}

/** The coarsest step of those who cut its walls; none where all are cut by CNC. */
function stepOfBox(
  spec: EnclosureSpec,
  extrusion: Extrusion,
  skins: (face: string) => Skin,
  { shop }: Around,
): number | undefined {
  const walls = wayOf(spec) === "square" ? faceNamesOf(extrusion) : extrusion.section.map(({ by }) => by);
  const steps = walls.flatMap((face) => {
    const { method } = skins(face);
    return method === "cnc" ? [] : [method === "saw" ? shop.saw.step : shop.router.step];
  });
  return steps.length === 0 ? undefined : Math.max(...steps);
}
