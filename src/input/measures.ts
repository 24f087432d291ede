import type { Measure } from "./measure.js";

// The quantities of a job file other than lengths, each with the unit it has inside. Exact by definition unless said.

/** L */
export const volume: Measure = {
  units: [
    { spelled: ["L", "litre", "litres", "liter", "liters", "dm3", "dm\u00b3"], holds: 1 },
    { spelled: ["mL", "cm3", "cm\u00b3", "cc"], holds: 0.001 },
    { spelled: ["m3", "m\u00b3"], holds: 1000 },
    {
      spelled: ["ft3", "ft\u00b3", "cu ft", "cu. ft", "cu.ft", "cuft", "cubic feet", "cubic foot"],
      holds: 28.316846592,
    },
    {
      spelled: ["in3", "in\u00b3", "cu in", "cu. in", "cu.in", "cuin", "cubic inches", "cubic inch"],
      holds: 0.016387064,
    },
  ],
};

/** rad; a bare number is degrees, as on every protractor. */
export const angle: Measure = {
  units: [
    { spelled: ["deg", "degree", "degrees", "\u00b0"], holds: Math.PI / 180 },
    { spelled: ["rad"], holds: 1 },
  ],
  bare: Math.PI / 180,
};

/** kg */
export const mass: Measure = {
  units: [
    { spelled: ["kg"], holds: 1 },
    { spelled: ["g"], holds: 0.001 },
    { spelled: ["lb", "lbs"], holds: 0.45359237 },
    { spelled: ["oz"], holds: 0.45359237 / 16 },
  ],
};

/** Hz; nothing else is meant by a bare number. */
export const frequency: Measure = {
  units: [
    { spelled: ["Hz"], holds: 1 },
    { spelled: ["kHz"], holds: 1000 },
  ],
  bare: 1,
};

/** mm2 */
export const area: Measure = {
  units: [
    { spelled: ["mm2", "mm\u00b2"], holds: 1 },
    { spelled: ["cm2", "cm\u00b2"], holds: 100 },
    { spelled: ["m2", "m\u00b2"], holds: 1e6 },
    { spelled: ["in2", "in\u00b2", "sq in"], holds: 645.16 },
  ],
};

/** W */
export const power: Measure = { units: [{ spelled: ["W", "watt", "watts"], holds: 1 }], bare: 1 };

/** Ohm */
export const resistance: Measure = { units: [{ spelled: ["ohm", "ohms", "\u03a9", "\u2126"], holds: 1 }], bare: 1 };
