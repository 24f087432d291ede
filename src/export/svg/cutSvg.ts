import type { Container } from "@svgdotjs/svg.js";
import type { Profile } from "../../geometry/profile.js";
import { formatNumber } from "../../input/number.js";
import { readProgram, type Step } from "../../machining/simulation/reader.js";
import type { Setup } from "../../model/program.js";
import { pathData } from "./pathData.js";
import { layerGroup, loadSvg, millimetres, type SvgAbout, svgBytes } from "./svgDocument.js";

/** Left free round the sheet, mm. */
const margin = 30;

/**
 * A picture of a setup drawn from the text of its programs: a stroke as wide as the bit where it cuts, the deeper the
 * darker and the later drawn, so that tabs show as lighter bridges; the parts' outlines and the ways in the air over it.
 * Real millimetres. `board`: the sheet's outline, `zones`: what parts keep clear of, both as they lie there; `top`: z of the
 * sheet's top in the programs.
 */
export async function cutSvg(
  setup: Setup,
  board: Profile,
  zones: readonly Profile[],
  texts: readonly string[],
  top: number,
  about: SvgAbout,
): Promise<Uint8Array> {
  const newSvg = await loadSvg();
  const svg = newSvg(setup.length + 2 * margin, setup.width + 2 * margin, about);
  const at = ({ x, y }: { readonly x: number; readonly y: number }) => ({ x: x + margin, y: setup.width - y + margin });
  const steps = texts.flatMap((text) => readProgram(text).steps);
  const area = (profile: Profile, fill: string) =>
    svg.element("path").attr({ d: pathData(profile, true, at), fill, stroke: "#000000", "stroke-width": "0.5" });
  area(board, "#f4ecd8");
  for (const zone of zones) area(zone, "#b0b0b0");

  const widths = new Map(setup.runs.map(({ number, d }) => [number, d]));
  const cuts = layerGroup(svg, "CUTS").attr({ fill: "none", "stroke-linecap": "round", "stroke-linejoin": "round" });
  for (const [depth, group] of byDepth(steps, top)) {
    const shade = layerGroup(cuts, `DEPTH ${formatNumber(depth, 2)}`).attr("stroke", shadeOf(depth / setup.thickness));
    for (const step of group) draw(shade, step, at).attr("stroke-width", millimetres(widths.get(step.tool) ?? 1));
  }
  const parts = layerGroup(svg, "PARTS").attr({ fill: "none", stroke: "#c00000", "stroke-width": "0.5" });
  const outline = (profile: Profile) => parts.element("path").attr("d", pathData(profile, true, at));
  for (const { profile, blank } of setup.parts) for (const loop of [blank.outer, ...profile.holes]) outline(loop);
  const ways = layerGroup(svg, "WAYS").attr({
    fill: "none",
    stroke: "#0060c0",
    "stroke-width": "0.3",
    "stroke-dasharray": "4 2",
  });
  for (const step of steps.filter(({ rapid, from, to }) => rapid && moves(from, to))) draw(ways, step, at);
  return svgBytes(svg);
}

const moves = (from: Step["from"], to: Step["to"]) => Math.hypot(to[0] - from[0], to[1] - from[1]) > 1e-6;

/** What cuts, shallow first; a slope counts as deep as its higher end. */
function byDepth(steps: readonly Step[], top: number): readonly (readonly [number, readonly Step[]])[] {
  const groups = new Map<number, Step[]>();
  for (const step of steps) {
    const depth = Math.round((top - Math.max(step.from[2], step.to[2])) * 100) / 100;
    const plunge = !moves(step.from, step.to) && !step.arc;
    const reached = plunge ? Math.round((top - Math.min(step.from[2], step.to[2])) * 100) / 100 : depth;
    if (!step.rapid && reached > 0) groups.set(reached, [...(groups.get(reached) ?? []), step]);
  }
  return [...groups].sort(([a], [b]) => a - b);
}

/** From light at the top to grey above the floor of the sheet; dark where it goes through, so that tabs stand out. */
function shadeOf(share: number): string {
  const part = share >= 1 ? 40 : Math.round(225 - 80 * share);
  return `rgb(${part},${part},${part})`;
}

type Place = { readonly x: number; readonly y: number };

/** A whole turn is two half ones: no single arc of a picture can be. */
function draw(parent: Container, { from, to, arc }: Step, at: (p: Place) => Place) {
  const pieces = arc === undefined ? 1 : 2;
  const places = Array.from({ length: pieces + 1 }, (_, i) => {
    if (arc === undefined || i === 0 || i === pieces) return i === 0 ? from : to;
    const angle = Math.atan2(from[1] - arc.center[1], from[0] - arc.center[0]) + (arc.sweep * i) / pieces;
    return [arc.center[0] + arc.radius * Math.cos(angle), arc.center[1] + arc.radius * Math.sin(angle)] as const;
  });
  const bulge = arc === undefined ? 0 : Math.tan(arc.sweep / pieces / 4);
  const path = places.map(([x, y]) => ({ x, y, bulge }));
  return parent.element("path").attr("d", pathData(path, false, at));
}
