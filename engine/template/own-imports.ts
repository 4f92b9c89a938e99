interface Where {
  readonly parentURL?: string | undefined;
}

/** Resolves the name of this package as its own files do; Node calls it for every import. */
export const resolve = <T>(
  specifier: string,
  context: Where,
  next: (specifier: string, context: Where) => T,
): T =>
  next(
    specifier,
    /^rillbook(\/|$)/.test(specifier) ? { ...context, parentURL: import.meta.url } : context,
  );
