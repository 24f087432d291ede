// The build copies the kernel's two files into dist/vendor; package.json's "imports" gives them this name.
declare module "#manifold" {
  import type Module from "manifold-3d";

  const load: typeof Module;
  export default load;
}
