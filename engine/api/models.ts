let asked = false;

/**
 * From here on compiled models are read where the package or an earlier run of the command line left them. Nothing is
 * written: whoever imports a package does not ask it to keep files.
 */
export async function withKeptModels(): Promise<void> {
  // uncompiled sources bring no models along
  if (asked || !import.meta.url.endsWith(".js")) return;
  asked = true;
  const [{ programStore }, { useStore }] = await Promise.all([
    import("../stored/store.js"),
    import("../template/models.js"),
  ]);
  const { find } = programStore();
  useStore({ find, keep: () => {} });
}
