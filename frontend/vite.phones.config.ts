import { builtinModules } from "node:module";
import { defineConfig } from "vite";

/** The phones of the simulation: the app's own entries, store, sync and sheets, in one Node process. */
export default defineConfig({
  publicDir: false,
  define: { __APP_VERSION__: '"simulated"' },
  build: {
    ssr: "simulation/phones.ts",
    target: "node24",
    outDir: "dist-phones",
    minify: false,
    rolldownOptions: {
      external: builtinModules.flatMap((name) => [name, `node:${name}`]),
      output: { entryFileNames: "phones.mjs" },
    },
  },
  ssr: { noExternal: true },
});
