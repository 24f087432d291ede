import type { Build, Exporter } from "../../model/build.js";
import { pagesOf } from "../pages.js";
import { pdfOfPages } from "./pdfPages.js";

/** The drawings of a job, one sheet a page, in their true size. */
export const pdfExporter: Exporter = {
  format: "pdf",
  write: async (build) => [{ path: "drawings.pdf", bytes: await drawingsPdf(build) }],
};

function drawingsPdf(build: Build): Promise<Uint8Array> {
  const { job, shop, hash } = build;
  return pdfOfPages(pagesOf(build), {
    title: [job.title, "drawings"].join(", "),
    author: shop.name ?? "",
    subject: job.reference ?? "",
    keywords: `build ${hash}`,
    ...(job.date === undefined ? {} : { date: job.date }),
  });
}
