import { configDefaults, defineConfig } from "vitest/config";

const root = new URL("..", import.meta.url).pathname;

// Groups run one after another, so that LibreOffice and npm do not slow down the unit tests.
const slow = (name: string, groupOrder: number, seconds: number) => ({
  test: {
    name,
    root,
    include: [`test/${name}/**/*.test.ts`],
    testTimeout: seconds * 1000,
    hookTimeout: seconds * 1000,
    sequence: { groupOrder },
  },
});

// Continuous integration reads its counts from here.
const report = process.env.TEST_REPORT;

export default defineConfig({
  test: {
    root,
    // one more than the usual: no test goes by a clock, and a machine with two cores has both at work
    maxWorkers: "100%",
    reporters: report ? ["default", ["json", { outputFile: report }]] : ["default"],
    projects: [
      {
        test: {
          name: "unit",
          root,
          include: ["test/**/*.test.ts"],
          exclude: [...configDefaults.exclude, "test/{office,network,pack}/**"],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          sequence: { groupOrder: 0 },
        },
      },
      slow("network", 1, 120),
      // Parallel is safe here: every call of LibreOffice has a profile of its own.
      slow("office", 2, 120),
      slow("pack", 3, 240),
    ],
  },
});
