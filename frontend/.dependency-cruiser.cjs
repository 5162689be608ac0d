/** The arrows between the folders of src: top may import below, never up or sideways. */

const LAYERS = ["screens", "state", "sync", "store", "entries", "calc"];
const TESTS = "\\.test\\.tsx?$";

/** One rule a layer: it must not import what stands above it. */
const upward = LAYERS.slice(1).map((layer, index) => ({
  name: `${layer}-imports-nothing-above`,
  severity: "error",
  from: { path: `^src/${layer}/`, pathNot: TESTS },
  to: { path: `^src/(${LAYERS.slice(0, index + 1).join("|")}|parts|worker)/|^src/main` },
}));

module.exports = {
  forbidden: [
    ...upward,
    {
      name: "no-cycles",
      severity: "error",
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ["type-only"] } },
    },
    {
      name: "no-orphans",
      severity: "error",
      from: { orphan: true, pathNot: [TESTS, "\\.d\\.ts$", "\\.css$"] },
      to: {},
    },
    {
      name: "no-package-in-the-core",
      comment: "calc and entries are pure: they run in any engine, and have a Python twin.",
      severity: "error",
      from: { path: "^src/(calc|entries)/", pathNot: [TESTS, "vectors_registry"] },
      to: { pathNot: "^src/(calc|entries)/" },
    },
    {
      name: "calc-stands-at-the-bottom",
      severity: "error",
      from: { path: "^src/calc/", pathNot: [TESTS, "vectors_registry"] },
      to: { pathNot: "^src/calc/" },
    },
    {
      name: "only-store-imports-idb",
      severity: "error",
      from: { path: "^src/", pathNot: ["^src/store/", TESTS] },
      to: { path: "node_modules/(idb|fake-indexeddb)/" },
    },
    {
      name: "parts-know-no-state",
      severity: "error",
      from: { path: "^src/parts/", pathNot: TESTS },
      to: { path: "^src/(screens|state|sync|store|worker)/|^src/main" },
    },
    {
      name: "text-knows-nothing",
      severity: "error",
      from: { path: "^src/text/", pathNot: TESTS },
      to: { path: "^src/(?!text/)" },
    },
    {
      name: "worker-uses-sync-and-store",
      severity: "error",
      from: { path: "^src/worker/", pathNot: TESTS },
      to: { path: "^src/(screens|state|parts|text)/|^src/main" },
    },
    {
      name: "state-does-not-know-words-or-parts",
      severity: "error",
      from: { path: "^src/(state|sync|store)/", pathNot: TESTS },
      to: { path: "^src/(parts|text)/" },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.app.json" },
    enhancedResolveOptions: { extensions: [".ts", ".tsx", ".js", ".json"] },
  },
};
