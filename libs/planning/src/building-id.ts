/** The building of a dwelling, window or pane: the first part of its id. */
export const buildingOf = (id: string): string => id.split('/')[0] ?? '';
