// A folder of src/ imports only from the folders above it in this list (DEVELOPERS.md, "The rooms").
import { rooms } from "./scripts/rooms.mjs";

export default {
  forbidden: [
    { name: "no-cycle", severity: "error", from: {}, to: { circular: true } },
    ...rooms
      .map((room, index) => ({
        name: `${room}-imports-only-from-above`,
        severity: "error",
        from: { path: `^src/${room}/` },
        to: { path: `^src/(${[...rooms.slice(index + 1), "index\\.ts"].join("|")})` },
      }))
      .slice(0, -1),
    { name: "nothing-imports-the-face", severity: "error", from: { path: "^src/" }, to: { path: "^src/index\\.ts" } },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    doNotFollow: { path: "node_modules" },
    enhancedResolveOptions: {
      extensions: [".ts", ".js"],
      conditionNames: ["import", "node", "default"],
      exportsFields: ["exports"],
    },
  },
};
