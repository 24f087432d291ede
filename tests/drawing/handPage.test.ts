import { describe, expect, it } from "vitest";
import { sampleBuild } from "../fixtures/build.js";
import { routedBuild } from "../fixtures/routed.js";
import { outsideFrame, overlapsOn, pagesOf, wordsOf } from "./pages.js";

const isHand = ({ title }: { readonly title: string }) => title.startsWith("Hand routing");
const pages = pagesOf(routedBuild()).filter(isHand);
const words = pages.flatMap(wordsOf).join(" ");

describe("the pages for hand routing", () => {
  it("are there where something is routed by hand, and only there", () => {
    expect(pages.length).toBeGreaterThan(0);
    expect(pagesOf(sampleBuild()).filter(isHand)).toEqual([]);
  });

  it("keep their texts apart and inside the frame, in millimetres and in inches", () => {
    const inches = pagesOf(routedBuild({ unit: "in", denominator: 16 })).filter(isHand);
    expect([...pages, ...inches].flatMap(overlapsOn)).toEqual([]);
    expect([...pages, ...inches].flatMap(outsideFrame)).toEqual([]);
  });

  it("tell the template for a bush and a bit: a driver's opening of 233, a 17 bush, a 1/2 in bit", () => {
    // 233 + 17 - 12.7, by hand
    expect(words).toContain("237.3 × 237.3");
    expect(words).toContain("Feed clockwise round the inside");
  });

  it("tell the pivots of the circle jig: R - d/2 inside", () => {
    // 116.5 - 6.35, by hand
    expect(words).toContain("pivot to middle of bit 110.2");
    expect(words).toContain("the pivot goes with it");
  });

  it("leave rectangles to a straight edge", () => {
    expect(words).toContain("Four straight edges");
  });
});

it("a part's page tells what is cut elsewhere, and with what", () => {
  const edges = pagesOf(routedBuild()).flatMap(wordsOf).join(" ");
  expect(edges).toMatch(/At the bench: \d+ holes into an edge, 2.3 drill/);
});
