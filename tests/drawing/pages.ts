import { overlap } from "../../src/drawing/dimensions/labels.js";
import { drawingsOf } from "../../src/drawing/drawingSet.js";
import type { Item, Page, Text } from "../../src/drawing/page.js";
import { boxOf } from "../../src/drawing/textBox.js";
import { cautionsFor } from "../../src/lists/cautions.js";
import { cutListOf } from "../../src/lists/cutList.js";
import { printedSteps } from "../../src/lists/steps.js";
import type { Build } from "../../src/model/build.js";

/** The drawings of a build as the exporters make them. */
export function pagesOf(build: Build): readonly Page[] {
  const cautions = cautionsFor(build);
  return drawingsOf(build, {
    rows: cutListOf(build),
    cautions,
    steps: printedSteps(build),
    onParts: ["All cautions stand on sheet 1."],
    onRouting: [],
  });
}

export function textsOf(page: Page): readonly Text[] {
  return page.items.filter((item: Item): item is Text => item.kind === "text");
}

export const wordsOf = (page: Page): readonly string[] => textsOf(page).map(({ text }) => text);

/** Every two texts of a page that lie over one another. */
export function overlapsOn(page: Page): readonly string[] {
  const texts = textsOf(page).filter(({ text }) => text !== "");
  return texts.flatMap((a, i) =>
    texts
      .slice(i + 1)
      .filter((b) => overlap(boxOf(a), boxOf(b), -0.05))
      .map((b) => `${page.title}: "${a.text}" over "${b.text}"`),
  );
}

/** Every text of a page that leaves the frame: 20 mm on the filing side, 10 mm on the others. */
export function outsideFrame(page: Page): readonly string[] {
  const { width, height } = page.size;
  return textsOf(page)
    .filter((text) => {
      const { min, max } = boxOf(text);
      return min.x < 20 || min.y < 10 || max.x > width - 10 || max.y > height - 10;
    })
    .map(({ text }) => `${page.title}: "${text}"`);
}
