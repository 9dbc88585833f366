/** Where one version of a set is read in words. */
export const setAddress = (id: string, version: number): string => `/program/criteria/sets/${encodeURIComponent(id)}/${version}`
