// The build copies the kernel's two files into dist/vendor; package.json's "imports" gives them this name.
declare module "#manifold" {
  import type Module from "manifold-3d";
  import type { Manifold, ManifoldToplevel } from "manifold-3d";

  /** A list that lives in the kernel's own memory until `delete`; `push_back` copies. */
  type KernelList<Item> = { push_back(item: Item): void; delete(): void };

  /**
   * Parts of the binding that its own types leave out. `Manifold.extrude` goes through `_Extrude` too, but leaves the
   * cross-section and its list of outlines behind in the kernel's memory each time (3.5.4; measured in
   * tests/geometry/solids.test.ts), and rounds the outlines to a grid on the way.
   */
  export type KernelModule = ManifoldToplevel & {
    readonly Vector_vec2: new () => KernelList<{ readonly x: number; readonly y: number }>;
    readonly Vector2_vec2: new () => KernelList<KernelList<{ readonly x: number; readonly y: number }>>;
    _Extrude(
      outlines: KernelList<KernelList<{ readonly x: number; readonly y: number }>>,
      height: number,
      divisions: number,
      twistDeg: number,
      scaleTop: { readonly x: number; readonly y: number },
    ): Manifold;
  };

  const load: (...options: Parameters<typeof Module>) => Promise<KernelModule>;
  export default load;
}
