import { drawingsOf } from "../../drawing/drawingSet.js";
import { cautionsFor } from "../../lists/cautions.js";
import { cutListOf } from "../../lists/cutList.js";
import type { Build, Exporter } from "../../model/build.js";
import { pdfOfPages } from "./pdfPages.js";

/** Cautions that every sheet with a part on it repeats. */
const onEveryPart = new Set(["dust", "wood-dust"]);

/** The drawings of a job, one sheet a page, in their true size. */
export const pdfExporter: Exporter = {
  format: "pdf",
  write: async (build) => [{ path: "drawings.pdf", bytes: await drawingsPdf(build) }],
};

function drawingsPdf(build: Build): Promise<Uint8Array> {
  const { job, shop, hash } = build;
  const all = cautionsFor(build);
  const onParts = [
    ...all.filter(({ id }) => onEveryPart.has(id)).map(({ sentence }) => sentence),
    "All cautions stand on sheet 1.",
  ];
  return pdfOfPages(drawingsOf(build, { rows: cutListOf(build), cautions: all, onParts }), {
    title: [job.title, "drawings"].join(", "),
    author: shop.name ?? "",
    subject: job.reference ?? "",
    keywords: `build ${hash}`,
    ...(job.date === undefined ? {} : { date: job.date }),
  });
}
