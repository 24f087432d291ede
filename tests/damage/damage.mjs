// Damages a job file, seeded: as text, as a slip of the finger or of the disk would, and in its values, so that many
// copies still read well and reach the planning behind.
import { parse, stringify } from "yaml";

/** Random numbers in [0, 1) from a seed. Source: mulberry32, T. Ettinger, public domain; from memory. */
export function randomFrom(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** One damaged copy: three in ten as text, the others in their values. */
export function damaged(source, seed) {
  const random = randomFrom(seed);
  const pick = (items) => items[Math.floor(random() * items.length)];
  return random() < 0.3 ? damagedText(source, random, pick) : damagedValues(source, random, pick);
}

function damagedText(source, random, pick) {
  let text = source;
  for (let n = 1 + Math.floor(random() * 3); n > 0; n--) text = pick(textDamages)(text, random, pick);
  return text;
}

const somewhere = (text, random) => Math.floor(random() * (text.length + 1));
const splice = (text, at, gone, come) => text.slice(0, at) + come + text.slice(at + gone);
const onLines = (change) => (text, random, pick) => {
  const lines = text.split("\n");
  change(lines, Math.floor(random() * lines.length), random, pick);
  return lines.join("\n");
};

const textDamages = [
  (text, random) => splice(text, somewhere(text, random), 1 + Math.floor(random() * 12), ""),
  (text, random, pick) =>
    splice(
      text,
      somewhere(text, random),
      0,
      pick([
        ":",
        "-",
        "{",
        "}",
        "[",
        "]",
        '"',
        "'",
        "#",
        "&a ",
        "*a ",
        "!x ",
        "\t",
        "\u0000",
        "é",
        "\ud800",
        "0",
        "-",
        "%",
        ",",
        "\n",
      ]),
    ),
  (text, random, pick) => splice(text, somewhere(text, random), 1, pick(["0", "9", "x", " ", "\n", "."])),
  (text, random) => text.slice(0, somewhere(text, random)),
  onLines((lines, at) => lines.splice(at, 1)),
  onLines((lines, at) => lines.splice(at, 0, lines[at])),
  onLines((lines, at, random) => lines.splice(Math.floor(random() * lines.length), 0, ...lines.splice(at, 1))),
  onLines((lines, at, random) => {
    lines[at] = " ".repeat(Math.floor(random() * 5)) + lines[at].trimStart();
  }),
  onLines((lines, at) => {
    lines[at] = `\t${lines[at]}`;
  }),
  onLines((lines, at, _random, pick) => {
    lines[at] = lines[at].replace(
      /:.*/,
      `: ${pick(["", "~", "[]", "{}", "yes", "18mm", "nonsense", "1e999", "[1, 2"])}`,
    );
  }),
  (text, random) => text.replace(/\d+/g, (digits) => (random() < 0.02 ? digits.split("").reverse().join("") : digits)),
  (text) => text.replaceAll("\n", "\r\n"),
];

function damagedValues(source, random, pick) {
  const data = parse(source);
  for (let n = 1 + Math.floor(random() * 3); n > 0; n--) {
    const places = placesIn(data);
    const numbers = places.filter(({ holder, key }) => isNumeric(holder[key]));
    // Mostly sizes that might have been meant: these are what reaches the geometry.
    if (random() < 0.75 && numbers.length > 0) changeNumber(pick(numbers), random, pick);
    else pick(valueDamages)(pick(places), places, random, pick);
  }
  return stringify(data);
}

function placesIn(value) {
  if (typeof value !== "object" || value === null) return [];
  return Object.keys(value).flatMap((key) => [{ holder: value, key }, ...placesIn(value[key])]);
}

const isNumeric = (value) => typeof value === "number" || (typeof value === "string" && /\d/.test(value));

function changeNumber({ holder, key }, random, pick) {
  const factor = pick([0, 0.01, 0.1, 0.5, 0.9, 0.97, 0.99, 1.01, 1.03, 1.1, 1.5, 2, 10, -1, 1 + (random() - 0.5) / 5]);
  const changed = (number) => Math.round(number * factor * 100) / 100;
  const value = holder[key];
  holder[key] =
    typeof value === "number"
      ? changed(value)
      : value.replace(/\d+(\.\d+)?/, (digits) => String(changed(Number(digits))));
}

const valueDamages = [
  ({ holder, key }) => (Array.isArray(holder) ? holder.splice(Number(key), 1) : delete holder[key]),
  ({ holder, key }, places, _random, pick) => {
    const other = pick(places);
    holder[key] = structuredClone(other.holder[other.key]);
  },
  ({ holder, key }, _places, _random, pick) => {
    holder[key] = pick([
      null,
      "",
      "free",
      "box",
      "nonsense",
      [],
      {},
      true,
      -1,
      0,
      1e300,
      Number.NaN,
      "1/0 in",
      "9".repeat(400),
    ]);
  },
  ({ holder, key }, _places, _random, pick) => {
    if (Array.isArray(holder)) holder.push(structuredClone(holder[Number(key)]));
    else holder[pick([`${key} `, `${key}x`, key.slice(1), "constructor", "toString"])] = holder[key];
  },
  ({ holder, key }, _places, random) => {
    if (Array.isArray(holder)) holder.reverse();
    else if (Array.isArray(holder[key])) holder[key].sort(() => random() - 0.5);
    else holder[key] = [holder[key]];
  },
];
