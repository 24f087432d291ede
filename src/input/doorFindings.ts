import type { FindingDef } from "./finding.js";

/** A value that does not read as the quantity it should be. */
function unreadable(code: string, what: string, note: string): FindingDef {
  return {
    code,
    severity: "error",
    words: `{found} is not ${what}`,
    next: "write it like {allowed}",
    explain: note,
  };
}

export const notALength = unreadable(
  "not-a-length",
  "a length",
  'Write lengths as on the bench: 18, 18mm, 29.5cm, 3/4in, 11 5/8", 1\'-2 1/2". A bare number is in the units that the file names under "units"; a bare fraction is only taken where those are inches, because 3/4 in a millimetre file is most likely a forgotten inch sign.',
);
export const notAVolume = unreadable(
  "not-a-volume",
  "a volume",
  "A volume needs its unit, because litres and cubic feet differ by a factor of 28: 20 L, 0.7 ft3, 1220 in3. Where a range is asked for: 18 to 24 L.",
);
export const notAnAngle = unreadable(
  "not-an-angle",
  "an angle",
  "Angles are in degrees: 45 or 45deg. Counter-clockwise is positive.",
);
export const notAMass = unreadable("not-a-mass", "a weight", "A weight needs its unit: 12 kg, 850 g or 26 lb.");
export const notAFrequency = unreadable("not-a-frequency", "a frequency", "Frequencies are in hertz: 31 or 31 Hz.");
export const notAnArea = unreadable(
  "not-an-area",
  "an area",
  "An area needs its unit: 346 cm2 or 53.6 in2. Data sheets give a cone's area in cm2 as a rule.",
);
export const notAPower = unreadable("not-a-power", "a power", "Power is in watts: 350 or 350 W.");
export const notAResistance = unreadable("not-a-resistance", "an impedance", "Impedance is in ohms: 4 or 4 ohm.");
export const notANumber = unreadable("not-a-number", "a plain number", "A number here has no unit: 8 or 0.52.");
export const notAWholeNumber = unreadable(
  "not-a-whole-number",
  "a whole number",
  "Things that are counted, such as bolt holes, come in whole numbers: 6 or 8.",
);
export const notASize = unreadable(
  "not-a-size",
  "a size of two lengths",
  "A size is two lengths with an x between them, the one that runs across first: 78 x 54, or 3/4in x 2in.",
);

export const outOfRange: FindingDef = {
  code: "out-of-range",
  severity: "error",
  words: "{found} is outside what makes sense here, {least} to {most}",
  next: "check the value and its unit: anything from {least} to {most} is taken",
  explain:
    "Every size has a wide range that no real job leaves. A value outside it is nearly always a slip: a missing decimal point, inches written where the file is in millimetres, or a radius where a diameter is asked for.",
};

/** Everything a typed value can be refused for. */
export const doorFindings: readonly FindingDef[] = [
  notALength,
  notAVolume,
  notAnAngle,
  notAMass,
  notAFrequency,
  notAnArea,
  notAPower,
  notAResistance,
  notANumber,
  notAWholeNumber,
  notASize,
  outOfRange,
];
