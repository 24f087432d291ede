import type { Point } from "../../../geometry/profile.js";
import { below, type Origin } from "../../../input/finding.js";
import type { Driver } from "../../../model/job.js";
import type { Around } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import { type DriverScrews, driverScrewsOf } from "../../common/driverScrews.js";
import { snap, stepOf } from "../../common/method.js";
import type { Boards } from "../form/box.js";
import { faceOf } from "../form/box.js";
import type { Face } from "../form/face.js";
import type { DriverSpec, EnclosureSpec } from "../schema.js";
import { pointOn } from "../shape.js";

/** A driver where it sits. */
export type Seat = {
  /** "driver" where the job names the one under `driver`, "driver.1" and so on of a list. */
  readonly name: string;
  readonly is: string;
  readonly from: Origin;
  readonly driver: Driver;
  readonly face: Face;
  /** Its middle on the face, in the face's axes. */
  readonly at: Point;
  /** Across the hole as it is cut, mm. */
  readonly cutOut: number;
  readonly recess: Recess | undefined;
  readonly screws: DriverScrews | undefined;
  /** How far the underside of its frame stands above the face, mm: on a ring, or below it in a recess. */
  readonly lift: number;
};

export type Recess = { readonly across: number; readonly deep: number };

type Entry = { readonly name: string; readonly spec: DriverSpec; readonly path: readonly (string | number)[] };

export function entriesOf({ driver, drivers }: EnclosureSpec): readonly Entry[] {
  return [
    ...(driver ? [{ name: "driver", spec: driver, path: ["driver"] }] : []),
    ...(drivers ?? []).map((spec, i) => ({ name: `driver.${i + 1}`, spec, path: ["drivers", i] })),
  ];
}

/** Every driver whose name and face are known. */
export function seatsOf(spec: EnclosureSpec, boards: Boards, around: Around): readonly Seat[] {
  return entriesOf(spec).flatMap(({ name, spec: wanted, path }, i): Seat[] => {
    const driver = around.job.drivers[wanted.is];
    const face = faceOf(boards, wanted.in);
    if (driver === undefined || face === undefined) return [];
    const step = stepOf(spec, around);
    const recess = wanted.recess === undefined ? undefined : recessOf(driver, step);
    return [
      {
        name,
        is: wanted.is,
        from: below(around.origin, ...path),
        driver,
        face,
        at: pointOn(face, wanted.at),
        cutOut: snap(driver["cut-out"], step),
        recess,
        screws: driverScrewsOf(turnedBy(driver, wanted.turned ?? 0), around.shop),
        lift: liftOf(around, name, i === 0) - (recess?.deep ?? 0),
      },
    ];
  });
}

function recessOf({ frame, flange }: Driver, step: number | undefined): Recess | undefined {
  if (frame === undefined || flange === undefined) return undefined;
  return { across: snap(frame + 2 * rules.frameClearance.value, step), deep: flange };
}

/** How far another piece lifts a driver off its face, mm. "driver" alone means the first. */
function liftOf({ asks }: Around, name: string, first: boolean): number {
  const lifts = asks.flatMap((ask) => {
    const meant = ask.kind === "lift driver" && (ask.driver === name || (first && ask.driver === "driver"));
    return meant ? [ask.lift] : [];
  });
  return Math.max(0, ...lifts);
}

function turnedBy(driver: Driver, angle: number): Driver {
  const { bolts } = driver;
  return bolts === undefined ? driver : { ...driver, bolts: { ...bolts, start: (bolts.start ?? 0) + angle } };
}
