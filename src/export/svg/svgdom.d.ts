// The package has no types of its own; only this much of it is used.
declare module "svgdom" {
  export function createSVGWindow(): Window;
}
