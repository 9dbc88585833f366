/** A person as lists and records call them: given name, then family name. */
export const fullName = ({ givenName, familyName }: { readonly givenName: string; readonly familyName: string }): string => `${givenName} ${familyName}`
