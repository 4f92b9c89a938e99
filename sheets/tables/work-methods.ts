/** From what does most to what gets in everywhere. */
export const methods = ["machine", "small machine", "by hand"] as const;

/** Those by which a machine works, and is hired. */
export const machineMethods = ["machine", "small machine"] as const;
