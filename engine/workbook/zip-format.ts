/** Marks and sizes in bytes of what a zip archive is made of (APPNOTE.TXT 4.3): for reader and writer alike. */
export const localMark = 0x04034b50;
export const entryMark = 0x02014b50;
export const endMark = 0x06054b50;
export const localSize = 30;
export const entrySize = 46;
export const endSize = 22;
