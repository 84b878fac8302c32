/** How much may come in at once. Bytes. */
export const uploadLimit = 512 * 1024 * 1024
