/** Decision memo and pictures. */
export const figures = {
} as const;
