/** Where an instructor reads one version of a set in words. */
export const readAddress = (id: string, version: number): string => `/teach/criteria/${encodeURIComponent(id)}/${version}`
