/** An edge as it is read: "notch auxiliary battery", "left/front" for the corner between two. */
export function edgeName(name: string): string {
  return name
    .split("|")
    .map((side) => side.replace(".", " "))
    .join("/");
}
